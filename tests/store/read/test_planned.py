"""Plans of trials, and what a lot under suspicion was put into."""

from ledger.domain.entries.choices import ProductKind
from ledger.store.read.planned import made_with, plans
from tests.store.read.numbers import Walked


def test_of_a_lot_the_last_batch_for_sale_is_told_that_it_went_into(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        found = {code: made_with(connection, code) for code in (lots.oil, lots.essence, lots.syrup)}
        assert plans(connection) == ()
    assert found == {
        lots.oil: ("Orange essence", ProductKind.ESSENCE),
        lots.essence: ("Orange syrup", ProductKind.SYRUP),
        lots.syrup: None,
    }
    batch = keeper.opens("start", product="Tonic", kind="macerate", target="1 L")
    trial = keeper.opens("start", product="Trial", kind="macerate", target="1 L", purpose="trial")
    added = keeper.do("add", lot=batch, source=lots.oil, amount="1 mL")
    keeper.do("add", lot=trial, source=lots.oil, amount="1 mL")
    with keeper.reading() as connection:
        assert made_with(connection, lots.oil) == ("Tonic", ProductKind.MACERATE)
    keeper.do("strike", entry=str(added.seq), because="a slip")
    with keeper.reading() as connection:
        assert made_with(connection, lots.oil) == ("Orange essence", ProductKind.ESSENCE)
