"""Times: nothing in the future, nothing before what it needs, one rest at a time."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Filter,
    Finish,
    Note,
    Receipt,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import RinseTo
from ledger.domain.rules import Finding
from ledger.domain.rules.always import times
from tests.domain.builders import at, draft, entry, lot, make, oil, scene, struck, when
from tests.domain.rules.cases import HM, NO, Case, find, said

NOTE = make(Note)
GIVE_TIME = "Give the time at which it happened with --at, or leave it out for now."


def note_at(*args: Any) -> Any:
    return draft(NOTE, happened=when(*args))


FUTURE = [
    Case("now", note_at()),
    Case("two minutes ahead, as another clock may be", note_at(at(12, 2))),
    Case(
        "more than two minutes ahead",
        note_at(at(12, 2, 1)),
        scene(),
        said(
            NO,
            "future",
            "2026-03-02 12:02 is in the future; the clock here says 2026-03-02 12:00.",
            GIVE_TIME,
        ),
    ),
    Case(
        "tomorrow, on the writer's own clock",
        note_at(at(12, day=3), 60, "day"),
        scene(),
        said(
            NO,
            "future",
            "2026-03-03 is in the future; the clock here says 2026-03-02 13:00.",
            GIVE_TIME,
        ),
    ),
]


def early(code: str, told: str, begun: str = "2026-03-01 08:00") -> list[Finding]:
    return said(
        NO,
        "order",
        f"{code} was not there on {told}: the book has it only from {begun}.",
        "Mend whichever time is wrong: give --at here, or correct entry 1 with --at.",
    )


BY_DAY = lot(opening=entry(make(Note), moment=at(12), happened=when(at(12), 0, "day")))
ADD = make(Add)
RINSED_APART = make(Rinse, went_to=RinseTo.APART)
ORDER = [
    Case("work after the start", draft(ADD), scene(lot(), oil())),
    Case("two minutes before, as another clock may be", note_at(at(7, 58, day=1)), scene(lot())),
    Case("before a lot that was struck", note_at(at(7, day=1)), scene(struck(lot()))),
    Case(
        "work before the start",
        note_at(at(7, 57, day=1)),
        scene(lot()),
        early("E-1", "2026-03-01 07:57"),
    ),
    Case(
        "both the batch and what goes in are told",
        draft(ADD, happened=when(at(9, day=2), 0, "day")),
        scene(lot(opening=entry(NOTE, moment=at(9, day=5))), oil()),
        early("E-1", "2026-03-02", "2026-03-05 09:00"),
    ),
    Case(
        "used before it was received",
        draft(ADD, happened=when(at(7, day=1))),
        scene(None, oil()),
        early("O-1", "2026-03-01 07:00"),
    ),
    Case("a day stands for all its hours", note_at(at(0, 1, day=1), 0, "day"), scene(lot())),
    Case("an hour of a day that is known only as a day", note_at(at(6)), scene(BY_DAY)),
    Case("the last minute of the day before", note_at(at(23, 59, day=1)), scene(BY_DAY)),
    Case(
        "the last but one",
        note_at(at(23, 58, day=1)),
        scene(BY_DAY),
        early("E-1", "2026-03-01 23:58", "2026-03-02"),
    ),
    Case(
        "the day before",
        note_at(at(13, day=1), -720, "day"),
        scene(lot(opening=entry(NOTE, moment=at(12, 1)))),
        early("E-1", "2026-03-01", "2026-03-02 12:01"),
    ),
    Case("about half an hour before", note_at(at(7, 30, day=1), 0, "about"), scene(lot())),
    Case(
        "about more than half an hour before",
        note_at(at(7, 28, 59, day=1), 0, "about"),
        scene(lot()),
        early("E-1", "2026-03-01 07:28"),
    ),
    Case(
        "a rinse that opens its own lot, before its batch",
        draft(RINSED_APART, happened=when(at(7, day=1)), opens=lot("R-1", kind="rinse").opened),
        scene(lot()),
        early("E-1", "2026-03-01 07:00"),
    ),
]


def rest(*moments: Any, **changes: Any) -> Any:
    started, ended = (*moments, None)[:2]
    return draft(make(Rest, started_at=started, ended_at=ended, **changes))


END_LATER = "Give the end a later time; a day without an hour is read as its noon."
RESTS = [
    Case("a rest begins", rest(at(12)), scene(lot())),
    Case("a rest begins and ends in the same second", rest(at(9), at(9)), scene(lot())),
    Case("a whole rest", rest(at(9), at(12, 2)), scene(lot())),
    Case("nothing is known of what rests", rest(at(9), None, began=2)),
    Case(
        "an end before its start",
        rest(at(9), at(8, 59)),
        scene(lot()),
        said(
            NO,
            "rest",
            "The rest would end on 2026-03-02 08:59, before its start on 2026-03-02 09:00.",
            END_LATER,
        ),
    ),
    Case(
        "an end before its start in the same minute, told to the second",
        rest(at(9, 0, 30), at(9, 0, 29)),
        scene(lot()),
        said(
            NO,
            "rest",
            "The rest would end on 2026-03-02 09:00:29, before its start on 2026-03-02 09:00:30.",
            END_LATER,
        ),
    ),
    Case(
        "a rest in the future",
        rest(at(12, 3), at(15)),
        scene(lot()),
        said(
            NO,
            "future",
            "The rest would begin on 2026-03-02 12:03, which is in the future; "
            "the clock here says 2026-03-02 12:00.",
            "Begin it now, and when it is over: pottle rest E-1 --end",
        )
        + said(
            NO,
            "future",
            "The rest would end on 2026-03-02 15:00, which is in the future; "
            "the clock here says 2026-03-02 12:00.",
            "Begin it now, and when it is over: pottle rest E-1 --end",
        ),
    ),
]
RESTING = lot("E-1", make(Rest, started_at=at(8, day=1)))
RESTED = lot("E-1", make(Rest, started_at=at(8, day=1)), make(Rest, ended_at=at(9), began=2))
NOT_THAT = "pottle lot E-1 shows its rests."
ONE_AT_A_TIME = [
    Case("the rest that goes on ends", rest(at(8, day=1), at(9), began=2), scene(RESTING)),
    Case("another rest after the first", rest(at(11)), scene(RESTED)),
    Case("a rest told late that was over before", rest(at(6, day=1), at(8, day=1)), scene(RESTING)),
    Case("a correction of a rest", draft(make(Rest), corrects=2, reason="x"), scene(RESTING)),
    *(
        Case(
            name,
            rest(*moments),
            scene(RESTING),
            said(
                NO,
                "rest",
                "E-1 is resting already, since 2026-03-01 08:00.",
                "End that rest first: pottle rest E-1 --end",
            ),
        )
        for name, moments in (
            ("a second rest at once", (at(11),)),
            ("a whole rest while another goes on", (at(9), at(11))),
        )
    ),
    Case(
        "an end of a rest that is over",
        rest(at(8, day=1), at(9), began=2),
        scene(RESTED),
        said(NO, "rest", "Entry 2 is not a rest of E-1 that still goes on.", NOT_THAT),
    ),
    Case(
        "an end of another entry",
        rest(at(8, day=1), at(9), began=7),
        scene(RESTING),
        said(NO, "rest", "Entry 7 is not a rest of E-1 that still goes on.", NOT_THAT),
    ),
    Case("a finish after the rest", draft(make(Finish)), scene(RESTED)),
    Case(
        "a finish told late, from before the rest",
        draft(make(Finish), happened=when(at(8, day=1))),
        scene(RESTING),
    ),
    *(
        Case(
            f"{facts.KIND} while it rests",
            draft(facts, happened=when(moment)),
            scene(RESTING),
            said(
                HM,
                "rest",
                "E-1 is still resting in the book, since 2026-03-01 08:00.",
                "If the rest is over: pottle rest E-1 --end",
            ),
        )
        for facts in (make(Finish), make(Filter), make(Decant))
        for moment in (at(12), at(8, 10, day=1))
    ),
    Case("a batch that the book does not know is filtered", draft(make(Filter)), scene(None)),
]


DATED = [
    Case("goods on their last day", draft(make(Receipt, best_before=at(12).date()))),
    Case("goods without a date", draft(make(Receipt, best_before=None))),
    Case(
        "goods past their date",
        draft(make(Receipt, best_before=at(12, day=1).date())),
        scene(),
        said(
            HM,
            "past date",
            "It was best before 2026-03-01; it came on 2026-03-02.",
            "Check the label; send it back, or put the date right: pottle correct ENTRY --set "
            'best_before=DATE --because "misread"',
        ),
    ),
    *(
        Case(
            f"{facts.KIND} past its date",
            draft(facts),
            scene(),
            said(
                HM,
                "past date",
                "It would be best before 2026-03-01, and it is made on 2026-03-02.",
                "Put the date right: pottle correct ENTRY --set best_before=DATE --because "
                '"misread"',
            ),
        )
        for facts in (
            make(Start, best_before=at(12, day=1).date()),
            make(Bottle, best_before=at(12, day=1).date()),
        )
    ),
    Case("begun on its last day", draft(make(Start, best_before=at(12).date()))),
]


@pytest.mark.parametrize("case", [*FUTURE, *ORDER, *RESTS, *ONE_AT_A_TIME, *DATED], ids=str)
def test_times_are_possible_or_told(case: Case) -> None:
    assert find(times.RULES, case) == list(case.found)


WHENS = st.builds(
    when,
    st.datetimes(at(0, day=1).replace(tzinfo=None), at(0, day=9).replace(tzinfo=None)).map(
        lambda moment: moment.replace(microsecond=0, tzinfo=at(0).tzinfo)
    ),
    st.integers(-720, 840),
    st.sampled_from(["exact", "about", "day"]),
)


@given(first=WHENS, second=WHENS)
def test_of_two_moments_at_most_one_is_surely_before_the_other(first: Any, second: Any) -> None:
    assert not (times.is_before(first, second) and times.is_before(second, first))
    assert not times.is_before(first, first)
    if times.is_before(first, second):
        assert first.at < second.at or "day" in (first.precision, second.precision)
