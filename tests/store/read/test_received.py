"""What the book knows of received lots: papers and readings, side by side."""

from datetime import date

from ledger.domain.entries.choices import MaterialKind
from ledger.store.read.received import (
    as_they_came,
    deliveries,
    materials,
    materials_of,
    received,
    with_a_strength,
)
from tests.store.read.numbers import Walked, number


def test_a_delivery_has_its_material_and_what_was_made_here_is_none(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        numbers = [number(connection, code) for code in (lots.oil, lots.essence)]
        found = received(connection, numbers)
    assert list(found) == [lots.oil]
    oil = found[lots.oil]
    assert (oil.name, oil.sort, oil.entry) == ("Sweet orange oil", MaterialKind.OIL, 9)
    assert (oil.density_mg_per_l, oil.material_density_mg_per_l) == (None, 845_000)


def test_the_last_reading_stands_beside_what_the_papers_say(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("measure", lot=lots.spirit, what="abv", reading="96.4", temp="20")
    keeper.do("measure", lot=lots.spirit, what="abv", reading="95.9", temp="18")
    with keeper.reading() as connection:
        spirit = received(connection, [number(connection, lots.spirit)])[lots.spirit]
    assert (spirit.read_abv_micro, spirit.read_abv_temp_mdegc) == (95_900_000, 18_000)
    assert (spirit.abv_mpct, spirit.material_abv_mpct) == (None, 96_000)


def test_deliveries_that_may_hold_alcohol_are_found_by_material_papers_and_reading(
    walked: Walked,
) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        assert list(with_a_strength(connection)) == [lots.spirit]
    read = keeper.opens("receive", material="water", amount="1L")
    keeper.do("measure", lot=read, what="abv", reading="20", temp="20")
    told = keeper.opens("receive", material="orange-oil", amount="1L", abv="5")
    with keeper.reading() as connection:
        assert list(with_a_strength(connection)) == [lots.spirit, read, told]


def test_materials_are_told_as_the_book_last_said_in_the_order_in_which_they_are_asked_for(
    walked: Walked,
) -> None:
    keeper, _ = walked
    keeper.do("material", code="sugar", change=True, name="Cane sugar")
    with keeper.reading() as connection:
        told = materials(connection, ["water", "sugar", "no-such", "water"])
        assert materials(connection, []) == {}
    assert [(code, item.code, item.name) for code, item in told.items()] == [
        ("water", "water", "water"),
        ("sugar", "sugar", "Cane sugar"),
    ]


def test_the_materials_of_lots_are_told_once_each_as_the_lots_came(walked: Walked) -> None:
    keeper, lots = walked
    more = keeper.opens("receive", material="orange-oil", amount="1L")
    with keeper.reading() as connection:
        asked = (more, lots.water, lots.essence, lots.oil)
        told = materials_of(connection, [number(connection, code) for code in asked])
    assert told == ["orange-oil", "water"]


def test_deliveries_stand_by_their_days_and_those_of_one_day_as_they_came(walked: Walked) -> None:
    keeper, lots = walked
    late = keeper.do("receive", material="orange-oil", amount="1L", best_before="2027-06-30")
    early = {"material": "orange-oil", "amount": "1L", "at": "2026-03-01 08:00"}
    soon = keeper.do("receive", **early, best_before="2027-06-30", because="found late").seq
    never = keeper.do("receive", material="orange-oil", amount="1L").seq
    told = keeper.do("correct", entry=str(late.seq), changes="cost=9", because="misread").seq
    with keeper.reading() as connection:
        oil = number(connection, lots.oil)
        found = deliveries(connection, "orange-oil")
        assert [seq for seq, _ in found] == [oil, soon, told, never]
        assert [day for _, day in found] == [date(2027, 6, 30)] * 3 + [None]
        came = as_they_came(connection, [told, soon, oil])
    assert list(came.items()) == [(soon, soon), (oil, oil), (told, late.seq)]
