"""Names of parties: who can be named."""

import pytest

from ledger.domain.masters.parties import MARKET, WALK_IN, is_named, party_word


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
