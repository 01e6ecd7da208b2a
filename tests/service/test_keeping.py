"""Keeping the book: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import (
    EACH,
    MG,
    UL,
    Problem,
    Refused,
    Said,
    amount,
    check_recorded,
    check_refused,
)

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
        {"lot": "SGR-001-L", "amount": "25.8kg", "tare": "800g"},
        None,
        {"amount": amount(25_000_000, MG, "25 kg")},
    ),
    "a check of a lot": (
        "check",
        {"lot": "oe-001-5", "words": "the  scale"},
        None,
        {"words": "the scale"},
    ),
    "a check of a lot without words": ("check", {"lot": "OE-001-5"}, None, {}),
    "a check of an entry": (
        "check",
        {"entry": "#16", "words": "read the cylinder"},
        None,
        {"about": 16, "words": "read the cylinder"},
    ),
    "a cleaning": (
        "clean",
        {"vessel": "Demijohn 2", "method": "Hot water", "last_held": "Lemon essence"},
        None,
        {"vessel": "Demijohn 2", "how": "Hot water", "last_held": "Lemon essence"},
    ),
    "a cleaning of an empty vessel": (
        "clean",
        {"vessel": "Demijohn 2", "method": "Steam"},
        None,
        {"vessel": "Demijohn 2", "how": "Steam"},
    ),
    "an instrument that was set": (
        "equipment",
        {"name": "Scale 1", "words": "Set to zero."},
        None,
        {"name": "Scale 1", "words": "Set to zero."},
    ),
    "a note": ("note", {"text": "The  scale\nsticks."}, None, {"text": "The scale sticks."}),
}

REFUSED: dict[str, Refused] = {
    "a vessel that is heavier than what is in it": (
        "count",
        {"lot": "SGR-001-L", "amount": "800g", "tare": "25.8kg"},
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
        {"lot": "SGR-001-L", "amount": "25kg", "tare": "800mL"},
        RefusedError,
        (
            (
                "25kg with the vessel and 800mL without it leave no weight.",
                "Give both as weights, the heavier first.",
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
    "a check of nothing": (
        "check",
        {"words": "all of it"},
        InputError,
        (
            (
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            ),
        ),
    ),
    "a check of a lot and of an entry": (
        "check",
        {"lot": "OE-001-5", "entry": "16"},
        InputError,
        (
            (
                "A check is of a lot or of one entry.",
                "Name the lot, or give --entry with the number of the entry.",
            ),
        ),
    ),
    "a check of an entry that is not there": (
        "check",
        {"entry": "999"},
        RefusedError,
        (
            (
                "There is no entry 999 in the book.",
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
    "a cleaning of nothing in no way": (
        "clean",
        {"vessel": " ", "method": ""},
        InputError,
        (
            ("The vessel is missing.", "Give the vessel in words."),
            ("The way of cleaning is missing.", "Give the way of cleaning in words."),
        ),
    ),
    "an instrument without a name": (
        "equipment",
        {"name": "", "words": " "},
        InputError,
        (
            ("The name is missing.", "Give the name in words."),
            ("The finding is missing.", "Give the finding in words."),
        ),
    ),
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
                "Write FIELD=VALUE with one of: source, amount, added-as, temp, minutes.",
            ),
        ),
    ),
    "a correction to nothing": (
        "correct",
        {"entry": "16", "changes": "amount=", "because": "misread"},
        InputError,
        (("The amount cannot be left empty.", "Give its right value."),),
    ),
    "a correction without a reason": (
        "correct",
        {"entry": "16", "changes": "amount=400mL"},
        RefusedError,
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
    "a strike of what is no number": (
        "strike",
        {"entry": "the last", "because": "wrong"},
        InputError,
        (
            (
                '"the last" is not the number of an entry.',
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
    "a note from the future": (
        "note",
        {"text": "Soon.", "at": "2026-03-10 09:00"},
        RefusedError,
        (
            (
                "2026-03-10 09:00 is in the future; the clock here says 2026-03-09 09:05.",
                "Give the time at which it happened with --at, or leave it out for now.",
            ),
        ),
    ),
    "a note from a place nobody knows": (
        "note",
        {"text": "Heard.", "origin": "hearsay", "at": "noonish"},
        InputError,
        (
            (
                '"noonish" is not a time.',
                "Write 14:30, yesterday 18:00, -2h, 2026-03-02 14:30 or 2026-03-02; ~14:30 for "
                "about.",
            ),
            (
                '"hearsay" is not an origin.',
                "Choose one of: bench, paper, instrument, memory.",
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


def test_a_check_of_an_entry_is_of_the_lot_it_is_about(bench: Keeper) -> None:
    made = bench.do("check", entry="16")
    assert made.entry.draft.lot == "OE-001-5"
    assert bench.do("clean", vessel="Pan 2", method="Steam").entry.draft.lot is None


def test_a_count_says_what_is_there_from_then_on(bench: Keeper) -> None:
    bench.do("count", lot="SOO-001-3", amount="490mL", because="spilt")
    assert bench.on_hand("SOO-001-3") == bench.held("SOO-001-3") == 490_000


def test_an_entry_keeps_who_when_and_from_where(bench: Keeper) -> None:
    bench.by = " ab "
    made = bench.do("note", text="Copied.", at="2026-03-08 17:00", sheet="14")
    draft = made.entry.draft
    assert (draft.by, str(draft.origin), draft.sheet) == ("AB", "paper", "14")
    assert (f"{draft.happened.at:%F %T}", draft.happened.offset_min) == ("2026-03-08 17:00:00", 0)
    assert (f"{made.entry.recorded_at:%F %T}", made.entry.is_late) == ("2026-03-09 09:05:00", False)


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


def test_a_strike_keeps_what_it_strikes_readable(bench: Keeper) -> None:
    old = bench.entry(19)
    made = bench.do("strike", entry="19", because="another batch")
    assert (made.entry.kind, made.entry.draft.corrects) == ("strike", 19)
    assert bench.entry(19) == old


@pytest.mark.parametrize(
    ("by", "problem"),
    [
        (
            None,
            (
                "This entry does not say who made it.",
                "Give your initials with --by or set POTTLE_BY.",
            ),
        ),
        (
            "zz",
            (
                "The initials ZZ are not in the book; it knows AB.",
                'Add the person with: pottle person add ZZ "FULL NAME"',
            ),
        ),
    ],
    ids=["nobody", "a stranger"],
)
def test_nobody_unknown_writes(by: str | None, problem: Problem, bench: Keeper) -> None:
    bench.by = by
    with pytest.raises(RefusedError) as raised:
        bench.do("note", text="Anonymous.")
    assert raised.value.problems == (problem,)
