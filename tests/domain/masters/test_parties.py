"""Names of parties: who can be named, and which names are asked about."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.masters.parties import MARKET, WALK_IN, is_named, near_names, party_word


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
    ("one", "other", "is_near"),
    [
        ("Café Blue Kettle", "Cafe blue kettle", True),
        ("Cafe Blue Ketle", "Café Blue Kettle", True),
        ("Café Bleu Kettle", "Café Blue Kettle", True),
        ("Café Blue Kettles", "Café Blue Kettle", True),
        ("Stall 7", "Stall 8", False),
        ("Stall 7", "Stall 17", False),
        ("Bar", "Car", False),
        ("Quay Bar", "Quay Inn", False),
        ("“”", "‘’", False),
        ("北京茶馆", "北京茶館", False),
    ],
)
def test_names_that_differ_by_accents_case_or_a_letter_are_near(
    one: str, other: str, *, is_near: bool
) -> None:
    """Numbers tell two places apart, and so does a letter of a short name."""
    assert near_names(one, [other]) == ((other,) if is_near else ())


@given(one=st.text(max_size=12), other=st.text(max_size=12))
def test_two_names_are_near_each_other_or_not_whichever_is_asked_of(one: str, other: str) -> None:
    assert bool(near_names(one, [other])) is bool(near_names(other, [one]))
    assert near_names(one, [one]) == ()
