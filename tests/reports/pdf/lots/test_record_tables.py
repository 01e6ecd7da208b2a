"""The tables of a record on paper: struck words stay legible, amounts share an edge."""

from msgspec.structs import replace

from reports.pdf.kit.marks import Words
from reports.pdf.lots.record import batch_record
from reports.pdf.lots.record_tables import gate, ladder, steps
from reports.views.lots import GateRow, LadderRow
from tests.reports.pdf.examples import RECORD, step
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
