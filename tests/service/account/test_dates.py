"""The dates of lots: in the class of the weakest syrup that is read or reckoned."""

from datetime import timedelta

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.masters import Keeping
from ledger.domain.lots.dates import Dates
from ledger.service.account.dates import dates_of
from ledger.store.read import queries
from tests.keeper import Keeper
from tests.path import Lots, make_essence, receive_all


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


def test_bottles_keep_in_the_class_of_what_is_in_them(keeper: Keeper, lots: Lots) -> None:
    strong = base(keeper, lots, "653g", "347g", "66")
    made = finished(keeper, (strong, "530mL"), (lots.water, "170mL"))
    packed = keeper.opens("bottle", source=made, pack="2 x 250mL", bottles=lots.bottles)
    assert dates_in(keeper, packed).opened_days == 14
    assert days(keeper, packed) == 28
