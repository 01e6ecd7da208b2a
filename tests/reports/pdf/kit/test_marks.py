"""Marks are moved down and to the right, and nothing else of them changes."""

from reports.pdf.kit.fonts import REGULAR
from reports.pdf.kit.marks import Patch, Rule, Symbol, Words, lowered, shifted
from reports.pdf.kit.text import Face

MARKS = (
    Words(10, 20, "Lot", Face(REGULAR, 9), "right", struck=True),
    Rule(10, 20, 30, 25, 0.5),
    Symbol(10, 20, "E26-014-7", 40),
)


def test_both_ends_of_a_rule_are_moved_down_with_the_words() -> None:
    words, rule, symbol = lowered(MARKS, 5)
    assert words == Words(10, 25, "Lot", Face(REGULAR, 9), "right", struck=True)
    assert (rule, symbol) == (Rule(10, 25, 30, 30, 0.5), Symbol(10, 25, "E26-014-7", 40))


def test_both_ends_of_a_rule_are_moved_to_the_right() -> None:
    words, rule, symbol = shifted(MARKS, 5)
    assert words == Words(15, 20, "Lot", Face(REGULAR, 9), "right", struck=True)
    assert (rule, symbol) == (Rule(15, 20, 35, 25, 0.5), Symbol(15, 20, "E26-014-7", 40))


def test_a_patch_moves_with_all_its_corners() -> None:
    (moved,) = shifted(lowered([Patch(((0.0, 0.0), (2.0, 1.0)))], 3.0), 1.0)
    assert isinstance(moved, Patch)
    assert moved.corners == ((1.0, 3.0), (3.0, 4.0))
