"""What those who were called say: nothing left is an answer, of the lot they were asked about."""

import pytest

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries.choices import Reached
from ledger.service.lots.trace import Holder
from ledger.service.recall.answers import Told, as_told, by_calls, last_told, left_there
from ledger.service.recall.standing import recall_of
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.recall.went import EACH, MG, UEACH, UL, back, said, went

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


FOUR = Quantity(4 * EACH, UEACH, "4")
NOTHING = Quantity(0, UL, "0mL")


@pytest.mark.parametrize(
    ("reached", "left", "words", "answer"),
    [
        (Reached.SPOKEN, FOUR, None, (4 * EACH, UEACH)),
        (Reached.LEFT_WORD, FOUR, "none left", (4 * EACH, UEACH)),
        (Reached.SPOKEN, NOTHING, None, (0, UL)),
        (Reached.SPOKEN, None, None, None),
        (Reached.SPOKEN, None, "sold some", None),
        (Reached.SPOKEN, None, "none left", (0, UEACH)),
        (Reached.LEFT_WORD, None, "none left, all sold", (0, UEACH)),
        (Reached.SPOKEN, None, "none left open, but 2 in the cellar", None),
        (Reached.NO_ANSWER, FOUR, None, None),
        (Reached.NO_ANSWER, None, "none left", None),
    ],
)
def test_a_call_says_what_is_left_by_its_count_or_in_the_words_of_old_books(
    reached: Reached,
    left: Quantity | None,
    words: str | None,
    answer: tuple[int, Measure] | None,
) -> None:
    call = said(left, reached, words)
    assert left_there(call) == (answer and Told(*answer, call.position))


def test_the_last_that_was_said_of_it_counts_and_a_call_that_says_nothing_leaves_it() -> None:
    first, later = said(FOUR, day=5), said(NOTHING, day=7)
    silent = said(None, Reached.NO_ANSWER, day=8)
    assert last_told([first, later, silent]) == Told(0, UL, later.position)
    assert last_told([first, silent]) == Told(4 * EACH, UEACH, first.position)
    assert last_told([silent]) is last_told([]) is None


def test_goods_are_parted_by_the_last_call_about_the_lot_or_what_it_was_made_of() -> None:
    """A call about the bulk tells of both bottlings, a later one about the second of that alone."""
    one, two, other = went(6 * EACH), went(3 * EACH, lot="B-2"), went(2 * EACH, lot="C-1")
    of_bulk, of_second = said(FOUR, lot="E-1", day=5), said(NOTHING, lot="B-2", day=6)
    ahead = {"E-1": {"E-1", "B-1", "B-2"}, "B-2": {"B-2"}}
    found = by_calls([one, two, other, one], [of_bulk, of_second], ahead)
    assert found == {left_there(of_bulk): [one, one], left_there(of_second): [two], None: [other]}


SENT = went(6 * EACH)
POURED = went(100_000, UL)


@pytest.mark.parametrize(
    ("by_book", "items", "left", "may_be"),
    [
        # Six bottles of 1,500,001 µL in all, of which a share is rounded down.
        ((6 * EACH, 1_500_001), [SENT], (4 * EACH, UEACH), (4 * EACH, 1_000_000)),
        ((6 * EACH, 1_500_001), [SENT], (7 * EACH, UEACH), (6 * EACH, 1_500_001)),
        ((6 * EACH, 1_500_000), [SENT], (0, UEACH), (0, 0)),
        ((6 * EACH, 1_500_000), [SENT], (0, UL), (0, 0)),
        # A smallest unit of it is not nothing.
        ((6 * EACH, 12 * EACH), [SENT], (1, UEACH), (1, 2)),
        # Bottles that came back since are taken off, those before the call and a second sale not.
        ((5 * EACH, 1_250_000), [SENT, back(EACH, day=10)], (4 * EACH, UEACH), (3 * EACH, 750_000)),
        ((5 * EACH, 1_250_000), [SENT, back(EACH, day=8)], (4 * EACH, UEACH), (4 * EACH, 10**6)),
        (
            (8 * EACH, 2_000_000),
            [SENT, went(2 * EACH, day=10)],
            (4 * EACH, UEACH),
            (4 * EACH, 10**6),
        ),
        ((EACH, 250_000), [SENT, back(5 * EACH, day=10)], (4 * EACH, UEACH), (0, 0)),
        ((5 * EACH, 1_250_000), [SENT, back(9, UL, day=10)], (4 * EACH, UEACH), (4 * EACH, 10**6)),
        # What was sold by volume is told by volume, and a weight says nothing of either.
        ((0, 100_000), [POURED], (40_000, UL), (0, 40_000)),
        ((0, 100_000), [POURED], (140_000, UL), (0, 100_000)),
        ((0, 100_000), [POURED], (4 * EACH, UEACH), (0, 100_000)),
        ((2 * EACH, 600_000), [SENT, POURED], (40_000, UL), (2 * EACH, 40_000)),
        ((2 * EACH, 600_000), [SENT], (40_000, MG), (2 * EACH, 600_000)),
    ],
)
def test_somebody_has_no_more_than_the_book_and_their_word_allow(
    by_book: tuple[int, int],
    items: list[Holder],
    left: tuple[int, Measure],
    may_be: tuple[int, int],
) -> None:
    assert as_told(by_book, items, Told(*left, said(None).position)) == may_be
    assert as_told(by_book, items, None) == by_book
