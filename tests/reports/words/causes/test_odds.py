"""Causes and chances in words."""

from reports.words.causes import odds
from reports.words.causes import odds as module
from tests.kept.said import check_constants, check_said


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(odds)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
