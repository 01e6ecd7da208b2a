"""The fixed words of labels: every language has them all, and dates are day, month, year."""

from datetime import date

import pytest

from ledger.errors import InputError
from reports.words.goods import label_words as module
from reports.words.goods.label_words import label_words, languages
from tests.kept.said import check_constants, check_said


def test_six_languages_have_every_word_with_its_places() -> None:
    """Regulation (EU) 1169/2011, Annex X, 1(a): the words before the date, as officially worded."""
    assert set(languages()) == {"en", "de", "fr", "es", "it", "nl"}
    began = {code: words.best_before.split(" {")[0] for code, words in languages().items()}
    assert began == {
        "en": "Best before",
        "de": "Mindestens haltbar bis",
        "fr": "À consommer de préférence avant le",
        "es": "Consumir preferentemente antes del",
        "it": "Da consumarsi preferibilmente entro il",
        "nl": "Ten minste houdbaar tot",
    }
    for words in languages().values():
        assert "{days}" in words.opened
        assert "{parts}" in words.pour
        assert "{abv}" in words.strength


def test_a_day_is_written_as_annex_x_orders_it() -> None:
    """Annex X, 1(c): day, month and possibly year, uncoded, in that order."""
    day = date(2026, 12, 28)
    assert label_words(None).day(day) == "28 Dec 2026"
    assert label_words("FR").day(day) == "28.12.2026"


def test_a_language_without_words_is_refused_with_those_there_are() -> None:
    with pytest.raises(InputError) as raised:
        label_words("eo")
    assert raised.value.problems == (
        (
            'There are no words for labels in "eo".',
            "Give one of: en (English), de (German), fr (French), es (Spanish), it (Italian), "
            "nl (Dutch).",
        ),
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
