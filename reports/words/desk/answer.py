"""What a recording command answers: what was recorded, what is in the lot now, what comes next.

Guarantees: at most five lines for a plain entry; the next step is a command of ours, its capitals
to be filled in. Refuses: to order the maker about; the next step is the sensible one, not the only
one.
"""

from typing import TYPE_CHECKING

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.entries import Entry, Receipt, Strike
from ledger.domain.lots.receipts import missing_facts
from ledger.service.desk.book import Recorded
from reports.kit.format import closed
from reports.words.entries.named import sentence_naming
from reports.words.entries.sentence import sentence, title
from reports.words.lots.there import amount_there

if TYPE_CHECKING:
    from ledger.service.lots.dossier import Dossier


class Answer(Struct, frozen=True):
    """An answer to a recording command, in words."""

    done: str
    """What was recorded."""
    found: tuple[str, ...]
    """What is in the lot now, and what is to be said of the entry, a line each."""
    step: str | None
    """The command that comes next."""

    @property
    def last(self) -> tuple[str, ...]:
        """The line that names the next step, if there is one."""
        return (f"Next: {self.step}",) if self.step else ()

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it, a line each."""
        return (self.done, *self.found, *self.last)


def answer(recorded: Recorded, dossier: "Dossier | None", step: str | None) -> Answer:
    """Return the answer to a recording.

    Args:
        recorded: What was recorded.
        dossier: Of the lot it was about, if any.
        step: What comes next.
    """
    entry = recorded.entry
    done = _done(recorded, dossier.state.code if dossier else None)
    if not recorded.is_new:
        told = f"as entry {entry.seq}, {title(entry)}: {sentence(entry)}"
        done = closed(f"In the book already, unchanged, {told}")
    found = [what_is_there(dossier)] if dossier else []
    if missing := not_known(entry, dossier):
        found.append(f"Not known yet: {', '.join(missing)}.")
    found += [f"Note: {what} {todo}".rstrip() for what, todo in recorded.remarks]
    found += [f"Deviation {item.seq}: {closed(item.facts.text)}" for item in recorded.deviations]
    return Answer(done, tuple(found), step)


def _done(recorded: Recorded, code: str | None) -> str:
    entry = recorded.entry
    if isinstance(entry.facts, Strike):
        about = f" of {code}" if code else ""
        return f"Recorded {entry.seq}: entry {entry.draft.corrects}{about} is struck out."
    about = f" {code}" if code else ""
    place = f" in place of {entry.draft.corrects}" if entry.draft.corrects else ""
    told = sentence_naming(entry, recorded.draws_on)
    return closed(f"Recorded {entry.seq}{place}, {title(entry)}{about}: {told}")


def what_is_there(dossier: "Dossier") -> str:
    """Return a line that says what a lot is, what is in it now and where it stands."""
    lot, state = dossier.lot, dossier.state
    there = amount_there(state.on_hand, state.measure, is_reckoned=state.is_reckoned)
    there += ", reckoned" if state.is_reckoned else ""
    unit = " there" if state.measure is Measure.UEACH else ""
    solids = ""
    if state.solids_mg:
        solids = f" and {show(state.solids_mg, Measure.MG)} of solids"
    return f"{lot.code}, {lot.name}: {there}{unit}{solids}, {lot.status}."


def not_known(entry: Entry, dossier: "Dossier | None") -> tuple[str, ...]:
    """Return the facts of a delivery that the book does not know yet."""
    facts = entry.facts
    if not isinstance(facts, Receipt) or dossier is None:
        return ()
    return missing_facts(facts, dossier.state.material)
