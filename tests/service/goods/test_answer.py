"""Answers to complaints: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries import Answer
from ledger.domain.entries.choices import Outcome
from ledger.errors import InputError, LedgerError, ReasonNeededError, RefusedError
from ledger.service.lots.complaints import Complained, complaints
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.wrong_words import check_wrong_words


@pytest.fixture
def complained(walked: tuple[Keeper, Lots]) -> tuple[Keeper, str]:
    """A book in which a bar complains, and the complaint's number."""
    keeper, lots = walked
    made = keeper.do("complain", lot=lots.packed, symptom="ring", party="Quay Bar")
    return keeper, str(made.seq)


def last(keeper: Keeper) -> Complained:
    return complaints(keeper.book)[-1]


def test_who_told_the_customer_closes_a_complaint(complained: tuple[Keeper, str]) -> None:
    keeper, number = complained
    said = keeper.do("answer", complaint=number, outcome="held", words="we look at it")
    assert (said.entry.draft.lot, last(keeper).is_open) == (last(keeper).lot.code, True)
    said = keeper.do("answer", complaint=number, outcome="not ours", told_on="2026-03-09")
    facts = said.entry.facts
    assert isinstance(facts, Answer)
    assert (facts.outcome, facts.told_by, str(facts.told_on)) == (
        Outcome.NOT_OURS,
        "AB",
        "2026-03-09",
    )
    assert not last(keeper).is_open


def test_a_complaint_keeps_its_number_when_it_is_corrected(complained: tuple[Keeper, str]) -> None:
    keeper, number = complained
    mended = keeper.do("correct", entry=number, changes="symptom=gas", because="misheard")
    keeper.do("answer", complaint=str(mended.seq), outcome="explained", told_by="ab")
    assert (str(last(keeper).number), last(keeper).brief) == (number, "gas, from Quay Bar")
    assert not last(keeper).is_open


def test_a_complaint_of_nobody_named_is_closed_without_telling(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    for party in (None, "market"):
        made = keeper.do("complain", lot=lots.packed, symptom="ring", party=party)
        keeper.do("answer", complaint=str(made.seq), outcome="explained", closed="yes")
        assert not last(keeper).is_open


@pytest.mark.parametrize(
    ("words", "error", "what"),
    [
        (
            {"outcome": "sorry"},
            InputError,
            '"sorry" is not an outcome.\n'
            "Choose one of: explained, replaced, held, recalled, not-ours.",
        ),
        (
            {"outcome": "held", "told_on": "2026-03-20"},
            RefusedError,
            "The customer cannot have been told on 2026-03-20: that day is still to come.\n"
            "Give the day on which they were told, or leave --told out until they are.",
        ),
        (
            {"outcome": "held", "told_on": "2026-03-01"},
            RefusedError,
            "The customer cannot have been told on 2026-03-01: the complaint is of 2026-03-09.\n"
            "Check the day and the number of the complaint; pottle complaints lists them.",
        ),
        (
            {"outcome": "held", "closed": "yes"},
            ReasonNeededError,
            "Complaint {number} is to be closed, and Quay Bar was not told what became of it.\n"
            "Say who told them and when, with --told-by and --told; or why nobody did, with "
            "--because.",
        ),
        (
            {"outcome": "held", "complaint": "1"},
            InputError,
            '"1" is not the number of a complaint.\n'
            "pottle complaints lists them with their numbers.",
        ),
        (
            {"outcome": "held", "complaint": "x"},
            InputError,
            '"x" is not the number of a complaint.\n'
            "pottle complaints lists them with their numbers.",
        ),
    ],
)
def test_what_cannot_be_is_refused(
    complained: tuple[Keeper, str], words: dict[str, str], error: type[LedgerError], what: str
) -> None:
    keeper, number = complained
    with pytest.raises(error) as raised:
        keeper.do("answer", **{"complaint": number, **words})
    assert "\n".join(raised.value.problems[0]) == what.format(number=number)
    assert last(keeper).answer is None


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "answer")
