"""What those who were called say: nothing left is an answer, of the lot they were asked about."""

from ledger.service.recall.standing import recall_of
from tests.keeper import Keeper
from tests.path import Lots

STALL = "Bridge Street Stall"


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
