"""Putting some of a lot into a batch: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, ReasonNeededError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import MG, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "an addition by weight": (
        "add",
        {
            "lot": "OE-001-5",
            "source": "soo-001-3",
            "amount": "25 g",
            "temp": "18.5",
            "minutes": "4",
        },
        None,
        {
            "source": "SOO-001-3",
            "amount": amount(25_000, MG, "25 g"),
            "added_as": "ingredient",
            "temp_mdegc": 18_500,
            "minutes": 4,
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "an addition with two things wrong": (
        "add",
        {"lot": "OE-001-5", "source": "zz9", "amount": "0mL"},
        RefusedError,
        (
            ("There is no lot ZZ9 in the book.", "pottle stock lists the lots that are."),
            (
                "An amount must be more than zero, and 0mL is not.",
                "Write how much there really was.",
            ),
        ),
    ),
    "an amount with two meanings": (
        "add",
        {"lot": "OE-001-5", "source": "SOO-001-3", "amount": "5 oz"},
        InputError,
        (("5 oz could be a volume or a weight.", "Write US fl oz, imp fl oz or oz av."),),
    ),
    "more than is there": (
        "add",
        {"lot": "OE-001-5", "source": "SOO-001-3", "amount": "5L"},
        ReasonNeededError,
        (
            (
                "5 L is more than is there of SOO-001-3: the book says 500 mL.",
                "Check the lot and the amount; if it is so, say why with --because.",
            ),
        ),
    ),
    "a lot into itself": (
        "add",
        {"lot": "OE-001-5", "source": "OE-001-5", "amount": "5mL"},
        RefusedError,
        (
            (
                "OE-001-5 cannot go into itself.",
                "Name the lot that it really was; pottle stock lists what is on hand.",
            ),
        ),
    ),
    "bottles by volume": (
        "add",
        {"lot": "OE-001-5", "source": "LOT-001-X", "amount": "5mL"},
        RefusedError,
        (
            (
                "5mL does not fit LOT-001-X, which is counted by number.",
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


def test_what_should_not_have_happened_is_recorded_with_its_reason(bench: Keeper) -> None:
    made = bench.do(
        "add", lot="OE-001-5", source="SOO-001-3", amount="2L", because="the drum was refilled"
    )
    (deviation,) = made.deviations
    assert (deviation.seq, deviation.draft.lot) == (made.seq + 1, "OE-001-5")
    assert deviation.draft.reason == "the drum was refilled"
    assert facts_to_plain(deviation.draft.facts) == {
        "rule": "on hand",
        "text": "2 L is more than is there of SOO-001-3: the book says 500 mL.",
        "about": made.seq,
    }


def test_nothing_is_no_amount_to_add(bench: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        bench.do("add", lot="OE-001-5", source="SOO-001-3", amount="0mL")
    assert raised.value.problems == (
        (
            "An amount must be more than zero, and 0mL is not.",
            "Write how much there really was.",
        ),
    )


def test_an_addition_by_material_takes_the_first_to_expire_and_says_which(bench: Keeper) -> None:
    done = bench.do("add", lot="OE-001-5", source="orange-oil", amount="1mL")
    (what, _), *_ = done.remarks
    assert what == (
        "orange-oil was taken from SOO-001-3, best before 2027-06-30, the one lot on hand."
    )
    assert facts_to_plain(done.entry.facts)["source"] == "SOO-001-3"


ALONE: Alone = (
    {"lot": "OE-001-5", "source": "NS-001-J", "amount": "10mL"},
    {
        "added_as": ("top-up", {"added_as": "top-up"}),
        "temp": ("18.5 °C", {"temp_mdegc": 18_500}),
        "minutes": ("5min", {"minutes": 5}),
        "triturated": ("1h", {"triturated_minutes": 60}),
        "instrument": ("Cylinder 1", {"instrument": "Cylinder 1"}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "add", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "add")
