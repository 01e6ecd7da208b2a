"""A card on paper: columns as wide as the page, nothing where there is nothing to tell."""

import pytest
from msgspec.structs import replace

from reports.kit.card import Card, CardPart, rows_of
from reports.kit.frame import Heading
from reports.pdf.kit import card as module
from reports.pdf.kit.card import SHORT, _part, card_paper, columns_of
from reports.pdf.kit.fonts import register
from reports.pdf.kit.page import INNER
from reports.pdf.kit.styles import GUTTER
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import printed, text_of

PART = CardPart(
    "In a glass",
    heads=("what", "30 mL in 1 L"),
    rows=rows_of([["strength", "0.33 % vol"], ["sugar", "22.5 g"]]),
    right=frozenset({"30 mL in 1 L"}),
    below=("Said below.",),
)


@pytest.mark.parametrize("words", ["a", "a word " * 30])
def test_columns_are_as_wide_together_as_the_page(words: str) -> None:
    register()
    part = CardPart("", heads=("one", "two", "three"), rows=((words, words, words),))
    assert sum(column.width for column in columns_of(part)) == pytest.approx(INNER + GUTTER, abs=1)


def test_figures_at_the_end_of_a_row_stand_near_its_words() -> None:
    register()
    assert sum(column.width for column in columns_of(PART)) < INNER / 2


def test_a_card_has_its_parts_in_order_and_none_of_what_is_empty() -> None:
    parts = (CardPart("", above=("First.",)), CardPart("Empty"), PART)
    card = Card(FRAME, Heading("Serving card", "OE-001-5", "Orange essence"), parts)
    check_golden("ink/card.txt", ink_of(printed(card_paper, card)))
    text = text_of(printed(card_paper, card))
    order = [text.index(words) for words in ("First.", "In a glass", "strength", "Said below.")]
    assert order == sorted(order)
    assert "Empty" not in text


def test_every_mark_of_the_parts_of_a_card_stands_where_it_stood() -> None:
    """Tables narrow, as wide as the page and too wide, ragged rows, and words without a table."""
    register()
    wide = "a word and another " * 9
    parts = (
        PART,
        replace(PART, right=frozenset(), above=("Above.", "And more.")),
        CardPart("Wide", heads=("one", "two", "three"), rows=((wide, wide, "c"), ("a",) * 3)),
        CardPart("One", heads=("a head wider than its cells",), rows=(("x",),)),
        CardPart("Words", above=("First.",), below=("Last.", "And.")),
        CardPart("", below=("Alone.",)),
        CardPart("Empty"),
        replace(PART, rows=PART.rows * (SHORT // 2)),
        replace(PART, rows=PART.rows * (SHORT // 2) + PART.rows[:1]),
    )
    sections = [section for part in parts for section in _part(part)]
    check_golden("laid/card.txt", laid(*sections))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
