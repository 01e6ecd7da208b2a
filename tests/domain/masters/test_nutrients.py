"""Nutrients are read as papers list them and kept in one way."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.masters.nutrients import NUTRIENTS, WHOLES, nutrients, read_nutrients
from ledger.errors import LedgerError

SOME = st.dictionaries(st.sampled_from(WHOLES), st.integers(0, 140_000), min_size=1, max_size=6)


@given(SOME)
def test_what_is_kept_reads_back_as_itself(shares: dict[str, int]) -> None:
    """The text of a book is read again in the same way; seven wholes weigh 98 g at most."""
    text = "; ".join(f"{name} {gram / 10_000:.4f}" for name, gram in shares.items())
    kept = read_nutrients(text)
    assert read_nutrients(kept) == kept
    assert list(nutrients(kept)) == [name for name in NUTRIENTS if name in shares]
    for name, gram in shares.items():
        assert nutrients(kept)[name] == pytest.approx(gram / 1e6)


def test_none_is_told_as_such() -> None:
    """A flavouring without any of them."""
    assert (read_nutrients("None"), nutrients("none")) == ("none", {})


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("sugars lots", '"sugars lots" is not a nutrient with its grams.'),
        ("fat 3.00001", '"3.00001" is a finer number of grams than the book keeps.'),
        ("vitamin 3", '"vitamin" is not a nutrient.'),
        ("fat 3; fat 4", "fat is told more than once."),
        ("fat 60; protein 41", "The nutrients in 100 g weigh 101 g together."),
        ("carbohydrate 50; sugars 51", "51 g of sugars cannot be in 50 g of carbohydrate."),
        ("  ", "No nutrient is told."),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(text: str, sentence: str) -> None:
    """Each with what to do."""
    with pytest.raises(LedgerError) as refused:
        read_nutrients(text)
    assert refused.value.problems[0][0] == sentence
