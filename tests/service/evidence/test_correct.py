"""Correcting an entry: the old one stays, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, ReasonNeededError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import UL, Refused, amount, check_refused
from tests.service.wrong_words import check_wrong_words

REFUSED: dict[str, Refused] = {
    "a correction of nothing": (
        "correct",
        {"entry": "999", "changes": "amount=1mL", "because": "misread"},
        RefusedError,
        (
            (
                "There is no entry 999 in the book.",
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
    "a correction that changes nothing": (
        "correct",
        {"entry": "16", "changes": " ; ", "because": "misread"},
        InputError,
        (
            (
                "Nothing to change in entry 16 was given.",
                "Say what is right with --set FIELD=VALUE, or when it happened with --at.",
            ),
        ),
    ),
    "a correction of a field that is not there": (
        "correct",
        {"entry": "16", "changes": "colour=red", "because": "misread"},
        InputError,
        (
            (
                '"colour=red" changes nothing that an add entry has.',
                "Write FIELD=VALUE with one of: source, amount, added-as, temp, minutes, "
                "triturated-minutes, instrument.",
            ),
        ),
    ),
    "a correction to nothing": (
        "correct",
        {"entry": "16", "changes": "amount=", "because": "misread"},
        InputError,
        (("The amount cannot be left empty.", "Give its right value."),),
    ),
    "a correction to what is neither yes nor no": (
        "correct",
        {"entry": "19", "changes": "sediment=some", "because": "seen again"},
        InputError,
        (('The sediment must be yes or no, and "some" is neither.', "Write yes or no."),),
    ),
    "a correction without a reason": (
        "correct",
        {"entry": "16", "changes": "amount=400mL"},
        ReasonNeededError,
        (
            (
                "Entry 16 cannot be changed without a reason.",
                'Say why: --because "what was wrong"',
            ),
        ),
    ),
    "a correction to another measure": (
        "correct",
        {"entry": "10", "changes": "amount=5 kg", "because": "weighed"},
        RefusedError,
        (
            (
                "NS-001-J is counted in the measure of 5L, so it cannot become 5 kg.",
                "Strike entry 10 and receive it again.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_correction_is_the_whole_entry_again(bench: Keeper) -> None:
    old = bench.entry(16)
    made = bench.do(
        "correct", entry="#16", changes="amount=400 mL; temp=18; minutes=", because="misread"
    )
    assert facts_to_plain(made.entry.draft.facts) == {
        "source": "NS-001-J",
        "amount": amount(400_000, UL, "400 mL"),
        "added_as": "ingredient",
        "temp_mdegc": 18_000,
    }
    assert (made.entry.draft.corrects, made.entry.stands_for) == (16, 16)
    assert (made.entry.draft.reason, made.entry.draft.happened) == ("misread", old.draft.happened)


def test_a_correction_of_the_time_alone(bench: Keeper) -> None:
    made = bench.do("correct", entry="19", changes="", at="2026-03-02 10:00", because="late")
    assert f"{made.entry.draft.happened.at:%F %T}" == "2026-03-02 10:00:00"
    assert made.entry.draft.facts == bench.entry(19).draft.facts


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "correct")
