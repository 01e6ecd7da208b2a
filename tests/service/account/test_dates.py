"""The dates of lots, reckoned when they are asked for."""

from datetime import date, timedelta

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.masters import Keeping
from ledger.domain.lots.dates import Dates
from ledger.service.account.dates import dates_of, with_dates
from ledger.store.read import queries
from ledger.store.read.lots import lots_by_number
from tests.keeper import Keeper
from tests.path import Lots, make_essence, receive_all
from tests.service.engines import ON_EACH_ENGINE
from tests.store.read.numbers import number


def test_a_lot_keeps_no_longer_than_what_it_is_made_of_and_a_correction_moves_it(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked

    def best_before() -> date | None:
        with keeper.reading() as connection:
            packed = number(connection, lots.packed)
            return dates_of(connection, [packed])[packed].best_before

    assert best_before() == date(2027, 6, 30)
    receipt = next(entry.seq for entry in keeper.entries() if entry.kind == "receipt")
    changes = "best-before=2026-12-31"
    keeper.do("correct", entry=str(receipt), changes=changes, because="read again")
    assert best_before() == date(2026, 12, 31)


def test_lots_in_brief_are_given_the_date_that_is_reckoned(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence, sugar = number(connection, lots.essence), number(connection, lots.sugar)
        found = with_dates(connection, lots_by_number(connection, [essence, sugar]))
    assert found[essence].best_before == date(2027, 6, 30)
    assert found[sugar].best_before is None


@pytest.fixture
def lots(keeper: Keeper) -> Lots:
    keeper.record(
        Formula(
            code="syrup",
            version=1,
            product="Orange syrup",
            product_kind=ProductKind.SYRUP,
            basis=parse_quantity("1L"),
            keeping=(
                Keeping("cool and dark", 180, 30, brix_min_mpct=65_000),
                Keeping("refrigerated", 28, 14),
            ),
        )
    )
    keeper.do("material", code="water", density="0.9982", change=True)
    return receive_all(keeper)


def base(keeper: Keeper, lots: Lots, sugar: str, water: str, reading: str | None = None) -> str:
    code = keeper.opens("start", product="Base", kind="base-syrup", target="1L")
    keeper.do("add", lot=code, source=lots.sugar, amount=sugar)
    keeper.do("add", lot=code, source=lots.water, amount=water)
    if reading:
        keeper.do("measure", lot=code, what="brix", reading=reading, temp="20")
    keeper.do("finish", lot=code, volume="750mL")
    return code


def finished(keeper: Keeper, *inputs: tuple[str, str]) -> str:
    code = keeper.opens("start", formula="syrup", target="1L")
    for source, amount in inputs:
        keeper.do("add", lot=code, source=source, amount=amount)
    keeper.do("finish", lot=code, volume="700mL", because="for the yield alone")
    return code


def days(keeper: Keeper, code: str) -> int:
    dates, today = dates_in(keeper, code), keeper.clock().date()
    assert dates.best_before is not None
    return (dates.best_before - today) // timedelta(days=1)


def dates_in(keeper: Keeper, code: str) -> Dates:
    with keeper.reading() as connection:
        row = queries.lot_by_code(connection, code)
        assert row is not None
        return dates_of(connection, [row.seq])[row.seq]


def test_a_syrup_of_a_strong_base_keeps_in_the_class_of_that_base_with_its_essence_in(
    keeper: Keeper, lots: Lots
) -> None:
    # 653 g of sugar in 1 kg of base is 65.3 °Bx; 21 mL of essence make it 64 % of the whole mass.
    strong = base(keeper, lots, "653g", "347g", "65.2")
    essence = make_essence(keeper, lots)
    made = finished(keeper, (strong, "700mL"), (essence, "21mL"))
    assert days(keeper, made) == 180


def test_water_added_to_a_strong_base_takes_the_syrup_out_of_its_class(
    keeper: Keeper, lots: Lots
) -> None:
    strong = base(keeper, lots, "653g", "347g", "65.2")
    made = finished(keeper, (strong, "530mL"), (lots.water, "170mL"))
    assert days(keeper, made) == 28


@pytest.mark.parametrize("last", ["strong", "weak"])
def test_of_two_bases_the_weaker_reading_counts_whichever_is_the_younger(
    keeper: Keeper, lots: Lots, last: str
) -> None:
    readings = ("50", "66") if last == "strong" else ("66", "50")
    first, second = (base(keeper, lots, "670g", "330g", reading) for reading in readings)
    made = finished(keeper, (first, "350mL"), (second, "350mL"))
    assert days(keeper, made) == 28


def test_a_syrup_that_nobody_read_keeps_by_the_sugar_that_was_weighed_in(
    keeper: Keeper, lots: Lots
) -> None:
    strong, weak = base(keeper, lots, "650g", "350g"), base(keeper, lots, "649g", "351g")
    assert days(keeper, finished(keeper, (strong, "700mL"))) == 180
    assert days(keeper, finished(keeper, (weak, "700mL"))) == 28


def test_a_juice_that_was_read_weak_says_nothing_of_the_base(keeper: Keeper, lots: Lots) -> None:
    keeper.do("material", code="juice", kind="acid", density="1.03")
    juice = keeper.opens("receive", material="juice", amount="1L")
    keeper.do("measure", lot=juice, what="brix", reading="9", temp="20")
    strong = base(keeper, lots, "660g", "330g")
    assert days(keeper, finished(keeper, (strong, "690mL"), (juice, "10mL"))) == 180


@ON_EACH_ENGINE
def test_bottles_keep_in_the_class_of_what_is_in_them(keeper: Keeper, lots: Lots) -> None:
    strong = base(keeper, lots, "653g", "347g", "66")
    made = finished(keeper, (strong, "530mL"), (lots.water, "170mL"))
    packed = keeper.opens("bottle", source=made, pack="2 x 250mL", bottles=lots.bottles)
    assert dates_in(keeper, packed).opened_days == 14
    assert days(keeper, packed) == 28
