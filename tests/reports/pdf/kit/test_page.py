"""The foot of every page: what paper it is, the seal, and which page of how many."""

import pytest

from ledger.errors import RefusedError
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Symbol, Words
from reports.pdf.kit.page import FOOT_ROOM, foot
from tests.reports.pdf.examples import SEAL


def test_a_foot_has_the_page_and_the_seal_in_words_and_as_a_symbol() -> None:
    register()
    strip = foot("Batch record E26-014-7", SEAL, 2, 3)
    words = [mark.text for mark in strip.marks if isinstance(mark, Words)]
    (symbol,) = [mark for mark in strip.marks if isinstance(mark, Symbol)]
    assert words[:2] == ["Page 2 of 3", "Batch record E26-014-7"]
    assert words[2:] == list(SEAL)
    assert symbol.text == "\n".join(SEAL)
    assert strip.height == FOOT_ROOM


def test_a_foot_that_is_too_high_is_refused_with_what_it_has() -> None:
    register()
    with pytest.raises(RefusedError) as raised:
        foot("Batch record E26-014-7", ("word " * 400,), 1, 1)
    assert raised.value.what.startswith("The foot of the page, with the seal, needs ")
    assert raised.value.what.endswith(" mm of height and has 15.0 mm.")
    assert raised.value.todo == "Shorten the name of the house and print again."
