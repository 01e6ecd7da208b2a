"""What an outsider must be able to follow in a recall: received, transformed, sent."""

from ledger.service.recall.trail import trail_of
from tests.keeper import Keeper
from tests.path import Lots

STALL = "Bridge Street Stall"


def test_the_way_of_a_lot_is_told_without_the_rest_of_the_recipe(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = trail_of(keeper.book, lots.oil)
    (received,) = found.received
    assert (received.brief.code, received.source, received.amount) == (
        lots.oil,
        "Harbour Oils",
        500_000,
    )
    assert [(item.brief.code, item.made) for item in found.transformed] == [
        (lots.essence, 448_000),
        (lots.syrup, 3_800_000),
        (lots.packed, 15_000_000),
    ]
    inputs = [[lot.code for lot, _ in item.inputs] for item in found.transformed]
    assert inputs == [[lots.oil], [lots.essence], [lots.syrup]]
    assert [(item.brief.code, item.to, item.amount) for item in found.sent] == [
        (lots.packed, STALL, 6_000_000)
    ]


def test_goods_that_came_back_are_received_and_a_party_is_told_by_its_name(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.do("party", name=STALL, phone="01 555 0100")
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party=STALL)
    found = trail_of(keeper.book, lots.oil)
    back = found.received[-1]
    assert (back.brief.code, back.source, back.amount, back.is_return) == (
        lots.packed,
        STALL,
        2_000_000,
        True,
    )
    assert found.parties[STALL].phone == "01 555 0100"
    assert [item.amount for item in found.sent] == [6_000_000]


def test_a_batch_that_is_not_finished_has_no_day_and_no_entry(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    batch = keeper.opens("start", product="Lime", kind="essence", target="90mL")
    keeper.do("add", lot=batch, source=lots.oil, amount="5mL")
    told = {item.brief.code: item for item in trail_of(keeper.book, lots.oil).transformed}
    assert (told[batch].on, told[batch].entry) == ("", None)
