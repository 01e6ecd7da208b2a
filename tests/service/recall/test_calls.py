"""Whom to call in a recall: who may have most first, by the book and what they said."""

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Contact, Party
from ledger.domain.entries.choices import MoveAs, Reached
from ledger.service.recall.calls import ToCall, may_have, to_call
from ledger.service.recall.standing import Recall, recall_of
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.recall.went import EACH, MG, UL, back, said, went

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


def test_what_somebody_may_have_is_summed_by_lot_and_what_was_drunk_is_gone() -> None:
    """Too much that came back of one lot is not taken off another, in bottles as in volume."""
    items = [
        went(6 * EACH),
        went(2 * EACH, how=MoveAs.SAMPLE),
        went(5 * EACH, how=MoveAs.TASTING),
        back(3 * EACH),
        went(EACH, lot="B-2"),
        back(4 * EACH, lot="B-2"),
        went(2 * EACH, lot="NO-SIZE"),
        went(100_000, UL, lot="E-1"),
        back(30_000, UL, lot="E-1"),
        back(9_000, UL, lot="E-2"),
        went(500, MG, lot="SUGAR"),
    ]
    sizes = {"B-1": 250_000, "B-2": 700_000}
    assert may_have(items, sizes) == (7 * EACH, 5 * 250_000 + 70_000)
    assert may_have([], sizes) == (0, 0)
    assert may_have([went(EACH // 2)], {"B-1": 3}) == (EACH // 2, 1)


def test_those_to_call_are_who_was_sent_some_in_the_order_of_what_they_may_have() -> None:
    """Equals stand by their newest delivery and then by name; who is not named stands first."""
    bar = Party("Bar", phone="01 555 0100")
    holders = [
        went(EACH, to="Zed", day=3),
        went(EACH, to="Ann", day=3),
        went(EACH, to=None, day=3),
        went(EACH, to="Bar", day=2),
        went(3 * EACH, to="Bar", day=4, how=MoveAs.ON_RETURN),
        went(2 * EACH, to="Old", day=1),
        went(EACH, to=None, how=MoveAs.BREAKAGE),
        went(EACH, to="Cellar", how=MoveAs.RETAINED),
        went(EACH, to="Tip", how=MoveAs.DESTROYED),
    ]
    calls = [said(None, Reached.SPOKEN, party="Ann"), said(None, Reached.LEFT_WORD, party="Bar")]
    found = to_call(holders, {"B-1": 100_000}, {"Bar": bar}, calls, {"B-1": {"B-1"}})
    assert [(call.name, call.pieces // EACH, call.last_sent) for call in found] == [
        ("Bar", 4, "2026-03-04"),
        ("Old", 2, "2026-03-01"),
        (None, 1, "2026-03-03"),
        ("Ann", 1, "2026-03-03"),
        ("Zed", 1, "2026-03-03"),
    ]
    assert [item.on[-2:] for item in found[0].deliveries] == ["04", "02"]
    assert [call.known for call in found] == [bar, None, None, None, None]
    assert [call.is_reached for call in found] == [False, False, False, True, False]
    assert [len(call.contacts) for call in found] == [1, 0, 0, 1, 0]


def test_who_answered_what_is_left_is_reached_however_and_says_by_the_last_that_none_is() -> None:
    none, some = Quantity(0, Measure.UEACH, "0"), Quantity(EACH, Measure.UEACH, "1")

    def call(*left: Quantity | None) -> ToCall:
        calls = [said(each, Reached.LEFT_WORD, day=day) for day, each in enumerate(left, 5)]
        (told,) = to_call([went(EACH)], {}, {}, calls, {"B-1": {"B-1"}})
        return told

    told = [call(), call(None), call(some), call(some, none), call(none, None), call(none, some)]
    assert [each.is_reached for each in told] == [False, False, True, True, True, True]
    assert [each.says_none_left for each in told] == [False, False, False, True, True, False]
