"""What a recording command answers: what was recorded, what is in the lot now, what comes next.

Guarantees: at most five lines for a plain entry; the next step is a command of ours, its capitals
to be filled in. Refuses: to order the maker about; the next step is the sensible one, not the only
one.
"""

from typing import TYPE_CHECKING, Any

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Entry, Receipt, Strike
from ledger.domain.lots.receipts import missing_facts
from ledger.service.desk.book import Recorded
from reports.kit.format import closed
from reports.words.desk.next_step import next_step
from reports.words.entries.sentence import sentence, title

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed
    from ledger.service.lots.dossier import Dossier


class Answer(Struct, frozen=True):
    """An answer to a recording command."""

    lines: tuple[str, ...]
    """What to show, a line each."""
    plain: dict[str, Any]
    """The same for machines."""


def answer(
    recorded: Recorded,
    dossier: "Dossier | None",
    step: str | None = None,
    lacking: tuple["Proposed", ...] = (),
) -> Answer:
    """Return the answer to a recording.

    Args:
        recorded: What was recorded.
        dossier: Of the lot it was about, if any.
        step: What comes next, where more is known than the entry says.
        lacking: What is still to be put into that lot by its formula.
    """
    entry = recorded.entry
    lines = [_done(entry, dossier.state.code if dossier else None)]
    if not recorded.is_new:
        told = f"as entry {entry.seq}, {title(entry)}: {sentence(entry)}"
        lines = [closed(f"In the book already, unchanged, {told}")]
    if dossier:
        lines.append(what_is_there(dossier))
    if missing := _missing(entry, dossier):
        lines.append(f"Not known yet: {', '.join(missing)}.")
    lines += [f"Note: {what} {todo}".rstrip() for what, todo in recorded.remarks]
    lines += [f"Deviation {item.seq}: {closed(item.facts.text)}" for item in recorded.deviations]
    step = step or next_step(entry, dossier, lacking)
    if step:
        lines.append(f"Next: {step}")
    return Answer(tuple(lines), _plain(recorded, dossier, missing, step))


def _done(entry: Entry, code: str | None) -> str:
    if isinstance(entry.facts, Strike):
        about = f" of {code}" if code else ""
        return f"Recorded {entry.seq}: entry {entry.draft.corrects}{about} is struck out."
    about = f" {code}" if code else ""
    place = f" in place of {entry.draft.corrects}" if entry.draft.corrects else ""
    return closed(f"Recorded {entry.seq}{place}, {title(entry)}{about}: {sentence(entry)}")


def what_is_there(dossier: "Dossier") -> str:
    """Return a line that says what a lot is, what is in it now and where it stands."""
    lot, state = dossier.lot, dossier.state
    there = show(state.on_hand, state.measure)
    unit = " there" if state.measure is Measure.UEACH else ""
    solids = ""
    if state.solids_mg:
        solids = f" and {show(state.solids_mg, Measure.MG)} of solids"
    return f"{lot.code}, {lot.name}: {there}{unit}{solids}, {lot.status}."


def _missing(entry: Entry, dossier: "Dossier | None") -> tuple[str, ...]:
    facts = entry.facts
    if not isinstance(facts, Receipt) or dossier is None:
        return ()
    return missing_facts(facts, dossier.state.material)


def _plain(
    recorded: Recorded, dossier: "Dossier | None", missing: tuple[str, ...], step: str | None
) -> dict[str, Any]:
    entry = recorded.entry
    plain: dict[str, Any] = {"entry": entry.seq, "kind": entry.kind}
    if recorded.code:
        plain["code"] = recorded.code
    if dossier:
        plain["lot"] = dossier.state.code
        plain["name"] = dossier.lot.name
        plain["on_hand"] = str(dossier.state.on_hand)
        plain["unit"] = str(dossier.state.measure)
        plain["status"] = str(dossier.lot.status)
    plain["says"] = sentence(entry)
    plain["missing"] = list(missing)
    plain["remarks"] = [f"{what} {todo}".strip() for what, todo in recorded.remarks]
    plain["deviations"] = [item.seq for item in recorded.deviations]
    plain["next"] = step
    return plain
