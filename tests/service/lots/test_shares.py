"""What is carried along a trace follows from what was really moved."""

from math import isclose
from pathlib import Path

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.science.contents.composition import Contents
from ledger.service.account.contents import contents_on
from ledger.service.lots.shares import no_deeper, only_kind, traced
from ledger.service.lots.trace import Way
from ledger.service.recall.standing import recall_of
from reports.words.lots.shares import IN_CAKE, share_words
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.hostile import pour


def test_a_lot_drawn_from_a_tank_before_a_spirit_came_holds_none_of_it(
    walked: tuple[Keeper, Lots],
) -> None:
    """500 mL in a tank, 250 mL drawn, then 250 mL of another delivery put in."""
    keeper, lots = walked
    late = keeper.opens("receive", material="spirit", amount="1L", supplier="Pretend Spirits")
    tank, before, after = (
        keeper.opens("start", product="Blend", kind="essence", target="1L") for _ in range(3)
    )
    keeper.do("add", lot=tank, source=lots.spirit, amount="500mL")
    keeper.do("add", lot=before, source=tank, amount="250mL")
    keeper.do("add", lot=tank, source=late, amount="250mL")
    keeper.do("add", lot=after, source=tank, amount="100mL")
    found = traced(keeper.book, late, back=False)
    assert {lot: share_words(share) for lot, share in found.ahead.items()} == {
        tank: "50 %",
        after: "50 %",
    }
    assert set(traced(keeper.book, before, forward=False).behind) == {tank, lots.spirit}
    assert [item.brief.code for item in recall_of(keeper.book, late).lots] == [late, tank, after]


def test_the_oil_is_followed_from_essence_to_bottle(walked: tuple[Keeper, Lots]) -> None:
    """Of 30.769 mL of oil, filtered off with its spirit and made up, to the bottle.

    450.769 mL were filtered to 430 mL, made up to 450 and finished at 448;
    30 mL of that in 3.8 L; 3.75 L in 15 bottles.
    """
    keeper, lots = walked
    found = traced(keeper.book, lots.oil, back=False)
    essence, syrup, packed = (found.ahead[lot] for lot in (lots.essence, lots.syrup, lots.packed))
    oil = contents_of_lot(keeper, lots.essence).oils()["orange-oil"].volume_ul
    drawn = contents_of_lot(keeper, lots.essence).volume_ul
    assert (essence.measure, essence.whole, essence.is_all) == (Measure.UL, 448_000, True)
    assert isclose(essence.amount, oil * 448_000 / drawn)
    assert 30_769 * 430 / 450.769 * 448 / 450 < essence.amount < 30_769
    assert (syrup.whole, syrup.whole_measure) == (3_800_000, Measure.UL)
    assert isclose(syrup.amount, contents_of_lot(keeper, lots.syrup).oils()["orange-oil"].volume_ul
        * 3_800_000 / contents_of_lot(keeper, lots.syrup).volume_ul)  # fmt: skip
    assert isclose(packed.amount, syrup.amount * 3_750_000 / 3_800_000)
    assert (packed.whole, packed.whole_measure) == (15_000_000, Measure.UEACH)


def contents_of_lot(keeper: Keeper, code: str) -> Contents:
    with keeper.reading() as connection:
        return contents_on(connection, code).contents


def test_what_went_into_one_lot_alone_is_in_it_and_what_clears_stays_in_the_cake(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    (packed,) = traced(keeper.book, lots.syrup, back=False).ahead
    assert packed == lots.packed
    cleared = traced(keeper.book, lots.carb, back=False).ahead[lots.essence]
    assert share_words(cleared) == IN_CAKE


def test_bottles_that_came_back_are_not_counted_twice(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = traced(keeper.book, lots.oil, back=False).ahead[lots.packed]
    keeper.do("send", lot=lots.packed, amount="4", moved_as="returned", party="Bridge Street Stall")
    keeper.do("send", lot=lots.packed, amount="4", party="Quay Bar")
    assert traced(keeper.book, lots.oil, back=False).ahead[lots.packed] == before


def test_an_old_cake_makes_a_share_one_of_at_least(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    batch = keeper.opens("start", product="Trial", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=lots.spirit, amount="100mL")
    keeper.do(
        "filter",
        lot=batch,
        medium="paper",
        volume_in="100mL",
        volume_out="90mL",
        cake="same",
        cake_of=lots.essence,
        because="the cake was still good",
    )
    found = traced(keeper.book, batch, forward=False)
    assert (found.behind[lots.essence].amount, found.behind[lots.essence].is_all) == (0.0, False)
    assert not found.behind[lots.oil].is_all
    assert round(found.behind[lots.spirit].amount) == 90_000
    assert not found.behind[lots.spirit].is_all


def test_rinse_liquor_poured_away_ends_at_waste(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do(
        "rinse",
        lot=lots.essence,
        source=lots.spirit,
        volume_in="20mL",
        volume_out="15mL",
        went_to="waste",
        because="tastes of the paper",
    )
    assert traced(keeper.book, lots.spirit).wasted == {lots.spirit: 20_000}


def test_a_depth_hides_lots_and_changes_no_amount(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    whole = traced(keeper.book, lots.oil, back=False)
    near = no_deeper(whole, 1)
    assert [node.brief.code for node in near.trace.nodes] == [lots.oil, lots.essence]
    assert (near.hidden, near.trace.holders) == (2, ())
    assert near.ahead == whole.ahead
    assert no_deeper(whole, None) is whole


def test_only_the_ways_to_one_kind_of_material_stay(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = only_kind(traced(keeper.book, lots.packed, forward=False), MaterialKind.OIL)
    codes = [node.brief.code for node in found.trace.nodes]
    assert codes == [lots.packed, lots.syrup, lots.essence, lots.oil]
    assert [(edge.source, edge.target) for edge in found.trace.edges] == [
        (lots.syrup, lots.packed),
        (lots.essence, lots.syrup),
        (lots.oil, lots.essence),
    ]
    none = only_kind(traced(keeper.book, lots.packed, forward=False), MaterialKind.GUM)
    assert [node.brief.code for node in none.trace.nodes] == [lots.packed]


def test_a_circle_in_a_damaged_book_is_named_and_not_followed(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = traced(keeper.book, lots.oil, back=False)
    pour(Path(keeper.book.where), lots.packed, lots.essence)
    found = traced(keeper.book, lots.oil)
    assert found.trace.circles == ((lots.packed, lots.essence, lots.syrup),)
    assert [node.brief.code for node in found.trace.nodes if node.way is Way.FORWARD] == [
        node.brief.code for node in before.trace.nodes if node.way is Way.FORWARD
    ]
    assert not found.ahead[lots.packed].is_all
