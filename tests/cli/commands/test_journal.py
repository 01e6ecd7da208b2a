"""`pottle journal`, and the next step after what is looked up or printed."""

import pytest

from cli.screens.lots import journal as module
from reports.words.evidence.damage import WHAT_TO_DO
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants
from tests.service.hostile import run


@pytest.mark.parametrize(
    ("command", "step"),
    [
        ("journal", "pottle journal --entry 38"),
        ("journal --last 3", "pottle journal --entry 38"),
        ("journal {essence}", "pottle lot OE-001-5"),
        ("journal --entry 18", "pottle lot OE-001-5"),
        ("journal --entry 1", "pottle journal"),
        ("cost {oil}", "pottle cost SOO-001-3 --margin PERCENT"),
        ("cost {oil} --margin 50", "pottle lot SOO-001-3"),
        ("cost {carb}", 'pottle correct 12 --set cost=PRICE --because "from the invoice"'),
        (
            "record {essence} --out record.pdf",
            'pottle start --product "NAME" --kind syrup --target VOLUME',
        ),
        ("record {packed} --out record.pdf", "pottle trace BOS-001-S"),
    ],
)
def test_what_is_looked_up_or_printed_ends_with_the_next_step(
    shell: Shell, command: str, step: str
) -> None:
    assert shell.line(command).lines[-1] == f"Next: {step}"
    plain = shell.line(f"{command.replace('record.pdf', 'again.pdf')} --json")
    assert plain.exit_code == 0
    assert "next" not in plain.json


def test_entries_are_listed_in_their_order_the_last_when_asked(shell: Shell) -> None:
    heads, first, second, step = shell.line("journal --last 2").lines
    assert heads.split() == ["entry", "when", "by", "lot", "what"]
    assert first.split()[0] == "37"
    assert first.endswith("AB  BOS-001-S  moved: 6 sold to Bridge Street Stall.")
    assert second.split()[0] == "38"
    assert second.endswith(
        "AB  BOS-001-S  complaint: cloudy, from Bridge Street Stall, to be answered in 7 d."
    )
    assert step == "Next: pottle journal --entry 38"


def test_an_entry_that_is_not_there_is_refused(shell: Shell) -> None:
    answer = shell.run("journal", "--entry", "999")
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            "There is no entry 999 in the book.",
            "  pottle journal lists the entries with their numbers.",
        ],
    )


def test_a_damaged_entry_is_named_and_the_rest_is_shown(shell: Shell) -> None:
    run(shell.book, "UPDATE entry SET body = substr(body, 9) WHERE seq = 12")
    answer = shell.run("journal", "--last", "0", "--json")
    whole = [number for number in range(1, shell.entries() + 1) if number != 12]
    assert [row["entry"] for row in answer.json] == whole
    answer = shell.run("journal", "--last", "0")
    assert (answer.exit_code, len(answer.lines)) == (1, 1 + len(whole))
    assert answer.complaints == [
        "Entry 12 is damaged and is left out here.",
        f"  {WHAT_TO_DO}",
    ]


@pytest.mark.parametrize("command", ["due", "stock --value", "suspects", "trace OE-001-5"])
def test_a_damaged_book_is_told_by_every_command_that_meets_it(command: str, shell: Shell) -> None:
    run(shell.book, "UPDATE entry SET happened_at = 'when?', body = 'none' WHERE seq > 1")
    answer = shell.run(*command.split())
    assert answer.exit_code == 5
    assert answer.complaints == ["Entry 2 is damaged.", f"  {WHAT_TO_DO}"]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("journal")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("journal", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
