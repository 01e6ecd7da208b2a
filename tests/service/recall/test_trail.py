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


def test_each_delivery_and_return_is_told_with_its_day_and_its_paper(
    walked: tuple[Keeper, Lots],
) -> None:
    """Neither what broke or was kept nor a struck delivery is told; a tasting went to people."""
    keeper, lots = walked
    send = {"lot": lots.packed, "amount": "1"}
    keeper.do("send", **send, moved_as="on-return", party="Inn", document="DN-7")
    keeper.do("send", **send, moved_as="tasting", because="at the market")
    for way in ("breakage", "retained", "destroyed"):
        keeper.do("send", **send, moved_as=way)
    keeper.do("send", **send, moved_as="returned", party="Inn", document="RN-1")
    struck = keeper.do("send", **send, moved_as="sample", party="Nobody")
    keeper.do("strike", entry=str(struck.seq), because="another lot")
    found = trail_of(keeper.book, lots.packed)
    assert [(item.to, item.amount, item.on, item.document) for item in found.sent] == [
        (STALL, 6_000_000, "2026-03-04", None),
        ("Inn", 1_000_000, "2026-03-09", "DN-7"),
        (None, 1_000_000, "2026-03-09", None),
    ]
    came = [(item.brief.code, item.on, item.is_return) for item in found.received]
    bought = {lots.bottles, lots.water, lots.sugar, lots.oil, lots.spirit, lots.carb}
    assert {(code, "2026-03-02", False) for code in bought} == set(came[:-1])
    assert came[-1] == (lots.packed, "2026-03-09", True)
    assert found.received[-1].document == "RN-1"
    made = [(item.brief.code, item.on, item.entry, item.inputs) for item in found.transformed]
    assert made == [(lots.packed, "2026-03-04", 32, ())]


def test_a_batch_finished_again_is_told_by_its_last_finish_and_a_filling_by_its_first_entry(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.do("add", lot=lots.syrup, source=lots.water, amount="100mL", because="too thick")
    again = keeper.do("finish", lot=lots.syrup, volume="140mL")
    filled = next(entry.seq for entry in keeper.entries() if entry.kind == "bottle")
    mended = keeper.do("correct", entry=str(filled), changes="count=14", because="counted again")
    told = {item.brief.code: item for item in trail_of(keeper.book, lots.oil).transformed}
    assert (told[lots.syrup].on, told[lots.syrup].entry) == ("2026-03-09", again.seq)
    assert (told[lots.packed].on, told[lots.packed].entry) == ("2026-03-04", mended.seq)
    assert [(lot.code, much) for lot, much in told[lots.packed].inputs] == [(lots.syrup, 3_750_000)]
