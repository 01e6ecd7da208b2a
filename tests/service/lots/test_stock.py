"""Stock by date, what is low, and what is left of its cost."""

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.service.lots.stock import first_expired, low_materials, stock, values_left
from tests.keeper import Keeper
from tests.path import Lots, walk_main_path
from tests.service.engines import ON_EACH_ENGINE


def receive(keeper: Keeper, material: str, amount: str, **words: str) -> str:
    return keeper.opens("receive", material=material, amount=amount, **words)


def low(keeper: Keeper, threshold: int, measure: Measure) -> list[tuple[str, int]]:
    found = low_materials(keeper.book, threshold, measure)
    return [(item.material.code, item.on_hand) for item in found]


def values(keeper: Keeper) -> dict[str, int]:
    lots = stock(keeper.book, everything=True)
    found = values_left(keeper.book, lots)
    return {lot.code: found[lot.seq] for lot in lots if lot.seq in found}


@ON_EACH_ENGINE
def test_the_earliest_date_comes_first_and_none_comes_last(keeper: Keeper) -> None:
    never = receive(keeper, "sugar", "1kg")
    late = receive(keeper, "spirit", "1L", best_before="2027-01-01")
    early = receive(keeper, "orange-oil", "1L", best_before="2026-06-30")
    same = receive(keeper, "orange-oil", "1L", best_before="2026-06-30")
    found = first_expired(stock(keeper.book))
    assert [item.code for item in found] == [early, same, late, never]


def test_a_material_is_low_by_what_is_there_of_all_its_lots(keeper: Keeper) -> None:
    receive(keeper, "sugar", "600g")
    receive(keeper, "sugar", "400g")
    receive(keeper, "carb", "300g")
    assert low(keeper, 1_000_001, Measure.MG) == [("carb", 300_000), ("sugar", 1_000_000)]
    assert low(keeper, 1_000_000, Measure.MG) == [("carb", 300_000)]
    assert low(keeper, 300_000, Measure.MG) == []


def test_what_cannot_be_used_is_not_there(keeper: Keeper) -> None:
    good, bad = receive(keeper, "sugar", "600g"), receive(keeper, "sugar", "900g")
    held = receive(keeper, "carb", "100g", hold="yes", because="no papers yet")
    keeper.do("judge", lot=bad, verdict="reject", because="damp")
    assert low(keeper, 1_000_000, Measure.MG) == [("carb", 100_000), ("sugar", 600_000)]
    keeper.do("judge", lot=good, verdict="reject", because="damp too")
    assert low(keeper, 1_000_000, Measure.MG) == [("sugar", 0), ("carb", 100_000)]
    assert held in keeper.lot_codes()


@ON_EACH_ENGINE
def test_what_is_used_up_is_low_and_what_never_came_or_was_struck_is_not(keeper: Keeper) -> None:
    used = receive(keeper, "sugar", "600g")
    keeper.do("send", lot=used, amount="600g", moved_as="destroyed", because="wet")
    mistaken = keeper.do("receive", material="carb", amount="1g")
    keeper.do("strike", entry=str(mistaken.seq), because="it never came")
    assert low(keeper, 1_000_000, Measure.MG) == [("sugar", 0)]


def test_more_drawn_than_came_is_less_than_nothing(keeper: Keeper) -> None:
    used = receive(keeper, "sugar", "600g")
    keeper.do("send", lot=used, amount="620g", moved_as="destroyed", because="wet")
    assert low(keeper, 1_000_000, Measure.MG) == [("sugar", -20_000)]


def test_only_lots_that_are_counted_so_are_low(keeper: Keeper) -> None:
    receive(keeper, "spirit", "1L")
    receive(keeper, "b250", "12")
    assert low(keeper, 2_000_000, Measure.UL) == [("spirit", 1_000_000)]
    assert low(keeper, 20_000_000, Measure.UEACH) == [("b250", 12_000_000)]
    assert low(keeper, 20_000_000, Measure.MG) == []


def test_the_value_left_is_the_share_of_the_cost_that_is_left(keeper: Keeper) -> None:
    oil = receive(keeper, "orange-oil", "500mL", cost="48.00")
    free = receive(keeper, "sugar", "1kg")
    batch = keeper.opens("start", product="Plain", kind="blend", target="1L")
    assert values(keeper) == {oil: 4800}
    keeper.do("add", lot=batch, source=oil, amount="125mL")
    assert values(keeper) == {oil: 3600, batch: 1200}
    keeper.do("add", lot=batch, source=oil, amount="375mL")
    assert values(keeper) == {oil: 0, batch: 4800}
    assert free in keeper.lot_codes()


def test_a_batch_and_the_bottles_of_it_are_worth_what_is_in_them(keeper: Keeper) -> None:
    """2.95 of oil in 448 mL of essence, 30 mL of it in 3.8 L of syrup, 15 bottles filled."""
    lots = walk_main_path(keeper)
    found = values(keeper)
    assert (found[lots.essence], found[lots.packed]) == (276, 12)
    assert found[lots.oil] == 4505


@pytest.mark.parametrize(
    ("left", "minor"),
    [("334g", 33), ("335g", 34), ("345g", 34), ("345.001g", 35)],
)
def test_a_value_is_rounded_half_to_even_to_the_smallest_coin(
    left: str, minor: int, keeper: Keeper
) -> None:
    """Of 1.00 for 1 kg: 33.4, 33.5, 34.5 and 34.5001 hundredths."""
    lot = receive(keeper, "sugar", "1kg", cost="1.00")
    keeper.do("count", lot=lot, amount=left, because="spilt")
    assert values(keeper) == {lot: minor}


@ON_EACH_ENGINE
def test_a_correction_of_the_cost_moves_the_value(keeper: Keeper) -> None:
    made = keeper.do("receive", material="sugar", amount="1kg", cost="1.00")
    keeper.do("correct", entry=str(made.seq), changes="cost=2.50", because="misread")
    assert values(keeper) == {made.code: 250}


Walked = tuple[Keeper, Lots]


def test_the_stock_is_what_is_on_hand_in_the_order_it_came(walked: Walked) -> None:
    keeper, lots = walked
    found = stock(keeper.book)
    assert [brief.code for brief in found] == [
        lots.oil, lots.spirit, lots.carb, lots.sugar, lots.water, lots.bottles,
        lots.essence, lots.syrup, lots.packed,
    ]  # fmt: skip
    assert {brief.code: brief.on_hand for brief in found} == {
        code: keeper.on_hand(code) for code in keeper.lot_codes()
    }
    keeper.do("count", lot=lots.syrup, amount="1uL", because="poured away")
    keeper.do("send", lot=lots.packed, amount="9", party="Fair")
    assert lots.packed not in [brief.code for brief in stock(keeper.book)]
    assert lots.packed in [brief.code for brief in stock(keeper.book, everything=True)]


def test_an_empty_book_has_no_stock(sqlite_keeper: Keeper) -> None:
    assert stock(sqlite_keeper.book, everything=True) == ()


def test_what_is_on_hand_is_what_the_sums_say_and_not_what_was_poured(keeper: Keeper) -> None:
    """Weighed spirit fills a jar though it was poured by no volume; water makes it shrink."""
    spirit, water = receive(keeper, "spirit", "2kg"), receive(keeper, "water", "2L")
    weighed, mixed = (
        keeper.opens("start", product=name, kind="blend", target="1L") for name in ("One", "Two")
    )
    keeper.do("add", lot=weighed, source=spirit, amount="400g")
    keeper.do("add", lot=mixed, source=spirit, amount="403.7g")
    keeper.do("add", lot=mixed, source=water, amount="500mL")
    there = {lot.code: (lot.on_hand // 1000, lot.is_reckoned) for lot in stock(keeper.book)}
    assert there[weighed] == (495, True)
    assert there[mixed] == (969, True)
    keeper.do("add", lot=mixed, source=weighed, amount="all")
    assert weighed not in {lot.code for lot in stock(keeper.book)}
