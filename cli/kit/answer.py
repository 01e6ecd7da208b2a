"""Answers of commands that record.

Guarantees: plain lines or JSON, never both.
"""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines
from ledger.domain.lots.lot import Status
from ledger.service.desk.book import Book, Recorded
from reports.words.desk.answer import answer
from reports.words.desk.next_step import RELEASE, before_release, next_step, step_of_lot

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed
    from ledger.service.lots.dossier import Dossier


def say(call: Call, plain: dict[str, Any], *lines: str) -> None:
    """Print lines, or their plain values as JSON."""
    if call.json:
        print_json(plain)
    else:
        print_lines(lines)


def recorded(call: Call, book: Book, done: Recorded, out: Path | None = None) -> None:
    """Print the answer to a recording, and where its paper is."""
    found = _dossier(book, done.code or done.entry.draft.lot)
    said = answer(done, found, _step(book, done, found))
    if out is None:
        say(call, said.plain, *said.lines)
    else:
        paper = f"The {done.entry.kind} are in {out}."
        say(call, {**said.plain, "out": str(out)}, said.lines[0], paper, *said.lines[1:])


def _step(book: Book, done: Recorded, found: "Dossier | None") -> str | None:
    return doable(book, found, next_step(done.entry, found, lacking_in(book, found)))


def doable(book: Book, found: "Dossier | None", step: str | None) -> str | None:
    """Return the next step for a lot; where that is a release, what stands in its way first."""
    if found is None or not step or not step.startswith(RELEASE):
        return step
    from ledger.service.verdicts.gate import in_the_way

    return before_release(step, in_the_way(book, found.state.code))


def step_for(book: Book, found: "Dossier") -> str | None:
    """Return the next step for a lot as it stands."""
    return doable(book, found, step_of_lot(found, lacking_in(book, found)))


def _dossier(book: Book, lot: str | None) -> "Dossier | None":
    if lot is None:
        return None
    from ledger.service.lots.dossier import dossier

    return dossier(book, lot)


def lacking_in(book: Book, found: "Dossier | None") -> tuple["Proposed", ...]:
    """Return what is still to be put into a batch that is being made by a formula."""
    if found is None or found.formula is None or found.lot.status is not Status.MAKING:
        return ()
    from ledger.service.bench.draws import lacking

    return lacking(book, found.state.code)
