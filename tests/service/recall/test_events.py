"""What came, was made and went out in a period, with what each was made of."""

from datetime import date

from ledger.service.lots.sales import Period
from ledger.service.recall.events import events_of
from tests.keeper import Keeper
from tests.path import Lots


def test_events_of_a_period_are_told_with_their_inputs(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", moved_as="returned", party="A Bar")
    found = events_of(keeper.book, Period())
    made = {item.brief.code: item for item in found.transformed}
    assert {lot.code: amount for lot, amount in made[lots.syrup].inputs} == {
        lots.sugar: 2_400_000,
        lots.water: 2_400_000,
        lots.essence: 30_000,
    }
    assert (made[lots.packed].made, made[lots.essence].made) == (15_000_000, 448_000)
    assert [(item.brief.code, item.is_return) for item in found.received][-1] == (
        lots.packed,
        True,
    )
    later = events_of(keeper.book, Period(first=date(2026, 3, 9)))
    assert (len(later.received), later.transformed, later.sent) == (1, (), ())


def test_each_way_of_goods_is_an_event_of_its_day_and_what_was_struck_is_none(
    walked: tuple[Keeper, Lots],
) -> None:
    """What broke or was kept back went to nobody; a late entry stands where it happened."""
    keeper, lots = walked
    keeper.do("party", name="Harbour Oils", phone="01 555 0100")
    late = keeper.opens("receive", material="water", amount="5L", at="2026-03-03 07:00")
    send = {"lot": lots.packed, "amount": "1"}
    keeper.do("send", **send, moved_as="on-return", party="Inn", document="DN-7")
    keeper.do("send", **send, moved_as="sample", party="Fair")
    keeper.do("send", **send, moved_as="tasting", because="at the market")
    for way in ("breakage", "retained", "destroyed"):
        keeper.do("send", **send, moved_as=way)
    keeper.do("send", **send, moved_as="returned", party="Inn", document="RN-1")
    struck = keeper.do("send", **send, moved_as="sample", party="Nobody")
    keeper.do("strike", entry=str(struck.seq), because="another lot")
    before = keeper.do("receive", material="water", amount="1L", at="2026-03-01 07:00")
    found = events_of(keeper.book, Period())
    assert [
        (item.brief.code, item.to, item.amount, item.on[-2:], item.document) for item in found.sent
    ] == [
        (lots.packed, "Bridge Street Stall", 6_000_000, "04", None),
        (lots.packed, "Inn", 1_000_000, "09", "DN-7"),
        (lots.packed, "Fair", 1_000_000, "09", None),
        (lots.packed, None, 1_000_000, "09", None),
    ]
    told = [(item.brief.code, item.source, item.amount) for item in found.received]
    assert told[:2] == [
        (before.code, None, 1_000_000),
        (lots.oil, "Harbour Oils", 500_000),
    ]
    assert (late, None, 5_000_000) in told
    assert told[-1] == (lots.packed, "Inn", 1_000_000)
    assert [item.is_return for item in found.received] == [False] * (len(told) - 1) + [True]
    assert found.received[-1].document == "RN-1"
    assert found.house is not None
    assert found.house.name == "Quayside Essences"
    assert {name: party.phone for name, party in found.parties.items()} == {
        "Harbour Oils": "01 555 0100"
    }


def test_a_batch_is_made_on_the_day_it_was_last_finished_and_only_then(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.do("add", lot=lots.syrup, source=lots.water, amount="100mL", because="too thick")
    again = keeper.do("finish", lot=lots.syrup, volume="140mL")
    going = keeper.opens("start", product="Lime", kind="essence", target="90mL")
    keeper.do("add", lot=going, source=lots.oil, amount="5mL")
    found = events_of(keeper.book, Period()).transformed
    assert [(item.brief.code, item.made, item.on, item.entry) for item in found] == [
        (lots.essence, 448_000, "2026-03-04", 24),
        (lots.syrup, 140_000, "2026-03-09", again.seq),
        (lots.packed, 15_000_000, "2026-03-04", 32),
    ]
    assert {lot.code: taken for lot, taken in found[1].inputs}[lots.water] == 2_500_000
    earlier = events_of(keeper.book, Period(last=date(2026, 3, 8))).transformed
    assert {item.brief.code: item.made for item in earlier}[lots.syrup] == 3_800_000
