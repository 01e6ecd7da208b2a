"""Random books tell what a second model of the trade tells, figure by figure."""

from collections import Counter

import pytest

from tests.keeper import Keeper
from tests.model.books import Played, played
from tests.model.compare import differences

BOOKS = 25
"""How many books are kept here; `python -m tests.model` keeps a thousand."""


@pytest.mark.parametrize("seed", range(BOOKS))
def test_a_random_book_tells_what_the_second_model_tells(seed: int, sqlite_keeper: Keeper) -> None:
    book = played(sqlite_keeper, seed, steps=25)
    assert list(differences(book)) == []


def test_random_books_have_all_sorts_of_acts_in_them(sqlite_keeper: Keeper) -> None:
    """Else the comparison would be of nothing."""
    book: Played = played(sqlite_keeper, 1, steps=160)
    acts = Counter(act.kind for act in book.acts)
    assert acts.keys() >= {
        "add", "makeup", "filter", "rinse", "apart", "finish", "bottle", "sale", "count",
    }  # fmt: skip
    told = Counter(line.split()[0] for line in book.told)
    assert told["corrected"] > 3
    assert told["struck"] > 0
    assert any(act.cake_of for act in book.acts if act.kind == "filter")
