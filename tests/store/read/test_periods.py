"""Which lots an account of a period looks at."""

from ledger.store.engine.statements import ask
from ledger.store.read.periods import lots_of_period
from tests.keeper import Keeper

BEFORE, AFTER = "2026-03-01T00:00:00Z", "2026-12-31T00:00:00Z"
BECAUSE = {"because": "as it was"}


def looked_at(keeper: Keeper, since: str, until: str = AFTER) -> set[str]:
    with keeper.reading() as connection:
        codes = dict(ask(connection, "SELECT id, code FROM lot"))
        return {codes[lot] for lot in lots_of_period(connection, since, until)}


def poured_out(keeper: Keeper, *, sugar: str, measured: bool) -> str:
    """Make a lot of a litre of water, with sugar or none, and send away that litre."""
    lot = keeper.opens("start", product="Drops", kind="blend", target="1L", **BECAUSE)
    water = keeper.opens("receive", material="water", amount="1L")
    keeper.do("add", lot=lot, source=water, amount="1L", **BECAUSE)
    if sugar:
        solid = keeper.opens("receive", material="sugar", amount=sugar)
        keeper.do("add", lot=lot, source=solid, amount=sugar, **BECAUSE)
    if measured:
        keeper.do("finish", lot=lot, volume="1L", **BECAUSE)
    keeper.do("send", lot=lot, amount="1L", moved_as="destroyed", **BECAUSE)
    assert keeper.on_hand(lot) == 0
    return lot


def test_a_lot_is_looked_at_that_moved_in_the_period_or_stood_before(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    stands = keeper.opens("receive", material="water", amount="1L")
    gone = poured_out(keeper, sugar="", measured=False)
    keeper.clock.forward(days=10)
    moved = poured_out(keeper, sugar="", measured=False)
    assert looked_at(keeper, "2026-03-10T00:00:00Z") >= {stands, moved}
    assert gone not in looked_at(keeper, "2026-03-10T00:00:00Z")
    early = looked_at(keeper, BEFORE, "2026-03-10T00:00:00Z")
    assert early >= {stands, gone}
    assert moved not in early


def test_a_lot_is_looked_at_whose_volume_nobody_knows(sqlite_keeper: Keeper) -> None:
    """A litre of water with sugar in it is more than a litre, until it is measured."""
    reckoned = poured_out(sqlite_keeper, sugar="500g", measured=False)
    measured = poured_out(sqlite_keeper, sugar="500g", measured=True)
    seen = looked_at(sqlite_keeper, "2026-04-01T00:00:00Z")
    assert reckoned in seen
    assert measured not in seen


def test_a_lot_that_stood_and_left_later_is_looked_at(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lot = keeper.opens("receive", material="water", amount="1L")
    keeper.clock.forward(days=30)
    keeper.do("send", lot=lot, amount="1L", moved_as="destroyed", **BECAUSE)
    assert lot in looked_at(keeper, "2026-03-10T00:00:00Z", "2026-03-20T00:00:00Z")
    assert lot not in looked_at(keeper, "2026-02-01T00:00:00Z", "2026-02-20T00:00:00Z")
