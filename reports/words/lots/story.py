"""The entries of a lot as its story: each in its place, with what was asked and what went wrong.

Guarantees: every entry stands once and in true order, in force or not; a deviation stands inside
the act it belongs to, with its reason; a check stands beside who did it.
"""

from collections import defaultdict

from ledger.domain.entries import Bottle, Check, Deviation, Entry, Finish, Start
from ledger.domain.lots.state import latest
from ledger.domain.masters.formulas import steps_for
from ledger.service.lots.dossier import Dossier
from ledger.service.lots.journal import Said
from reports.kit.format import clock, closed, initials
from reports.views.lots import StepRow
from reports.words.entries.sentence import notes, sentence, strikes, title
from reports.words.masters.formula import limits

Story = tuple[tuple[StepRow, ...], tuple[StepRow, ...]]
"""What was done until a lot was made, and what happened since."""


def story_of(dossier: Dossier) -> Story:
    """Return the entries of a lot, those of its making and those after."""
    own = {said.entry.seq for said in dossier.said}
    inside = [said for said in dossier.said if _about(said.entry) in own]
    rows = [(said, _row(said, dossier, inside)) for said in dossier.said if said not in inside]
    ends = [at for at, (said, _) in enumerate(rows) if _is_end(said)]
    made = ends[-1] + 1 if ends else len(rows)
    told = [row for _, row in rows]
    return tuple(told[:made]), tuple(told[made:])


def _is_end(said: Said) -> bool:
    return isinstance(said.entry.facts, Finish | Bottle) and said.corrected_by is None


def _about(entry: Entry) -> int | None:
    return entry.facts.about if isinstance(entry.facts, Deviation | Check) else None


def _row(said: Said, dossier: Dossier, inside: list[Said]) -> StepRow:
    entry, is_struck = said.entry, said.corrected_by is not None
    struck = strikes(item.entry for item in dossier.said)
    told: dict[type, list[Said]] = defaultdict(list)
    for other in inside:
        if _about(other.entry) == entry.seq:
            told[type(other.entry.facts)].append(other)
    checkers = [initials(other.entry) for other in told[Check] if other.corrected_by is None]
    return StepRow(
        entry=str(entry.seq),
        when=clock(entry.draft.happened, is_repeated=said.is_repeated),
        # In a word too, so that who only hears or copies the text does not take it for a fact.
        what=f"{title(entry)}, {'struck' if entry.seq in struck else 'corrected'}"
        if is_struck
        else title(entry),
        words=sentence(entry, dossier.house.currency if dossier.house else ""),
        by=", ".join([initials(entry), *(f"checked {by}" for by in checkers)]),
        notes=(
            *notes(entry, said.corrected_by, is_struck=entry.seq in struck),
            *(_checked(other.entry) for other in told[Check]),
        ),
        struck=is_struck,
        asked=_asked(entry, dossier),
        departures=tuple(_departure(other, entry) for other in told[Deviation]),
    )


def _asked(entry: Entry, dossier: Dossier) -> str:
    """Return what the formula asks of an act, from the first step that it may be."""
    facts, formula = entry.facts, dossier.formula
    if formula is None or isinstance(facts, Start) or latest(dossier.state, Start) is None:
        return ""
    step = next(steps_for(formula, facts), None)
    return limits(step) if step else ""


def _checked(entry: Entry) -> str:
    words = entry.facts.words if isinstance(entry.facts, Check) else None
    told = f"Checked by {initials(entry)}, {clock(entry.draft.happened)} (entry {entry.seq})"
    return closed(f"{told}: {words}" if words else told)


def _departure(said: Said, inside: Entry) -> str:
    entry, why = said.entry, said.entry.draft.reason
    # The act itself says the same reason below.
    is_told = why is None or why == inside.draft.reason
    reason = "" if is_told else closed(f" Reason: {why}")
    return f"Deviation {entry.seq}: {sentence(entry)}{reason} ({initials(entry)})"
