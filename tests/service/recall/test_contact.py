"""Calls to those who hold goods of a recalled lot: what is refused and remarked on."""

import pytest

from ledger.domain.entries import Contact
from ledger.errors import InputError
from ledger.service.recall.standing import recall_of
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.wrong_words import check_wrong_words

STALL = "Bridge Street Stall"


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


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "contact")


def test_nothing_left_is_said_by_its_words_or_as_a_number(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = []
    for left in ("0", " None ", "nothing", "4", None):
        made = keeper.do(
            "contact", lot=lots.oil, party=STALL, reached="spoken", still_there=left, because="late"
        )
        assert isinstance(made.entry.facts, Contact)
        said = made.entry.facts.still_there
        told.append(said.amount if said else None)
    assert told == [0, 0, 0, 4_000_000, None]
