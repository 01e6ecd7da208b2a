"""The tables of a record on paper: struck words stay legible, amounts share an edge."""

from msgspec.structs import replace

from reports.pdf.kit.marks import Words
from reports.pdf.kit.page import SIDE, WIDTH
from reports.pdf.lots.record import batch_record
from reports.pdf.lots.record_tables import steps, went_to
from tests.reports.pdf.examples import RECORD, step
from tests.reports.pdf.readback import printed, text_of


def test_struck_words_are_struck_and_stay_legible_and_their_notes_are_not_struck() -> None:
    row = step(2, "add", "451 mL of ethanol", "Struck by 1190.", struck=True)
    (strip,) = steps("Steps", [row]).rows
    struck = {mark.text: mark.struck for mark in strip.marks if isinstance(mark, Words)}
    assert struck == {
        "1182": True,
        "2026-03-01 11:30": True,
        "add": True,
        "451 mL of ethanol": True,
        "Struck by 1190.": False,
        "AF": True,
    }
    text = text_of(printed(batch_record, replace(RECORD, steps=(row,))))
    assert "451 mL of ethanol\nStruck by 1190.\n" in text


def test_amounts_share_their_right_edge() -> None:
    rows = [("Corner", "sold", "1.50 mL"), ("Corner", "sold", "1 111 mL")]
    amounts = [
        mark
        for strip in went_to(rows).rows
        for mark in strip.marks
        if isinstance(mark, Words) and mark.text.endswith("mL")
    ]
    assert {(mark.x, mark.align) for mark in amounts} == {(WIDTH - SIDE, "right")}
