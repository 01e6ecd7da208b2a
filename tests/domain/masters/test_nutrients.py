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


HOW = (
    "Write each as NAME GRAMS in 100 g, with ; between them: fat, saturates, carbohydrate, sugars, "
    "polyols, fibre, protein, organic-acid, sodium."
)
AGAIN = "Read its papers again: they are g in 100 g."
LOTS = ('"sugars lots" is not a nutrient with its grams.', HOW)
TWICE = ("fat is told more than once.", "Write it once.")


@pytest.mark.parametrize(
    ("text", "problems"),
    [
        ("sugars lots", (LOTS,)),
        (
            "fat 3.00001",
            (
                (
                    '"3.00001" is a finer number of grams than the book keeps.',
                    "Round it and write it again.",
                ),
            ),
        ),
        ("vitamin 3", (('"vitamin" is not a nutrient.', HOW),)),
        ("fat 3; fat 4", (TWICE,)),
        ("fat 3; sugars lots; fat 4", (LOTS, TWICE)),
        (
            "fat 60; protein 40.5",
            (("The nutrients in 100 g weigh 100.5 g together.", AGAIN),),
        ),
        (
            "carbohydrate 50; sugars 51",
            (
                (
                    "51 g of sugars cannot be in 50 g of carbohydrate.",
                    "Write how much carbohydrate there is in all, its sugars among it.",
                ),
            ),
        ),
        (
            "saturates 2; polyols 0.1; protein 101",
            (
                ("The nutrients in 100 g weigh 101 g together.", AGAIN),
                (
                    "2 g of saturates cannot be in 0 g of fat.",
                    "Write how much fat there is in all, its saturates among it.",
                ),
                (
                    "0.1 g of polyols cannot be in 0 g of carbohydrate.",
                    "Write how much carbohydrate there is in all, its polyols among it.",
                ),
            ),
        ),
        ("  ", (("No nutrient is told.", f'{HOW} Write "none" for none at all.'),)),
    ],
)
def test_what_cannot_be_is_refused_with_what_to_do_and_all_at_once(
    text: str, problems: tuple[tuple[str, str], ...]
) -> None:
    with pytest.raises(LedgerError) as refused:
        read_nutrients(text)
    assert refused.value.problems == problems


def test_all_of_it_may_be_told_and_all_of_a_whole_may_be_its_part() -> None:
    """100 g in all; salt is sodium times 2.5, and an acid has a name of two words."""
    text = "fat 20;saturates: 20 g\ncarbohydrate 30; sugars 30; Organic acid 40; salt 25"
    assert read_nutrients(text) == (
        "fat 20; saturates 20; carbohydrate 30; sugars 30; organic-acid 40; sodium 10"
    )
    assert read_nutrients("fat 0.0625") == "fat 0.0625"
