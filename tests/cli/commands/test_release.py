"""Commands of formulas, and of the batches and the sheets that follow them."""

from pathlib import Path

import pytest

from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.shell import Shell

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
SHEET = """\
Vessel: Pan 2
Clarity: clear

code  act               what                                        write down
A1    Sweet orange oil  32 mL; 31.4 mL to 32.6 mL; SOO-001-3 32 mL  lot, amount, day, time, by
A2    Neutral spirit    440 mL; NS-001-J 440 mL                     lot, amount, day, time, by
S1    rest              for macerate, at least 2 d                  begun, ended, °C, shaken, by
S2    finish                                                        out mL, waste mL, °C, work \
min, day, time, by

Flavouring in strong alcohol: highly flammable, keep from flames and from children, dilute before \
use.
Typed in afterwards with --sheet OE-002-3/CODE --at WHEN --by INITIALS.
"""
ANSWERS: dict[str, Answers] = {
    "versions that differ": (
        "formula diff orange 1 2",
        """\
what        version 1                         version 2
orange-oil  15 mL, ± 2 %                      16 mL, ± 2 %
step 1      rest: for macerate, at least 1 d  rest: for macerate, at least 2 d
""",
    ),
    "versions that do not": (
        "formula diff orange 1 1",
        "Versions 1 and 1 of orange say the same.\n",
    ),
    "a formula for another volume": (
        "formula scale orange 480mL",
        """\
orange version 2, Orange essence, 480 mL
what        amount  overage  tolerance  within
orange-oil   32 mL           2 %        31.4 mL to 32.6 mL
spirit      440 mL
Next: pottle start orange 480mL
""",
    ),
    "an old version for another volume": (
        "formula scale orange 1L --version 1",
        """\
orange version 1, Orange essence, 1 L
what         amount  overage  tolerance  within
orange-oil  62.5 mL           2 %        61.3 mL to 63.7 mL
spirit       917 mL
Next: pottle start orange 1L
""",
    ),
    "a withdrawal": (
        "formula withdraw orange 2",
        "Recorded 41, formula withdrawn: orange version 2.\n",
    ),
    "a batch by a formula": ("start orange 480mL", BEGUN.format(version=2, oil=32)),
    "a batch by a formula with too little there": ("start orange 48 L", SHORT),
    "a batch by an old version": (
        "start orange 480mL --version 1",
        BEGUN.format(version=1, oil=30),
    ),
}
REFUSED: dict[str, Refused] = {
    "a version that is not there": (
        "formula diff orange 1 9",
        3,
        (
            "The formula orange version 9 is not in the book.",
            "pottle formula list shows those that are.",
        ),
    ),
    "a weight for a volume": (
        "formula scale orange 480g",
        2,
        ("480g is not a volume.", "Give a volume, such as 480mL."),
    ),
    "a formula that is not there": (
        "formula scale lemon 1L",
        3,
        ("The formula lemon is not in the book.", "pottle formula list shows those that are."),
    ),
    "a withdrawal of what is not there": (
        "formula withdraw orange 7",
        3,
        (
            "There is no version 7 of a formula orange in the book.",
            "pottle formula list shows those that are.",
        ),
    ),
    "a sheet of a delivery": (
        "sheet {oil}",
        3,
        (
            "SOO-001-3 is no batch, so there is no sheet to make it from.",
            "Name a lot that was begun with: pottle start ...",
        ),
    ),
    "a sheet over a file": (
        "sheet {essence} --out there.pdf",
        5,
        (
            "There is a file there.pdf already; it was left as it is.",
            "Give another name with --out, or --force to write over it.",
        ),
    ),
    "a batch with a sheet over a file": (
        "start orange 480mL --print there.pdf",
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


def test_a_formula_is_loaded_once(formulas: Shell) -> None:
    assert formulas.run("formula", "load", "first.toml").lines == [
        "In the book already, unchanged, as entry 39, formula: orange version 1 for Orange "
        "essence, basis 240 mL, 2 lines and 2 steps.",
        "Next: pottle start orange VOLUME",
    ]
    assert formulas.entries() == 40


def test_a_version_is_withdrawn_once(formulas: Shell) -> None:
    formulas.run("formula", "withdraw", "orange", "2")
    again = formulas.run("formula", "withdraw", "orange", "2")
    assert (again.exit_code, again.lines) == (
        0,
        ["In the book already, unchanged, as entry 41, formula withdrawn: orange version 2."],
    )
    assert formulas.entries() == 41
    formulas.run("strike", "41", "--because", "still in use")
    once_more = formulas.run("formula", "withdraw", "orange", "2")
    assert once_more.lines == ["Recorded 43, formula withdrawn: orange version 2."]


def test_a_withdrawn_version_is_not_followed_and_stays_listed(formulas: Shell) -> None:
    formulas.run("formula", "withdraw", "orange", "2")
    assert formulas.run("start", "orange", "480mL").lines[0].endswith("formula orange version 1.")
    assert formulas.run("formula", "list").lines == [
        "formula  version  product         kind     basis   state",
        "orange         1  Orange essence  essence  240 mL",
        "orange         2  Orange essence  essence  240 mL  withdrawn",
    ]
    assert formulas.run("formula", "list", "--json").json[0]["basis"] == {
        "amount": "240",
        "unit": "mL",
    }


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


def test_a_sheet_says_what_goes_in_what_is_done_and_what_is_written_down(formulas: Shell) -> None:
    formulas.run("start", "orange", "480mL", "--vessel", "Pan 2")
    out = formulas.run("sheet", "OE-002-3").out
    head, _, rest = out.partition("Vessel")
    assert head.splitlines()[:4] == [
        "Batch sheet OE-002-3: Orange essence",
        "Formula: orange version 2",
        "Target: 480 mL",
        "Yield: at least 85 %",
    ]
    assert "Vessel" + rest == SHEET


def test_a_sheet_is_printed_with_the_start_or_afterwards(formulas: Shell) -> None:
    begun = formulas.run("start", "orange", "480mL", "--print", "begun.pdf")
    assert begun.lines[-1] == "The sheet of OE-002-3 is in begun.pdf."
    later = formulas.run("sheet", "OE-002-3", "--out", "later.pdf")
    assert later.lines == ["The sheet of OE-002-3 is in later.pdf."]
    for name in ("begun.pdf", "later.pdf"):
        assert Path(name).read_bytes().startswith(b"%PDF-")
