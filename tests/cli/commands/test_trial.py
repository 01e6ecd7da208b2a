"""`pottle trial`: a trial is planned, printed, made and judged from the shell."""

from pathlib import Path
from typing import Any

import pytest

from cli.screens.causes import trial as module
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants
from tests.reports.pdf.readback import texts_of

NAME = '"cloudy orange"'


@pytest.fixture
def oils(shell: Shell) -> Shell:
    """The book with a second lot of the oil."""
    answer = shell.line("receive orange-oil 200mL --json")
    shell.codes["other"] = answer.json["code"]
    return shell


def marks(shell: Shell) -> list[dict[str, Any]]:
    jars: list[dict[str, Any]] = shell.line(f"trial sheet {NAME} --json").json["jars"]
    return jars


def test_a_plan_says_how_large_it_is_and_why_and_what_is_made_in_which_order(
    oils: Shell,
) -> None:
    answer = oils.line(f"trial plan {NAME} --try {{other}} --try chill=4C/none --out plan.pdf")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[2] == (
        "16 jars of 50 mL on 2 evenings (8 and 8): every combination 4 times. Judged by clear or "
        "cloudy at 7 d, it names the cause with a chance of 97 %, taken that 90 % of the jars fail "
        "with it and 5 % without."
    )
    assert Path("plan.pdf").read_bytes().startswith(b"%PDF-")
    sheet = oils.line(f"trial sheet {NAME}")
    assert sheet.lines[0] in answer.lines
    assert sheet.lines[-1] == 'Next: pottle start --from-plan "cloudy orange"'
    proved = oils.line(f"trial prove {NAME}")
    assert proved.lines[0].startswith("Entry ")
    assert [line for line in proved.lines if line in answer.lines][:2]


def test_its_sheet_has_a_page_to_make_by_and_one_to_look_by(oils: Shell) -> None:
    oils.line(f"trial plan {NAME} --try {{other}} --product Orange")
    answer = oils.line(f"trial sheet {NAME} --out sheet.pdf")
    assert answer.out == "The sheet of cloudy orange is in sheet.pdf.\n"
    making, looking = texts_of(Path("sheet.pdf").read_bytes())
    for jar in marks(oils):
        assert jar["mark"] in making
        assert jar["mark"] in looking
    assert oils.codes["other"] in making
    assert oils.codes["other"] not in looking
    assert "After 1 d" in looking
    assert "After 7 d" in looking


def test_a_trial_that_is_made_and_looked_at_blind_shows_its_cause(oils: Shell) -> None:
    oils.line(f"trial plan {NAME} --try {{other}} --product Orange")
    begun = oils.line("start --from-plan cloudy orange")
    assert (begun.exit_code, begun.err) == (0, "")
    first = marks(oils)[0]
    assert (begun.lines[0], begun.lines[-2:]) == (
        "Recorded 41 to 46: 6 jars of cloudy orange are begun, in this order.",
        [
            "Write only the mark on a jar. Each is the ending of its lot: pottle look "
            f"{first['mark']} GRADE",
            f"Next: pottle add {first['code']} LOT AMOUNT",
        ],
    )
    again = oils.line(f"start --from-plan {NAME}")
    assert again.exit_code == 0
    for jar in marks(oils):
        (level,) = jar["levels"]
        assert oils.line(f"add {jar['code']} {level} 3mL").exit_code == 0
        grade = "cloudy" if level == oils.codes["other"] else "clear"
        assert oils.line(f"look {jar['mark']} {grade} --age 7d").exit_code == 0
    answer = oils.line(f"compare {NAME}")
    shown = next(line for line in answer.lines if line.startswith("Cause shown: "))
    assert shown == (
        f"Cause shown: orange-oil {oils.codes['other']} Sweet orange oil, against "
        f"{oils.codes['oil']} Sweet orange oil. It failed in 6 of the 6 jars with it and in 0 of "
        "the 6 without; the draw alone does as much once in 400 times (p 0.0025)."
    )
    told = oils.line(f"compare {NAME} --json").json["plan"]
    assert told["cause_levels"] == [oils.codes["other"]]
    assert [item["verdict"] for item in told["tried"]] == ["cause"]
    assert {jar["state"] for jar in told["jars"]} == {"as planned"}


def test_a_trial_that_is_not_planned_is_refused(shell: Shell) -> None:
    answer = shell.line("trial sheet rests")
    assert (answer.exit_code, answer.out) == (3, "")
    assert answer.complaints == [
        'No trial "rests" is planned.',
        '  Plan one: pottle trial plan "NAME" --try LOT',
    ]


def test_what_was_drawn_from_another_book_is_not_proved(
    oils: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    oils.line(f"trial plan {NAME} --try {{other}} --product Orange")
    faults = ("The root in the plan is not that of the book.",)
    monkeypatch.setattr("cli.screens.causes.trial.root_faults", lambda *_: faults)
    answer = oils.line(f"trial prove {NAME}")
    assert (answer.exit_code, answer.out, answer.complaints) == (
        1,
        "",
        [*faults, "  Nothing is proved. Run pottle verify to see what else does not fit."],
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("trial")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("trial", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
