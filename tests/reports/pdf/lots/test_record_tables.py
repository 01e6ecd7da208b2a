"""The tables of a record on paper: struck words stay legible, amounts share an edge."""

from msgspec.structs import replace

from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Words
from reports.pdf.lots import record_tables as module
from reports.pdf.lots.record import batch_record
from reports.pdf.lots.record_tables import (
    gate,
    inputs,
    ladder,
    looks,
    neighbours,
    pairs,
    people,
    steps,
)
from reports.views.lots import GateRow, InputRow, LadderRow, LookRow, NeighbourRow
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import RECORD, step
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import printed, text_of


def test_struck_words_are_struck_and_stay_legible_and_their_notes_are_not_struck() -> None:
    row = step(2, "add", "451 mL of ethanol", "Struck by 1190.", struck=True)
    (strip,) = steps("Steps", [row]).rows
    struck = {
        mark.text: mark.struck for mark in strip.marks if isinstance(mark, Words) and mark.text
    }
    assert struck == {
        "1182": True,
        "2026-03-01 11:30": True,
        "add": False,
        "451 mL of ethanol": True,
        "Struck by 1190.": False,
        "AF": True,
    }
    text = text_of(printed(batch_record, replace(RECORD, made=(row,))))
    assert "451 mL of ethanol\nStruck by 1190.\n" in text


def test_amounts_share_their_right_edge() -> None:
    rows = [LadderRow("", "in", text, "1 %") for text in ("1.50 mL", "1 111 mL")]
    amounts = [
        mark
        for strip in ladder("Yield", rows).rows
        for mark in strip.marks
        if isinstance(mark, Words) and mark.text.endswith("mL")
    ]
    assert {mark.align for mark in amounts} == {"right"}
    assert len({mark.x for mark in amounts}) == 1


def test_a_box_is_ticked_where_it_is_so() -> None:
    """Three marks beside the words: the box and the two strokes of its tick."""
    met, unmet = gate([GateRow(True, "asked", "so"), GateRow(False, "asked", "not so")]).rows
    assert (len(met.marks), len(unmet.marks)) == (5, 3)


LONG = "Words that are many and go on in a further line of their column. " * 3


def test_every_mark_of_every_table_of_a_record_stands_where_it_stood() -> None:
    """Each with all of its fields, with as few as may be, and struck; and without rows."""
    register()
    put = InputRow("L-1", LONG, "30 mL", "", "AF", "11", False, "31 mL", "30 to 32", "-3 %", "MS")
    bare = InputRow("L-2", "water", "1 L", "", "", "12", True)
    done = replace(step(3, "add", LONG, "A note."), asked=LONG, departures=("Too warm.", "Late."))
    look = LookRow("21", "2026-03-01 10:30", "2 d", "neat", "hazy", "0.48", LONG, "MS", False)
    whole = NeighbourRow("L-9", LONG, "2026-02-01", "30 mL", LONG)
    yielded = [
        LadderRow("", "Put in", "1 045 mL", "100.0 %"),
        LadderRow("=", LONG, "1 005 mL", "96.2 %", is_sum=True),
        LadderRow("=", "Left", "5 mL", "0.5 %"),
    ]
    told = laid(
        inputs([put, replace(put, checked=""), bare]),
        inputs([]),
        steps("Made", [done, step(4, "rest", "18 h", struck=True, by="MS")]),
        looks([look, replace(look, words="", struck=True)]),
        ladder("Yield", yielded),
        neighbours("Back", [whole, NeighbourRow("L-8", "oil", "", "", "")]),
        people([("AF", LONG, "maker"), ("MS", "Mo Sloe (invented)", "")]),
        pairs("Around", [("Vessel", LONG), ("", "none")]),
        gate([GateRow(True, LONG, LONG), GateRow(False, "b", ""), GateRow(None, "c", "so")]),
    )
    check_golden("laid/record_tables.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
