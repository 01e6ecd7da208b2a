"""One entry in words.

Guarantees: every kind of entry has a title and a line of words. Refuses: to leave out what was
recorded.
"""

from collections.abc import Callable, Iterable
from typing import Any, NamedTuple

from ledger.domain.entries import Entry, Facts
from ledger.domain.entries.bench import (
    Add,
    Decant,
    Filter,
    Finish,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.evidence import Forget, Strike
from ledger.domain.entries.forecasts import Foretold
from ledger.domain.entries.goods import Answer, Bottle, Cases, Complaint, Labels, Move
from ledger.domain.entries.house import House, Party, Person
from ledger.domain.entries.masters import Formula, Limit, Material, Withdrawal
from ledger.domain.entries.recall import Closing, Contact
from ledger.domain.entries.receipt import Receipt
from ledger.domain.entries.trials import Plan
from ledger.domain.entries.upkeep import Clean, Count, Equipment, Note
from ledger.domain.entries.verdicts import Check, Deviation, Judge
from ledger.domain.masters.formulas import version_of
from reports.kit.format import closed, tidy
from reports.words.entries import bench, forecasts, goods
from reports.words.entries import limits as words_of_limits
from reports.words.entries import masters as stock
from reports.words.entries.parts import Parts, joined


class Kind(NamedTuple):
    """What is said of a kind of entry."""

    title: str
    """What it is called in a list."""
    words: Callable[[Any], Parts]
    """What tells what an entry of it says, in parts."""


KINDS: dict[type[Facts], Kind] = {
    House: Kind("house", stock.house),
    Person: Kind("person", stock.person),
    Material: Kind("material", stock.material),
    Formula: Kind("formula", stock.formula),
    Receipt: Kind("received", stock.receipt),
    Start: Kind("started", bench.start),
    Add: Kind("added", bench.add),
    Rest: Kind("rest", bench.rest),
    Filter: Kind("filtered", bench.filter_),
    Rinse: Kind("cake rinsed", bench.rinse),
    Decant: Kind("decanted", bench.decant),
    Look: Kind("looked at", bench.look),
    Measurement: Kind("measured", bench.measurement),
    MakeUp: Kind("made up", bench.makeup),
    Finish: Kind("finished", bench.finish),
    Bottle: Kind("bottled", goods.bottle),
    Labels: Kind("labels", goods.labels),
    Move: Kind("moved", goods.move),
    Judge: Kind("judged", goods.judge),
    Check: Kind(
        "checked", lambda facts: (f"entry {facts.about}" if facts.about else "the lot", facts.words)
    ),
    Complaint: Kind("complaint", goods.complaint),
    Count: Kind("counted", lambda facts: (f"{tidy(facts.amount.written)} there",)),
    Note: Kind("note", lambda facts: (facts.text,)),
    Deviation: Kind("deviation", lambda facts: (facts.text,)),
    Clean: Kind(
        "cleaned",
        lambda facts: (facts.vessel, facts.how, facts.last_held and f"held {facts.last_held}"),
    ),
    Equipment: Kind(
        "equipment",
        lambda facts: (
            facts.name,
            facts.words,
            facts.holds and f"holds {tidy(facts.holds.written)}",
        ),
    ),
    Strike: Kind("struck out", lambda _facts: ("an entry made by mistake",)),
    Party: Kind("party", stock.party),
    Limit: Kind("limit", words_of_limits.limit),
    Withdrawal: Kind("formula withdrawn", lambda facts: (version_of(facts),)),
    Contact: Kind("called", goods.contact),
    Closing: Kind("recall closed", lambda facts: (facts.cause,)),
    Answer: Kind("complaint answered", goods.answer),
    Foretold: Kind("foretold", forecasts.foretold),
    Plan: Kind("trial planned", bench.plan),
    Forget: Kind("forgotten", stock.forget),
    Cases: Kind("put in cases", goods.cases),
}
"""Every kind of entry, with its title and its words."""


def title(entry: Entry) -> str:
    """Return what an entry is called in a list."""
    return KINDS[type(entry.facts)].title


def sentence(entry: Entry, currency: str = "") -> str:
    """Return what an entry says, in one line without its title.

    Args:
        entry: The entry.
        currency: Of its money; no entry about money says it, since a house has one.
    """
    if isinstance(entry.facts, Receipt):
        return joined(stock.receipt(entry.facts, currency))
    return joined(KINDS[type(entry.facts)].words(entry.facts))


def notes(entry: Entry, corrected_by: int | None, *, is_struck: bool) -> tuple[str, ...]:
    """Return what a reader must know besides: lateness, source, reason, correction."""
    draft = entry.draft
    late = f"Written {entry.recorded_at:%Y-%m-%d}, later than it happened." if entry.is_late else ""
    sheet = f"From {draft.origin}{f' sheet {draft.sheet}' if draft.sheet else ''}."
    fate = f"{'Struck' if is_struck else 'Corrected'} by entry {corrected_by}."
    act = "Strikes" if isinstance(draft.facts, Strike) else "Corrects"
    corrects = f"{act} entry {draft.corrects}." if draft.corrects else ""
    departs = isinstance(draft.facts, Deviation) and draft.facts.about
    return tuple(
        note
        for note in (
            corrects,
            f"About entry {departs}." if departs else "",
            late,
            sheet if draft.origin != "bench" or draft.sheet else "",
            closed(f"Reason: {draft.reason}") if draft.reason else "",
            fate if corrected_by else "",
        )
        if note
    )


def strikes(said: Iterable[Entry]) -> frozenset[int]:
    """Return the numbers of entries that are struck, not corrected."""
    return frozenset(
        entry.draft.corrects
        for entry in said
        if isinstance(entry.facts, Strike) and entry.draft.corrects
    )
