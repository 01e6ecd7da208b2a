"""Whom to call in a recall: who may have most first, by the book and what they said."""

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Contact
from ledger.domain.entries.choices import Reached
from ledger.service.recall.standing import Recall, recall_of
from tests.keeper import Keeper
from tests.path import Lots

STALL = "Bridge Street Stall"


def names(found: Recall) -> list[str | None]:
    return [call.name for call in found.to_call]


def test_who_may_have_most_is_called_first_and_newest_deliveries_among_equals(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="2", party="Early Bar")
    keeper.clock.forward(days=1)
    keeper.do("send", lot=lots.packed, amount="2", party="Late Bar")
    keeper.do("send", lot=lots.packed, amount="1", moved_as="tasting", party="Fair")
    keeper.do("send", lot=lots.packed, amount="1", because="a stranger")
    found = recall_of(keeper.book, lots.oil)
    assert names(found) == [STALL, "Late Bar", "Early Bar", None, "Fair"]
    assert [call.volume_ul for call in found.to_call] == [1_500_000, 500_000, 500_000, 250_000, 0]
    assert [call.known for call in found.to_call] == [None] * 5


def test_a_call_says_what_is_left_and_a_return_takes_from_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("party", name=STALL, phone="01 555 0100")
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="5")
    keeper.do("recall", lot=lots.oil, because="throws haze")
    before = recall_of(keeper.book, lots.oil).to_call[0]
    assert (before.contacts, before.is_reached, before.pieces) == ((), False, 6_000_000)
    assert before.known is not None
    keeper.do("contact", lot=lots.oil, party=STALL, reached="no-answer")
    assert not recall_of(keeper.book, lots.oil).to_call[0].is_reached
    keeper.do("contact", lot=lots.packed, party=STALL, reached="spoken", still_there="4")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.is_reached, call.pieces, call.volume_ul) == (True, 4_000_000, 1_000_000)
    keeper.do("send", lot=lots.packed, amount="3", moved_as="returned", party=STALL)
    assert recall_of(keeper.book, lots.oil).to_call[0].pieces == 1_000_000
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="0", words="sold")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.pieces, call.volume_ul, len(call.contacts)) == (0, 0, 3)
    last = call.contacts[-1].draft.facts
    assert last == Contact(STALL, Reached.SPOKEN, Quantity(0, Measure.UEACH, "0"), "sold")


def test_what_came_back_before_a_call_was_not_counted_in_it(walked: tuple[Keeper, Lots]) -> None:
    """Of 6 bottles 2 came back in the morning; called that day, the stall counts 4."""
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party=STALL)
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="4")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.pieces, call.volume_ul) == (4_000_000, 1_000_000)


def test_goods_that_came_back_are_listed_and_are_no_newer_delivery(
    walked: tuple[Keeper, Lots],
) -> None:
    """Bottles may come back of which nothing is known to have gone out: nobody was sent them."""
    keeper, lots = walked
    first = recall_of(keeper.book, lots.oil).to_call[0]
    keeper.clock.forward(days=2)
    back = {"lot": lots.packed, "moved_as": "returned"}
    keeper.do("send", amount="1", party=STALL, **back)
    keeper.do("send", amount="1", party="A guest", because="had it from a friend", **back)
    keeper.do("send", amount="1", because="stood at the door", **back)
    calls = {call.name: call for call in recall_of(keeper.book, lots.oil).to_call}
    assert [*calls] == [STALL, "A guest"]
    stall, guest = calls.values()
    assert (first.last_sent, stall.last_sent, guest.last_sent) == ("2026-03-04", "2026-03-04", "")
    assert [(item.on, item.amount) for item in stall.deliveries] == [
        ("2026-03-11", -1_000_000),
        ("2026-03-04", 6_000_000),
    ]
    assert (stall.pieces, guest.pieces) == (5_000_000, 0)
