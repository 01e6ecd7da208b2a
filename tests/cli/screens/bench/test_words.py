"""The words of a line at the bench: joined, parted, and put where a command has them."""

from cli.screens.bench import words
from tests.said import check_constants, check_said


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(words)


def test_what_is_made_of_every_word_alone_is_the_kept_one() -> None:
    check_said(words, "told", "filled_slots")
