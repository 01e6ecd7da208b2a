"""One entry in words.

Guarantees: every kind of entry has a title and a line of words. Refuses: to leave out what was
recorded.
"""

from collections.abc import Callable, Iterable
from typing import Any

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
from ledger.domain.entries.evidence import Strike
from ledger.domain.entries.goods import Bottle, Complaint, Labels, Move
from ledger.domain.entries.house import House, Party, Person
from ledger.domain.entries.masters import Formula, Limit, Material, Withdrawal
from ledger.domain.entries.recall import Closing, Contact
from ledger.domain.entries.receipt import Receipt
from ledger.domain.entries.upkeep import Clean, Count, Equipment, Note
from ledger.domain.entries.verdicts import Check, Deviation, Judge
from ledger.domain.masters.formulas import version_of
from reports.kit.format import closed, tidy
from reports.words.entries import bench, goods
from reports.words.entries import limits as words_of_limits
from reports.words.entries import masters as stock
from reports.words.entries.parts import Parts

TITLES = {
    "house": "house",
    "person": "person",
    "material": "material",
    "formula": "formula",
    "receipt": "received",
    "start": "started",
    "add": "added",
    "rest": "rest",
    "filter": "filtered",
    "rinse": "cake rinsed",
    "decant": "decanted",
    "look": "looked at",
    "measure": "measured",
    "makeup": "made up",
    "finish": "finished",
    "bottle": "bottled",
    "labels": "labels",
    "move": "moved",
    "judge": "judged",
    "check": "checked",
    "complaint": "complaint",
    "count": "counted",
    "note": "note",
    "deviation": "deviation",
    "clean": "cleaned",
    "equipment": "equipment",
    "strike": "struck out",
    "party": "party",
    "limit": "limit",
    "withdrawal": "formula withdrawn",
    "contact": "called",
    "closing": "recall closed",
}
"""What each kind of entry is called in a list."""

_WORDS: dict[type[Facts], Callable[[Any], Parts]] = {
    House: stock.house,
    Person: stock.person,
    Material: stock.material,
    Formula: stock.formula,
    Receipt: stock.receipt,
    Start: bench.start,
    Add: bench.add,
    Rest: bench.rest,
    Filter: bench.filter_,
    Rinse: bench.rinse,
    Decant: bench.decant,
    Look: bench.look,
    Measurement: bench.measurement,
    MakeUp: bench.makeup,
    Finish: bench.finish,
    Bottle: goods.bottle,
    Labels: goods.labels,
    Move: goods.move,
    Judge: goods.judge,
    Check: lambda facts: (f"entry {facts.about}" if facts.about else "the lot", facts.words),
    Complaint: goods.complaint,
    Count: lambda facts: (f"{tidy(facts.amount.written)} there",),
    Note: lambda facts: (facts.text,),
    Deviation: lambda facts: (facts.text,),
    Clean: lambda facts: (facts.vessel, facts.how, facts.last_held and f"held {facts.last_held}"),
    Equipment: lambda facts: (facts.name, facts.words),
    Strike: lambda _facts: ("an entry made by mistake",),
    Party: stock.party,
    Limit: words_of_limits.limit,
    Withdrawal: lambda facts: (version_of(facts),),
    Contact: goods.contact,
    Closing: lambda facts: (facts.cause,),
}
"""What tells each kind of entry in words."""


def sentence(entry: Entry) -> str:
    """Return what an entry says, in one line without its title."""
    facts = entry.draft.facts
    parts = [part for part in _WORDS[type(facts)](facts) if part]
    return ", ".join((*(part.removesuffix(".") for part in parts[:-1]), *parts[-1:]))


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
        if isinstance(entry.draft.facts, Strike) and entry.draft.corrects
    )
