"""Calls to those who hold goods of a recalled lot: whom first, what they say, what counts."""

import pytest

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Contact
from ledger.domain.entries.choices import Reached
from ledger.errors import InputError
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
    keeper.do("send", lot=lots.packed, amount="1")
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
    last = call.contacts[-1].facts
    assert last == Contact(STALL, Reached.SPOKEN, Quantity(0, Measure.UEACH, "0"), "sold")


def test_what_came_back_before_a_call_was_not_counted_in_it(walked: tuple[Keeper, Lots]) -> None:
    """Of 6 bottles 2 came back in the morning; called that day, the stall counts 4."""
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party=STALL)
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="4")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.pieces, call.volume_ul) == (4_000_000, 1_000_000)


def test_a_call_about_one_lot_says_nothing_of_another(walked: tuple[Keeper, Lots]) -> None:
    """Nothing is left of the first bottles; of the 2 sent afterwards nobody asked."""
    keeper, lots = walked
    other = keeper.opens("bottle", source=lots.essence, pack="2 x 100mL")
    keeper.do("send", lot=other, amount="2", party=STALL, because="asked for")
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("contact", lot=lots.packed, party=STALL, reached="spoken", still_there="0")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.pieces, call.volume_ul) == (2_000_000, 200_000)
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="1")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert call.pieces == 1_000_000


def test_nothing_left_is_an_answer_however_they_were_reached(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("contact", lot=lots.oil, party=STALL, reached="left-word", still_there="0")
    call = recall_of(keeper.book, lots.oil).to_call[0]
    assert (call.is_reached, call.says_none_left, call.pieces) == (True, True, 0)


def test_nothing_left_of_what_was_sold_by_volume_is_nothing(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.essence, amount="100mL", party="Quay Bar")
    keeper.do("recall", lot=lots.essence, because="throws haze")

    def volume() -> int:
        calls = {call.name: call for call in recall_of(keeper.book, lots.essence).to_call}
        return calls["Quay Bar"].volume_ul

    keeper.do("contact", lot=lots.essence, party="Quay Bar", reached="spoken", still_there="40mL")
    assert volume() == 40_000
    keeper.do("contact", lot=lots.essence, party="Quay Bar", reached="spoken", still_there="0")
    assert volume() == 0


def test_words_that_only_begin_like_an_answer_are_none(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    told = "none left open, but 2 in the cellar"
    keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", words=told)
    assert recall_of(keeper.book, lots.oil).to_call[0].pieces == 6_000_000


def test_a_call_that_nobody_answered_tells_of_nothing_left(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = len(keeper.entries())
    with pytest.raises(InputError) as raised:
        keeper.do("contact", lot=lots.oil, party=STALL, reached="no-answer", still_there="0")
    assert raised.value.problems == (
        (
            "Nobody answered, so nobody can have said how much is left.",
            "Leave --still out, or say how they were reached: --reached spoken or left-word.",
        ),
    )
    assert len(keeper.entries()) == before


def test_more_bottles_than_were_sent_are_remarked_on(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    done = keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken", still_there="99")
    assert done.remarks == (
        (
            f"By the book {STALL} can have at most 6, and the count there is 99.",
            f"If it was mistyped: pottle correct {done.seq} --set still_there=NUMBER",
        ),
    )
    keeper.do("correct", entry=str(done.seq), changes="still_there=6", because="mistyped")
    assert recall_of(keeper.book, lots.oil).to_call[0].pieces == 6_000_000


def test_a_call_to_somebody_who_was_sent_nothing_is_remarked_on(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    done = keeper.do("contact", lot=lots.packed, party="Bridge Stall", reached="spoken")
    assert done.remarks == (
        (
            f"The book knows of nothing of {lots.packed}, or made of it, that went to Bridge "
            "Stall.",
            f"Check the name: pottle recall {lots.packed} --drill lists who was sent some.",
        ),
    )
    assert keeper.do("contact", lot=lots.oil, party=STALL, reached="spoken").remarks == ()
