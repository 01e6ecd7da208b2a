"""Lots in brief: a packed lot has the name and the last look of its bulk."""

from datetime import UTC, date, datetime, timedelta

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from ledger.domain.entries.choices import Grade, LotType, MaterialKind, ProductKind
from ledger.domain.lots.lot import Lot, Status
from ledger.store.engine.statements import ask_one
from ledger.store.read import lots
from ledger.store.read.lots import Stem, all_lots, codes_of_stem, lots_by_number, lots_on_hand
from tests.keeper import MORNING, Keeper
from tests.store.read.numbers import Walked, number


def test_a_packed_lot_has_the_name_and_the_look_of_its_bulk(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        packed, syrup = number(connection, lots.packed), number(connection, lots.syrup)
        (found,) = lots_by_number(connection, [packed]).values()
    assert found == Lot(
        seq=packed,
        code=lots.packed,
        lot_type=LotType.PACKED,
        measure=Measure.UEACH,
        opened_at=When(datetime(2026, 3, 4, 11, tzinfo=UTC), 0),
        name="Orange syrup, 250 mL",
        status=Status.RELEASED,
        on_hand=9_000_000,
        product="Orange syrup",
        product_kind=ProductKind.SYRUP,
        bulk=syrup,
        grade=Grade.CLOUDY,
    )


def test_a_delivery_has_what_its_supplier_said(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        oil = number(connection, lots.oil)
        found = lots_by_number(connection, [oil])[oil]
    assert found == Lot(
        seq=oil,
        code=lots.oil,
        lot_type=LotType.RECEIVED,
        measure=Measure.UL,
        opened_at=When(MORNING + timedelta(minutes=5), 0),
        name="Sweet orange oil",
        status=Status.IN_STOCK,
        on_hand=469_231,
        material="orange-oil",
        sort=MaterialKind.OIL,
        supplier="Harbour Oils",
        supplier_lot="C7731",
        best_before=date(2027, 6, 30),
    )


def test_a_lot_that_is_used_up_is_no_more_on_hand(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="9", party="Fair")
    with keeper.reading() as connection:
        everything, there = all_lots(connection), lots_on_hand(connection)
        assert set(everything) - set(there) == {number(connection, lots.packed)}


@pytest.mark.parametrize("where", ["sqlite_keeper", "postgres_keeper"])
def test_of_a_stem_the_codes_are_told_that_may_come_after_as_many_as_there_are(
    where: str, request: pytest.FixtureRequest
) -> None:
    """Of four codes, number five and later ones; a longer number is later, other stems are not."""
    keeper: Keeper = request.getfixturevalue(where)
    keeper.do("material", code="oil", name="Orange oil", kind="oil")
    codes = ["OO-4-4", "OO-005-9", "OO-1000-2", "OO-OLD"]
    for code in (*codes, "OOX-007-1", "OO-009-1"):
        keeper.do("receive", material="oil", amount="1 kg", code=code)
    with keeper.reading() as connection:
        known = codes_of_stem(connection, "OO-")
        assert known == Stem(5, frozenset({"OO-1000-2", "OO-009-1"}))
        assert codes_of_stem(connection, "NONE-") == Stem(0, frozenset())
    assert keeper.opens("receive", material="oil", amount="1 kg") == "OO-006-K"


def test_a_server_finds_what_bottles_were_filled_from_unless_it_is_asked_for_too(
    postgres_keeper: Keeper,
) -> None:
    """In the order in which they are first met."""
    keeper = postgres_keeper
    bulk, other = (
        keeper.opens("start", product=product, kind="essence", target="1 L")
        for product in ("Tonic", "Bitter")
    )
    water = keeper.opens("receive", material="water", amount="2 L")
    bottles = keeper.opens("receive", material="b250", amount="9")
    for lot in (bulk, other):
        keeper.do("add", lot=lot, source=water, amount="1 L")
        keeper.do("finish", lot=lot, volume="1 L")
    packed, second, third = (
        keeper.opens("bottle", source=lot, pack="2 x 250 mL", bottles=bottles)
        for lot in (bulk, other, bulk)
    )
    with keeper.reading() as connection:
        of = {
            code: number(connection, code) for code in (bulk, other, water, packed, second, third)
        }
        found = [
            ask_one(connection, lots._BULKS, lots=[of[code] for code in asked])
            for asked in (
                *((packed,), (water, packed), (packed, bulk), (water,)),
                *((packed, second, third), (second, third)),
            )
        ]
    pair = [of[bulk], of[other]]
    assert found == [[of[bulk]], [of[bulk]], None, None, pair, pair[::-1]]


def test_a_supplier_that_the_book_knows_is_told_by_name(walked: Walked) -> None:
    keeper, _ = walked
    keeper.do("party", name="Quay Oils")
    code = keeper.opens("receive", material="water", amount="1 L", supplier="Quay Oils")
    with keeper.reading() as connection:
        lot = number(connection, code)
        assert lots_by_number(connection, [lot])[lot].supplier == "Quay Oils"
