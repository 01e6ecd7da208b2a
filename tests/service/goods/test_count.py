"""Counting what is there: what is recorded, and what is refused in which words."""

import pytest

from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import (
    EACH,
    MG,
    UL,
    Refused,
    Said,
    amount,
    check_recorded,
    check_refused,
)
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a count": (
        "count",
        {"lot": "LOT-001-X", "amount": "97"},
        None,
        {"amount": amount(97_000_000, EACH, "97")},
    ),
    "a weight as a count of a volume, by the density": (
        "count",
        {"lot": "SOO-001-3", "amount": "422.5g"},
        None,
        {"amount": amount(500_000, UL, "500 mL")},
    ),
    "a weight with its vessel": (
        "count",
        {"lot": "SGR-002-J", "amount": "25.8kg", "tare": "800g"},
        None,
        {"amount": amount(25_000_000, MG, "25 kg")},
    ),
}

REFUSED: dict[str, Refused] = {
    "a vessel that is heavier than what is in it": (
        "count",
        {"lot": "SGR-002-J", "amount": "800g", "tare": "25.8kg"},
        RefusedError,
        (
            (
                "800g with the vessel and 25.8kg without it leave no weight.",
                "Give both as weights, the heavier first.",
            ),
        ),
    ),
    "a vessel by volume": (
        "count",
        {"lot": "SGR-002-J", "amount": "25kg", "tare": "800mL"},
        RefusedError,
        (
            (
                "25kg with the vessel and 800mL without it leave no weight.",
                "Give both as weights, the heavier first.",
            ),
        ),
    ),
    "an amount that is none, with a vessel": (
        "count",
        {"lot": "SGR-002-J", "amount": "some", "tare": "800g"},
        InputError,
        (
            (
                '"some" is not an amount, because it does not begin with a number.',
                "Write a number and a unit, such as 30 mL.",
            ),
        ),
    ),
    "nothing with its vessel": (
        "count",
        {"lot": "SGR-002-J", "amount": "0g", "tare": "800g"},
        RefusedError,
        (
            (
                "An amount must be more than zero, and 0g is not.",
                "Write how much there really was.",
            ),
        ),
    ),
    "a count by weight of what has no density": (
        "count",
        {"lot": "NS-001-J", "amount": "4kg"},
        RefusedError,
        (
            (
                "4kg does not fit NS-001-J, which is counted by volume.",
                "Give the amount by volume.",
            ),
        ),
    ),
    "a count of bottles by volume": (
        "count",
        {"lot": "LOT-001-X", "amount": "4L"},
        RefusedError,
        (
            (
                "4L does not fit LOT-001-X, which is counted by number.",
                "Give the amount by number.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_count_says_what_is_there_from_then_on(bench: Keeper) -> None:
    bench.do("count", lot="SOO-001-3", amount="490mL", because="spilt")
    assert bench.on_hand("SOO-001-3") == bench.held("SOO-001-3") == 490_000


@pytest.mark.parametrize(
    ("lot", "said"),
    [
        ("LOT-001-X", {"amount": "0"}),
        ("NS-001-J", {"amount": "0"}),
        ("SGR-002-J", {"amount": "800g", "tare": "800g"}),
    ],
    ids=["a bare shelf", "nothing of what is poured", "an empty vessel"],
)
def test_a_count_may_find_nothing(lot: str, said: dict[str, str], bench: Keeper) -> None:
    done = bench.do("count", lot=lot, because="used up", **said)
    assert bench.on_hand(lot) == bench.held(lot) == 0
    bench.do("correct", entry=str(done.seq), changes="amount=0", because="counted by another")
    assert bench.on_hand(lot) == 0


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "count")
