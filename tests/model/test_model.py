"""Random books tell what a second model of the trade tells, figure by figure."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from ledger.domain.entries.choices import LotType
from ledger.service.glass.cost import cost
from ledger.service.lots.shares import traced
from ledger.service.lots.stock import stock
from tests.conftest import opened
from tests.keeper import MORNING, Keeper, SetClock, copy_book
from tests.model.agree import by_cost, disagreements
from tests.model.books import played
from tests.model.compare import differences
from tests.model.jars import Act

GROUPS, BOOKS = 5, 5
"""How many groups of how many books are kept here; `python -m tests.model` keeps a thousand."""


@pytest.mark.parametrize("group", range(GROUPS))
def test_random_books_tell_what_the_second_model_tells(
    group: int, template: Path, tmp_path: Path
) -> None:
    """Acts of all sorts are in them, else the comparison would be of nothing."""
    acts, told = list[Act](), list[str]()
    for seed in range(group * BOOKS, (group + 1) * BOOKS):
        where = copy_book(template, tmp_path / f"{seed}.db")
        with opened(str(where), SetClock(MORNING)) as keeper:
            book = played(keeper, seed, steps=25)
            assert (seed, list(differences(book))) == (seed, [])
            assert (seed, list(disagreements(keeper.book))) == (seed, [])
        acts, told = [*acts, *book.acts], [*told, *book.told]
    assert {act.kind for act in acts} >= {
        "add", "makeup", "filter", "rinse", "apart", "finish", "bottle", "sale",
    }  # fmt: skip
    assert {"corrected", "struck"} <= {line.split()[0] for line in told}
    assert any(act.cake_of for act in acts if act.kind == "filter")


def test_a_share_that_nobody_paid_for_is_noticed(sqlite_keeper: Keeper) -> None:
    book = played(sqlite_keeper, 2, steps=25).keeper.book
    lot = next(lot.code for lot in stock(book, everything=True) if lot.lot_type is LotType.MADE)
    behind = traced(book, lot, forward=False).behind
    unpaid = replace(cost(book, lot), lines=(), total_minor=0, duty_minor=0, labour_minor=None)
    assert len(list(by_cost(unpaid, behind))) == sum(share.amount > 2 for share in behind.values())
