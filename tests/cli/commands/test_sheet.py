"""`pottle sheet`: what the sheet of a batch says, on the screen and on paper."""

from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.cases import Refused, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

SHEET = """\
Vessel: Pan 2
Clarity: clear

code  act               what                                        write down
A1    Sweet orange oil  32 mL; 31.4 mL to 32.6 mL; SOO-001-3 32 mL  lot, amount, day, time, \
weighed, checked
A2    Neutral spirit    440 mL; NS-001-J 440 mL                     lot, amount, day, time, \
weighed, checked
S1    rest              for macerate, at least 2 d                  begun, ended, °C, shaken, \
by, checked
S2    finish                                                        out mL, waste mL, °C, work \
min, day, time, by, checked
X1                                                                  what, lot, amount, day, \
time, by, checked
X2                                                                  what, lot, amount, day, \
time, by, checked
X3                                                                  what, lot, amount, day, \
time, by, checked

Flavouring in strong alcohol: highly flammable, keep from flames and from children, dilute before \
use.
Typed in afterwards with --sheet OE-002-3/CODE --at WHEN --by INITIALS.
"""


REFUSED: dict[str, Refused] = {
    "a sheet of a delivery": (
        "sheet {oil}",
        3,
        (
            "SOO-001-3 is no batch, so there is no sheet to make it from.",
            "Name a lot that was begun with: pottle start ...",
        ),
    ),
    "a sheet of a lot and of a formula at once": (
        "sheet {essence} --formula orange",
        2,
        (
            "A sheet is of one batch, and both a lot and a formula are named.",
            "Leave one of the two out.",
        ),
    ),
    "a sheet by a formula for no volume": (
        "sheet --formula orange --target 2kg",
        2,
        ("2kg is not a volume.", "Give a volume, such as 480mL."),
    ),
    "a sheet over a file": (
        "sheet {essence} --out there.pdf",
        5,
        (
            "There is a file there.pdf already; it was left as it is.",
            "Give another name with --out, or --force to write over it.",
        ),
    ),
}


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_command_refuses_and_records_nothing(refused: Refused, formulas: Shell) -> None:
    check_refused(refused, formulas)


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
    begun = formulas.run("start", "orange", "480mL", "--out", "begun.pdf")
    assert begun.lines[-1] == "The sheet of OE-002-3 is in begun.pdf."
    later = formulas.run("sheet", "OE-002-3", "--out", "later.pdf")
    assert later.lines == ["The sheet of OE-002-3 is in later.pdf."]
    for name in ("begun.pdf", "later.pdf"):
        assert Path(name).read_bytes().startswith(b"%PDF-")


def test_the_columns_of_a_batch_s_sheet_are_written_and_come_in_filled(shell: Shell) -> None:
    answer = shell.run("sheet", "--blank-csv", "evening.csv")
    assert answer.lines[1] == "Fill in a row each, then: pottle import evening.csv --dry-run"
    blank = Path("evening.csv").read_text(encoding="utf-8-sig")
    heads = blank.strip().split(",")
    row = dict.fromkeys(heads, "") | {
        "date": "2026-03-01",
        "time": "19:30",
        "by": "AB",
        "batch": "EV-1",
        "sheet no": "S-4",
        "product": "Lemon essence",
        "kind": "essence",
        "target mL": "300",
        "note": "Late.",
    }
    Path("evening.csv").write_text(blank + ",".join(row[head] for head in heads) + "\r\n")
    assert shell.run("import", "evening.csv").lines[-2].startswith("Recorded 39 to 40: 1 row")
    assert "sheet S-4, evening.csv line 2" in shell.run("journal", "EV-1").out


def test_a_form_that_is_none_and_no_lot_at_all_are_refused(shell: Shell) -> None:
    problem = ('"fair" is no form of a sheet.', "Give --form with batch or stall.")
    check_refused(("sheet --blank-csv a.csv --form fair", 2, problem), shell)
    problem = (
        "A sheet is of one batch, and none is named.",
        "Name its lot, or --formula CODE before it is begun, or give --blank-csv FILE for the "
        "columns to type it into.",
    )
    check_refused(("sheet", 2, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("sheet")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("sheet", still)
