"""A spirit account reads the lots that it counts, and comes out as if all had been read."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

import pytest
from sqlalchemy import Connection

from ledger.domain.lots.lot import Lot
from ledger.science.contents.received import holds_alcohol
from ledger.science.contents.replay import Replay
from ledger.science.contents.spirit import SpiritAccount, account, made_flows, spirit_flows
from ledger.service.account.replay import received_lot
from ledger.service.desk.book import Book
from ledger.service.glass import alcohol
from ledger.service.glass.spirit import spirit_account
from ledger.service.lots.stock import stock
from ledger.store.read.lots import all_lots
from ledger.store.read.received import received
from ledger.store.read.steps import Steps, steps_of
from tests.keeper import MORNING, Keeper
from tests.model.books import played

A_DAY_MIN = 24 * 60
LAST = "2026-12-31"
SEED = 9
"""Of which the random book is kept; forty others, kept for longer, gave no difference either."""


def whole_replay(book: Book, first: date, last: date) -> SpiritAccount:
    """Return the account of a period from a replay of all lots of the book."""
    with book.reading() as connection:
        ids = all_lots(connection)
        known = {code: received_lot(row) for code, row in received(connection, ids).items()}
        steps = steps_of(connection, ids, of_bought=True).steps
    spirits = {code: lot for code, lot in known.items() if holds_alcohol(lot)}
    made = {code: told for code, told in steps.items() if code not in known}
    replay = Replay(made, known)
    flows = [flow for code, lot in spirits.items() for flow in spirit_flows(lot, steps[code])]
    flows += [flow for code in made for flow in made_flows(code, replay.happenings(code))]
    ends = {code: alcohol._finished(told) for code, told in made.items()}
    span = (f"{first}T00:00:00", f"{last + timedelta(days=1)}T00:00:00")
    return account(flows, span, frozenset(spirits), {lot: end for lot, end in ends.items() if end})


def use_up(keeper: Keeper, every: int) -> None:
    """Send away all that is there of some of the lots that are no deliveries."""
    found = [lot for lot in stock(keeper.book) if not lot.material and lot.on_hand > 0]
    for lot in found[::every]:
        keeper.do("send", lot=lot.code, amount=amount_of(lot), moved_as="destroyed", because="old")


def amount_of(lot: Lot) -> str:
    return f"{lot.on_hand / 1000}mL" if lot.measure.value == "uL" else f"{lot.on_hand // 1_000_000}"


def kept_for_months(keeper: Keeper, seed: int) -> None:
    """Keep a random book, an act a day, use up much of it, and go on."""
    keeper.minutes_apart = A_DAY_MIN
    book = played(keeper, seed, steps=14)
    use_up(keeper, 1 + seed % 2)
    for _ in range(8):
        book.step()
    use_up(keeper, 2)


def periods(keeper: Keeper) -> Iterator[tuple[date, date]]:
    """Yield periods of all lengths from before the book's beginning to after its end."""
    begun, days = MORNING.date(), (keeper.clock.now - MORNING).days
    for first in range(-2, days + 3, 12):
        for length in (0, 11, 400):
            yield begun + timedelta(first), begun + timedelta(first + length)


def test_a_narrow_reading_gives_the_account_that_the_whole_book_gives(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    kept_for_months(keeper, SEED)
    for first, last in periods(keeper):
        narrow = spirit_account(keeper.book, str(first), str(last)).account
        whole = whole_replay(keeper.book, first, last)
        assert figures(narrow) == pytest.approx(figures(whole), abs=1e-9), (first, last)


def figures(found: SpiritAccount) -> dict[str, float]:
    names = ("opening", "received", "used", "lost", "unexplained")
    places = ("in_spirit", "in_making", "in_product")
    lots = {
        f"{code} {name}": getattr(lot, name)
        for code, lot in found.lots.items()
        for name in ("received", "used", "left")
    }
    return {**{name: getattr(found, name) for name in (*names, *places)}, **found.sent, **lots}


def made_and_sold(keeper: Keeper, spirit: str, *, is_sold_out: bool) -> list[str]:
    """Make a batch with spirit, fill all of it and sell all or some of it; return both lots."""
    because = {"because": "as it was"}
    lot = keeper.opens("start", product="Orange drops", kind="essence", target="500mL", **because)
    keeper.do("add", lot=lot, source=spirit, amount="500mL", **because)
    keeper.do("finish", lot=lot, volume="500mL", **because)
    packed = keeper.opens("bottle", source=lot, pack="10 x 50mL", **because)
    sold = "10" if is_sold_out else "4"
    words = {"amount": sold, "moved_as": "sale", "party": "Notreal Bar"}
    keeper.do("send", lot=packed, **words, **because)
    return [lot, packed]


def test_lots_used_up_before_the_period_are_not_read(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper = sqlite_keeper
    old, new = (keeper.opens("receive", material="spirit", amount="1L") for _ in range(2))
    keeper.do("receive", material="water", amount="20L")
    gone = [lot for _ in range(2) for lot in made_and_sold(keeper, old, is_sold_out=True)]
    left = made_and_sold(keeper, new, is_sold_out=False)
    keeper.clock.forward(days=40)
    moved = made_and_sold(keeper, new, is_sold_out=True)
    read: list[Steps] = []

    def reading(connection: Connection, ids: Sequence[int], *, of_bought: bool = False) -> Steps:
        read.append(steps_of(connection, ids, of_bought=of_bought))
        return read[-1]

    monkeypatch.setattr(alcohol, "steps_of", reading)
    found = spirit_account(keeper.book, str(keeper.clock.now.date()), LAST).account
    steps = {code: told for part in read for code, told in part.steps.items()}
    assert gone
    assert set(steps) == {new, *left, *moved}
    assert sum(map(len, steps.values())) == 3 + 3 + 2 + 3 + 2
    assert found.opening == pytest.approx(0.5 * 0.96 + 6 * 0.05 * 0.96)
    assert found.used == pytest.approx(0.5 * 0.96)
    assert found.closing == pytest.approx(6 * 0.05 * 0.96)
