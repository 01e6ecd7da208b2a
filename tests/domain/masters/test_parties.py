"""Names of parties: who can be named."""

import pytest

from ledger.domain.entries import Facts, Note, Party, Person
from ledger.domain.masters.parties import MARKET, WALK_IN, is_forgotten, is_named, party_word
from tests.domain.builders import make


@pytest.mark.parametrize(
    ("written", "word"),
    [
        ("market", MARKET),
        ("A Market", MARKET),
        ("walk in", WALK_IN),
        ("Walk-in customer", WALK_IN),
        ("Market Street Bar", "Market Street Bar"),
    ],
)
def test_a_market_and_a_walk_in_customer_are_one_word_each(written: str, word: str) -> None:
    assert party_word(written) == word
    assert is_named(word) is (word not in (MARKET, WALK_IN))


@pytest.mark.parametrize(
    ("facts", "is_gone"),
    [
        (make(Party, name="P1", code="P1"), True),
        (make(Party, name="Quay Bar", code="P1"), False),
        (make(Party, name="P2", code="P1"), False),
        (make(Person, name="AB", initials="AB"), True),
        (make(Person, name="Ada Notreal", initials="AB"), False),
        (make(Note), False),
    ],
)
def test_who_is_called_by_their_code_alone_was_forgotten(facts: Facts, is_gone: bool) -> None:
    assert is_forgotten(facts) is is_gone
