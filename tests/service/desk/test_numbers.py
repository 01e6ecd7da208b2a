"""Numbers of entries, as people write them."""

import pytest

from ledger.errors import InputError
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import How
from ledger.service.desk.numbers import entry_number
from tests.keeper import Keeper


@pytest.mark.parametrize(
    ("text", "number"), [("16", 16), ("#16", 16), (" #16 ", 16), ("1" * 15, int("1" * 15))]
)
def test_a_number_may_have_its_sign(text: str, number: int) -> None:
    assert entry_number(text) == number


@pytest.mark.parametrize("text", ["", "#", "-1", "sixteen", "1.5", "1" * 16, "\u0661"])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        entry_number(text)
    assert raised.value.problems == (
        (
            f'"{text}" is not the number of an entry.',
            "pottle journal lists the entries with their numbers.",
        ),
    )


def test_an_entry_is_found_by_its_number_or_there_is_none(sqlite_keeper: Keeper) -> None:
    with at_desk(sqlite_keeper.book, How("AB")) as desk:
        first = desk.entry_named("#1")
        assert first is not None
        assert (first.seq, first.kind) == (1, "house")
        assert desk.entry_named("999") is None
