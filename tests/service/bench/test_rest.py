"""Rests of a batch: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from ledger.service.lots.dossier import dossier
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
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
}

TIMES = (
    "Write 14:30, 3pm, noon, yesterday 18:00, -2h, 2026-03-02 14:30 or 2026-03-02; ~14:30 for "
    "about."
)
REFUSED: dict[str, Refused] = {
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
    "a rest of which nothing else can be read": (
        "rest",
        {
            "lot": "OE-001-5",
            "purpose": "sleep",
            "started": "once",
            "until": "then",
            "temp": "cool",
            "shaken": "often",
            "vessel": "jar\u200b1",
        },
        InputError,
        (
            (
                '"sleep" is not a purpose of the rest.',
                "Choose one of: macerate, settle, chill, warm.",
            ),
            ('"once" is not a time.', TIMES),
            ('"then" is not a time.', TIMES),
            ('"cool" is not a temperature in °C.', "Write a number in °C."),
            ('"often" is not a number of times.', "Write a number."),
            ("The vessel holds the invisible character U+200B.", "Type it again without it."),
        ),
    ),
    "a rest for nothing": (
        "rest",
        {"lot": "OE-001-5"},
        InputError,
        (
            (
                "The purpose of the rest is missing.",
                "Choose one of: macerate, settle, chill, warm.",
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
    assert facts_to_plain(ended.entry.draft.facts) == {
        "purpose": "macerate",
        "started_at": "2026-03-09T09:05:00Z",
        "ended_at": "2026-03-11T09:10:00Z",
        "began": begun.seq,
    }


def test_a_rest_told_late_stands_at_its_end_and_one_that_goes_on_where_it_began(
    bench: Keeper,
) -> None:
    told = bench.do(
        "rest", lot="OE-001-5", purpose="chill", started="yesterday 08:00", until="yesterday 20:00"
    )
    assert told.entry.draft.happened.at.isoformat() == "2026-03-08T20:00:00+00:00"
    going_on = bench.do("rest", lot="OE-001-5", purpose="settle", started="yesterday 21:00")
    assert going_on.entry.draft.happened.at.isoformat() == "2026-03-08T21:00:00+00:00"
    order = [said.entry.seq for said in dossier(bench.book, "OE-001-5").said]
    assert order[-2:] == [told.seq, going_on.seq]
    ended = bench.do("rest", lot="OE-001-5", ended="yes")
    assert ended.entry.draft.happened.at == bench.clock.now


def test_a_rest_told_late_with_a_time_of_its_own_stands_there(bench: Keeper) -> None:
    told = bench.do("rest", lot="OE-001-5", purpose="chill", started="-3h", until="-2h", at="-1h")
    assert told.entry.draft.happened.at.isoformat() == "2026-03-09T08:05:00+00:00"


ALONE: Alone = (
    {"lot": "OE-001-5", "purpose": "settle"},
    {
        "temp": ("4 °C", {"temp_mdegc": 4_000}),
        "shaken": ("3", {"times_shaken": 3}),
        "vessel": ("Jar 1", {"vessel": "Jar 1"}),
        "started": ("2026-03-08 10:00", {"started_at": "2026-03-08T10:00:00Z"}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "rest", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "rest")
