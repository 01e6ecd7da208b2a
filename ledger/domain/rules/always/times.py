"""Times: nothing in the future, nothing before what it needs.

Guarantees: times are compared as exactly as they are known; a day stands for all of its hours;
goods that were past their date when they came, or were made, are remarked on. Refuses: an end
before its start, use before receipt, work on a lot before it was begun.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta

from ledger.domain.entries import (
    Bottle,
    Decant,
    Draft,
    Entry,
    Filter,
    Finish,
    Receipt,
    Rest,
    Start,
    When,
)
from ledger.domain.entries.choices import Precision
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState, open_rest, opener
from ledger.domain.rules.finding import THIS_ENTRY, Finding, Rule, impossible, remark

CLOCK_SLACK = timedelta(minutes=2)
"""How far two clocks at one bench may differ."""
ABOUT_SLACK = timedelta(minutes=30)
"""How far off a time may be that is said to be about (common practice, no source)."""


def clock(when: When) -> str:
    """Return a moment as people read it on the clock it was written by."""
    local = when.local()
    return f"{local:%Y-%m-%d}" if when.precision is Precision.DAY else f"{local:%Y-%m-%d %H:%M}"


def not_in_the_future(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Only what has happened can be written down."""
    if draft.happened.at > scene.now + CLOCK_SLACK:
        yield impossible(
            "future",
            f"{clock(draft.happened)} is in the future; {_now(draft, scene)}.",
            "Give the time at which it happened with --at, or leave it out for now.",
        )


def _now(draft: Draft, scene: Scene) -> str:
    return f"the clock here says {clock(When(scene.now, draft.happened.offset_min))}"


def span(when: When) -> tuple[datetime, datetime]:
    """Return the first and last instant that a moment may mean, given how exactly it is known."""
    if when.precision is Precision.DAY:
        midnight = when.local().replace(hour=0, minute=0, second=0, microsecond=0)
        return midnight, midnight.replace(hour=23, minute=59, second=59)
    # Half of it on either side, so that two clocks may differ by all of it.
    slack = ABOUT_SLACK if when.precision is Precision.ABOUT else CLOCK_SLACK / 2
    return when.at - slack, when.at + slack


def is_before(first: When, second: When) -> bool:
    """Return whether `first` is surely before `second`, given how exactly each is known."""
    return span(first)[1] < span(second)[0]


def after_its_lots(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A lot is worked on after it was begun, and used after it was there."""
    for state in (*([scene.lot] if scene.lot else []), *scene.sources):
        yield from _after(draft.happened, state)


def _after(when: When, state: LotState) -> Iterator[Finding]:
    first: Entry | None = opener(state)
    if first and is_before(when, first.draft.happened):
        yield impossible(
            "order",
            f"{state.code} was not there on {clock(when)}: "
            f"the book has it only from {clock(first.draft.happened)}.",
            "Mend whichever time is wrong: give --at here, or correct entry "
            f"{first.seq} with --at.",
        )


def rest_is_whole(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A rest does not end before it began, nor in the future."""
    facts = draft.facts
    if not isinstance(facts, Rest):
        return
    offset = draft.happened.offset_min
    for moment, does in ((facts.started_at, "begin"), (facts.ended_at, "end")):
        if moment and moment > scene.now + CLOCK_SLACK:
            yield impossible(
                "future",
                f"The rest would {does} on {clock(When(moment, offset))}, which is in the "
                f"future; {_now(draft, scene)}.",
                f"Begin it now, and when it is over: pottle rest {draft.lot} --end",
            )
    if facts.ended_at and facts.ended_at < facts.started_at:
        end, start = When(facts.ended_at, offset).local(), When(facts.started_at, offset).local()
        form = "%Y-%m-%d %H:%M"
        form += ":%S" if f"{end:{form}}" == f"{start:{form}}" else ""
        yield impossible(
            "rest",
            f"The rest would end on {end:{form}}, before its start on {start:{form}}.",
            "Give the end a later time; a day without an hour is read as its noon.",
        )


def one_rest_at_a_time(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Only one rest goes on at a time, and only that one can end."""
    facts = draft.facts
    if not isinstance(facts, Rest) or scene.lot is None or draft.corrects is not None:
        return
    going_on = open_rest(scene.lot)
    if facts.began is not None and (going_on is None or going_on.stands_for != facts.began):
        yield impossible(
            "rest",
            f"Entry {facts.began} is not a rest of {draft.lot} that still goes on.",
            f"pottle lot {draft.lot} shows its rests.",
        )
    if facts.began is not None or going_on is None or _is_over_before(facts, going_on):
        return
    yield impossible(
        "rest",
        f"{draft.lot} is resting already, since {_since(going_on)}.",
        f"End that rest first: pottle rest {draft.lot} --end",
    )


def _is_over_before(told: Rest, going_on: Entry[Rest]) -> bool:
    return told.ended_at is not None and told.ended_at <= going_on.facts.started_at


def _since(resting: Entry) -> str:
    facts, happened = resting.facts, resting.draft.happened
    began = facts.started_at if isinstance(facts, Rest) else happened.at
    return clock(When(began, happened.offset_min, happened.precision))


def long_open(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A batch that is filtered, decanted or finished while it rests is merely unusual."""
    resting = open_rest(scene.lot) if scene.lot else None
    if resting is None or not isinstance(draft.facts, Filter | Decant | Finish):
        return
    if resting.draft.happened.at <= draft.happened.at:
        yield remark(
            "rest",
            f"{draft.lot} is still resting in the book, since {_since(resting)}.",
            f"If the rest is over: pottle rest {draft.lot} --end",
        )


def received_in_date(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """Goods that were past their date when they came are merely unusual, until they are used."""
    facts, day = draft.facts, draft.happened.local().date()
    if isinstance(facts, Receipt) and facts.best_before and facts.best_before < day:
        yield remark(
            "past date",
            f"It was best before {facts.best_before}; it came on {day}.",
            "Check the label; send it back, or put the date right: pottle correct "
            f'{THIS_ENTRY} --set best_before=DATE --because "misread"',
        )


def made_to_keep(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """What is past its date the day it is made has a wrong date."""
    facts, day = draft.facts, draft.happened.local().date()
    if isinstance(facts, Start | Bottle) and facts.best_before and facts.best_before < day:
        yield remark(
            "past date",
            f"It would be best before {facts.best_before}, and it is made on {day}.",
            f"Put the date right: pottle correct {THIS_ENTRY} --set best_before=DATE --because "
            '"misread"',
        )


RULES: tuple[Rule, ...] = (
    not_in_the_future,
    after_its_lots,
    rest_is_whole,
    one_rest_at_a_time,
    long_open,
    received_in_date,
    made_to_keep,
)
