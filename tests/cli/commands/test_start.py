"""A batch that is made by a formula is made by its next steps alone."""

from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.path import SET_UP
from tests.cli.shell import Shell, walk
from tests.cli.shown import check_shown

FORMULAS = Path("sample_data/formulas").resolve()
LONG_AGO = 600
"""Hours ago at which the goods came."""
APART = 30
"""Hours from one act to the next, longer than any rest of these formulas has to be."""
FILLED = {
    "SIZE": "20",
    "GRADE": "bright",
    "DEGREES": "4",
}
"""What a maker might fill in for the capitals of a next step."""
GOODS = (
    'material add carbonate --name "Light magnesium carbonate" --kind clarifier',
    f"receive orange-oil 500mL --at -{LONG_AGO}h",
    f"receive carbonate 500g --at -{LONG_AGO}h",
    f"receive spirit 5L --at -{LONG_AGO}h",
    f"receive sugar 25kg --at -{LONG_AGO}h",
    f"receive water 100L --at -{LONG_AGO}h",
)


@pytest.fixture
def stocked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book with both sample formulas and all that they call for."""
    monkeypatch.chdir(tmp_path)
    shell = Shell(tmp_path / "pottle.db")
    load = [f"formula load '{FORMULAS / name}.toml'" for name in ("orange-essence", "orange-syrup")]
    for command, answer in walk(shell, (*SET_UP, *(("", line) for line in (*GOODS, *load)))):
        assert answer.exit_code == 0, (command, answer)
    return shell


def acts(shell: Shell, step: str, ago: int, volume: str) -> list[str]:
    """Begin a batch and do each next step until its making has ended; return them all."""
    told = list[str]()
    while not told or not told[-1].startswith("finish"):
        for capitals, words in {**FILLED, "VOLUME": volume}.items():
            step = step.replace(f" {capitals}", f" {words}")
        told.append(step)
        answer = shell.line(f"{step} --at -{ago - APART * len(told)}h --json")
        assert answer.exit_code == 0, (told, answer.err)
        step = answer.json["next"].removeprefix("pottle ")
    return told


def test_a_batch_is_made_by_the_next_steps_alone(stocked: Shell) -> None:
    assert acts(stocked, "start orange-essence 480mL", LONG_AGO, "440mL") == [
        "start orange-essence 480mL",
        "add OE-001-5 SOO-001-3 30mL",
        "add OE-001-5 LMC-001-F 20g",
        "add OE-001-5 NS-001-J 450mL",
        "rest OE-001-5 --for macerate",
        "rest OE-001-5 --end",
        "rest OE-001-5 --for chill",
        "rest OE-001-5 --end --temp 4",
        "filter OE-001-5 --medium paper --pore 20 --out 440mL --temp 4",
        "filter OE-001-5 --medium paper --pore 20 --out 440mL --temp 4",
        "look OE-001-5 bright --of neat",
        "finish OE-001-5 440mL",
    ]


def test_the_look_at_a_sample_of_some_age_comes_after_the_making(stocked: Shell) -> None:
    acts(stocked, "start orange-essence 480mL", LONG_AGO, "440mL")
    old = stocked.run("lot", "OE-001-5", "--json").json["next"]
    assert old == "pottle look OE-001-5 GRADE --of neat"
    stocked.line("finish OE-001-5 440mL")
    young = stocked.run("lot", "OE-001-5", "--json").json["next"]
    assert young == "pottle due"


def test_what_still_goes_in_comes_before_the_next_step(stocked: Shell) -> None:
    begun = stocked.line("start orange-syrup 4L --json").json["code"]
    stocked.line(f"add {begun} WTR-002-Y 2.06L")
    told = stocked.line(f"add {begun} WS-001-R 3.09kg --json").json
    assert told["next"] == "pottle start orange-essence VOLUME"
    read = stocked.line(f"measure {begun} brix 60 --json").json
    assert read["next"] == told["next"]


BEGUN = """\
Recorded 41, started OE-002-3: Orange essence (essence), target 480 mL, formula orange version \
{version}.
OE-002-3, Orange essence: 0 mL, being made.
what        calls for  lot          take  best before
orange-oil      {oil} mL  SOO-001-3   {oil} mL  2099-06-30
spirit         440 mL  NS-001-J   440 mL
Next, as it is done:
  pottle add OE-002-3 SOO-001-3 {oil}mL
  pottle add OE-002-3 NS-001-J 440mL
"""


SHORT = """\
Recorded 41, started OE-002-3: Orange essence (essence), target 48 L, formula orange version 2.
OE-002-3, Orange essence: 0 mL, being made.
what        calls for  lot          take  best before
orange-oil      3.2 L  SOO-001-3  470 mL  2099-06-30
spirit           44 L  NS-001-J   4.56 L
Short of orange-oil: 2.73 L of 3.2 L are in no lot that may be used.
Short of spirit: 39.44 L of 44 L are in no lot that may be used.
Next, as it is done:
  pottle add OE-002-3 SOO-001-3 470mL
  pottle add OE-002-3 NS-001-J 4.56L
"""


ANSWERS: dict[str, Answers] = {
    "a batch by a formula": ("start orange 480mL", BEGUN.format(version=2, oil=32)),
    "a batch by a formula with too little there": ("start orange 48 L", SHORT),
    "a batch by an old version": (
        "start orange 480mL --version 1",
        BEGUN.format(version=1, oil=30),
    ),
}

REFUSED: dict[str, Refused] = {
    "a batch with a sheet over a file": (
        "start orange 480mL --out there.pdf",
        5,
        (
            "There is a file there.pdf already; it was left as it is.",
            "Give another name with --out, or --force to write over it.",
        ),
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, formulas: Shell) -> None:
    check_answers(answers, formulas)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_command_refuses_and_records_nothing(refused: Refused, formulas: Shell) -> None:
    check_refused(refused, formulas)


def test_the_proposed_commands_can_be_typed_as_they_stand(formulas: Shell) -> None:
    told = formulas.run("start", "orange", "480mL").lines
    for line in told[told.index("Next, as it is done:") + 1 :]:
        command = line.strip().removeprefix("pottle ")
        assert formulas.line(command).exit_code == 0, command
    assert "OE-002-3, Orange essence: 472 mL, being made." in formulas.run("lot", "OE-002-3").lines


def test_the_next_step_is_the_next_line_until_all_of_the_formula_is_in(formulas: Shell) -> None:
    begun = formulas.run("start", "orange", "320mL", "--json").json
    assert begun["next"] == "pottle add OE-002-3 SOO-001-3 21.3mL"
    first = formulas.line(begun["next"].removeprefix("pottle "))
    assert first.lines[-1] == "Next: pottle add OE-002-3 NS-001-J 293mL"
    assert formulas.run("lot", "OE-002-3").lines[-1] == first.lines[-1]
    second = formulas.line("add OE-002-3 NS-001-J 293mL --json").json
    assert second["next"] == "pottle rest OE-002-3 --for macerate"
    assert formulas.run("lot", "OE-002-3", "--json").json["next"] == second["next"]


def test_a_line_of_which_there_is_no_lot_is_received_first(formulas: Shell) -> None:
    formulas.run("start", "orange", "320mL")
    formulas.run("hold", "NS-001-J", "--because", "no papers")
    added = formulas.run("add", "OE-002-3", "SOO-001-3", "21.3mL")
    assert added.lines[-1] == "Next: pottle receive spirit AMOUNT"


def test_of_what_is_made_here_and_not_there_a_batch_is_begun_first(
    formulas: Shell, tmp_path: Path
) -> None:
    file = tmp_path / "cordial.toml"
    file.write_text(
        'code = "cordial"\nversion = 1\nproduct = "Cordial"\nkind = "syrup"\nbasis = "1L"\n'
        '[[line]]\nmaterial = "spirit"\namount = "10mL"\n'
        '[[line]]\nformula = "orange"\namount = "30mL"\n',
        encoding="utf-8",
    )
    assert formulas.run("formula", "load", str(file)).exit_code == 0
    formulas.run("hold", "OE-001-5", "--because", "hazy")
    begun = formulas.run("start", "cordial", "1L", "--json").json
    added = formulas.line(begun["next"].removeprefix("pottle "))
    assert added.lines[-1] == "Next: pottle start orange VOLUME"


def test_a_lot_on_hold_is_not_proposed(formulas: Shell) -> None:
    formulas.run("hold", "SOO-001-3", "--because", "smells of pine")
    found = formulas.run("start", "orange", "480mL", "--json").json
    assert found["proposed"] == [
        {
            "material": "orange-oil",
            "formula": None,
            "amount": {"amount": "32", "unit": "mL"},
            "asked": {"amount": "32", "unit": "mL"},
            "short": {"amount": "32", "unit": "mL"},
            "lots": [],
        },
        {
            "material": "spirit",
            "formula": None,
            "amount": {"amount": "440", "unit": "mL"},
            "asked": {"amount": "440", "unit": "mL"},
            "short": {"amount": "0", "unit": "mL"},
            "lots": [{"code": "NS-001-J", "amount": {"amount": "440", "unit": "mL"}}],
        },
    ]


def test_amounts_need_no_quotes_wherever_they_stand(shell: Shell) -> None:
    lines = shell.line("start --product Blend --kind blend --target 1 L").lines
    assert lines[0].endswith("Blend (blend), target 1 L.")
    added = shell.line("add . spirit 100 mL --temp 68 F --took 5 min")
    assert "100 mL of Neutral spirit" in added.lines[0]
    assert added.lines[0].endswith("at 20 °C, over 5 min.")


@pytest.mark.parametrize("name", ["orange", "orange peel", "orange peel in june"])
def test_the_name_of_a_plan_may_be_of_several_words(
    name: str, shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    monkeypatch.setattr("cli.screens.causes.trial.begin_jars", lambda _, plan: told.append(plan))
    assert shell.line(f"start --from-plan {name}").exit_code == 0
    assert [plan.split() for plan in told] == [name.split()]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("start")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("start", still)
