"""The head of a paper: the house, the kind of paper, the lot and what it is."""

from reports.kit.frame import Heading
from reports.pdf.kit.fonts import register
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Rule, Symbol, Words
from tests.reports.pdf.examples import FRAME


def test_the_house_stands_first_and_a_rule_below_all() -> None:
    register()
    marks = paper_head(FRAME, Heading("Recall drill", "E26-014-7", "Lemon soda")).head.marks
    words = [mark for mark in marks if isinstance(mark, Words)]
    assert [mark.text for mark in words] == [
        "Fennimore & Sloe",
        "2 Invented Lane, Nowhere-on-Sea, NW0 0XX",
        "Recall drill",
        "E26-014-7",
        "Lemon soda",
    ]
    assert [mark.y for mark in words] == sorted(mark.y for mark in words)
    assert isinstance(marks[-1], Rule)
    assert marks[-1].y > words[-1].y


def test_a_lot_has_its_symbol_beside_its_name() -> None:
    register()
    heading = Heading("Batch record", "E26-014-7", symbol="E26-014-7")
    (symbol,) = [m for m in paper_head(FRAME, heading).head.marks if isinstance(m, Symbol)]
    assert symbol.text == "E26-014-7"


def test_a_long_sentence_stays_whole_in_one_strip() -> None:
    register()
    short, long = sentences(["Set them aside.", "Set them aside until we collect them. " * 8])
    assert len(short.head.marks) == 1
    assert len(long.head.marks) > 1
    assert long.rows == ()
