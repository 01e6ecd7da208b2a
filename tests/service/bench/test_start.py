"""The batch from start to finish: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, ReasonNeededError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import MG, UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a start": (
        "start",
        {
            "product": "Lemon syrup",
            "kind": "syrup",
            "target": "4L",
            "pour": "1:7",
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
        "LS-001-P",
        {
            "product": "Lemon syrup",
            "product_kind": "syrup",
            "target": amount(4_000_000, UL, "4L"),
            "purpose": "sale",
            "pour_parts": 7,
            "vessel": "Pan 2",
            "best_before": "2026-06-01",
        },
    ),
    "a trial with its factors": (
        "start",
        {
            "product": "Lemon essence",
            "kind": "essence",
            "target": "1L",
            "trial": "resting",
            "factors": "rest=48h; pore = 5 µm",
        },
        "LE-001-R",
        {
            "product": "Lemon essence",
            "product_kind": "essence",
            "target": amount(1_000_000, UL, "1L"),
            "purpose": "trial",
            "trial_group": "resting",
            "factors": [
                {"name": "rest", "planned": "48h"},
                {"name": "pore", "planned": "5 µm"},
            ],
        },
    ),
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
    "a rest that is over": (
        "rest",
        {
            "lot": "OE-001-5",
            "purpose": "chill",
            "started": "2026-03-05 18:00",
            "until": "2026-03-07 18:00",
            "temp": "-4",
            "shaken": "3",
        },
        None,
        {
            "purpose": "chill",
            "started_at": "2026-03-05T18:00:00Z",
            "ended_at": "2026-03-07T18:00:00Z",
            "temp_mdegc": -4_000,
            "times_shaken": 3,
        },
    ),
    "a making up, of which the book works out what it took": (
        "makeup",
        {"lot": "OE-001-5", "volume": "450mL", "source": "NS-001-J"},
        None,
        {
            "volume": amount(450_000, UL, "450mL"),
            "source": "NS-001-J",
            "used": amount(30_000, UL, "30 mL"),
        },
    ),
    "a finish": (
        "finish",
        {"lot": "OE-001-5", "volume": "240mL", "temp": "21"},
        None,
        {"volume": amount(240_000, UL, "240mL"), "temp_mdegc": 21_000},
    ),
}

REFUSED: dict[str, Refused] = {
    "a start by a formula that is not there": (
        "start",
        {"target": "1L", "formula": "Lemon"},
        RefusedError,
        (
            (
                "The formula lemon is not in the book; it knows none yet.",
                "Load it with: pottle formula load FILE",
            ),
        ),
    ),
    "a start without a target": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": " "},
        InputError,
        (("The target is missing.", "Write a number and a unit, such as 480mL."),),
    ),
    "a way to pour of more digits than are read": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "9" * 5000},
        InputError,
        (
            (
                f'"{"9" * 5000}" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
            ),
        ),
    ),
    "a way to pour that is none": (
        "start",
        {"product": "Syrup", "kind": "syrup", "target": "1L", "pour": "7:1"},
        InputError,
        (
            (
                '"7:1" is not a way to pour.',
                "Write 1:7 for one part to seven of soda water.",
            ),
        ),
    ),
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
    "the end of no rest": (
        "rest",
        {"lot": "OE-001-5", "ended": "yes"},
        RefusedError,
        (
            (
                "OE-001-5 is not resting, so no rest can end.",
                "Begin one with: pottle rest OE-001-5 --for macerate",
            ),
        ),
    ),
    "a rest for nothing": (
        "rest",
        {"lot": "OE-001-5"},
        InputError,
        (
            (
                "The purpose of the rest is missing.",
                "Choose one of: macerate, settle, chill.",
            ),
        ),
    ),
    "a finish of more than went in": (
        "finish",
        {"lot": "OE-001-5", "volume": "600mL"},
        RefusedError,
        (
            (
                "600mL came out, but OE-001-5 held less: the book says 420 mL.",
                "Record what else went in first: pottle add ...",
            ),
        ),
    ),
    "a finish of a delivery": (
        "finish",
        {"lot": "NS-001-J", "volume": "1L"},
        RefusedError,
        (
            (
                "NS-001-J is a received lot; only a batch that is made here can take the step "
                "finish.",
                'Start a batch for it: pottle start --product "NAME" --kind KIND --target VOLUME',
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


def test_a_rest_that_goes_on_is_ended_by_an_entry_of_its_own(bench: Keeper) -> None:
    begun = bench.do("rest", lot="OE-001-5", purpose="macerate")
    bench.clock.forward(days=2)
    ended = bench.do("rest", lot="OE-001-5", ended="yes")
    assert facts_to_plain(ended.entry.facts) == {
        "purpose": "macerate",
        "started_at": "2026-03-09T09:05:00Z",
        "ended_at": "2026-03-11T09:10:00Z",
        "began": begun.seq,
    }


def test_what_should_not_have_happened_is_recorded_with_its_reason(bench: Keeper) -> None:
    made = bench.do(
        "add", lot="OE-001-5", source="SOO-001-3", amount="2L", because="the drum was refilled"
    )
    (deviation,) = made.deviations
    assert (deviation.seq, deviation.draft.lot) == (made.seq + 1, "OE-001-5")
    assert deviation.draft.reason == "the drum was refilled"
    assert facts_to_plain(deviation.facts) == {
        "rule": "on hand",
        "text": "2 L is more than is there of SOO-001-3: the book says 500 mL.",
        "about": made.seq,
    }


def test_a_making_up_over_solids_is_not_worked_out(bench: Keeper) -> None:
    bench.do("add", lot="OE-001-5", source="SGR-001-L", amount="100g")
    with pytest.raises(RefusedError) as raised:
        bench.do("makeup", lot="OE-001-5", volume="600mL", source="NS-001-J")
    assert raised.value.problems == (
        (
            "100 g of solids went into OE-001-5 since its volume was last measured, so the book "
            "cannot tell how much it took.",
            "Say how much you used with --used.",
        ),
    )
