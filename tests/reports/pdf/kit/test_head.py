"""The head of a paper: the house, the kind of paper, the lot and what it is."""

from reports.pdf.kit.fonts import register
from reports.pdf.kit.head import paper_head, sentences
from reports.pdf.kit.marks import Rule, Words


def test_the_house_stands_first_and_a_rule_below_all() -> None:
    register()
    marks = paper_head("Fennimore & Sloe", "Recall drill", "E26-014-7", "Lemon soda").head.marks
    words = [mark for mark in marks if isinstance(mark, Words)]
    assert [mark.text for mark in words] == [
        "Fennimore & Sloe",
        "Recall drill",
        "E26-014-7",
        "Lemon soda",
    ]
    assert [mark.y for mark in words] == sorted(mark.y for mark in words)
    assert isinstance(marks[-1], Rule)
    assert marks[-1].y > words[-1].y


def test_a_long_sentence_stays_whole_in_one_strip() -> None:
    register()
    short, long = sentences(["Set them aside.", "Set them aside until we collect them. " * 8])
    assert len(short.head.marks) == 1
    assert len(long.head.marks) > 1
    assert long.rows == ()
