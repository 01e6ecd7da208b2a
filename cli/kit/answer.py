"""Answers of commands that record.

Guarantees: plain lines or JSON, never both; nothing that only one of them needs is made for the
other.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines
from ledger.domain.lots.lot import Status
from ledger.service.desk.book import Book, Recorded
from reports.words.desk.answer import answer
from reports.words.desk.next_step import (
    DUE,
    FIRST_MATERIAL,
    before_release,
    next_step,
    release_of,
    step_of_lot,
)

if TYPE_CHECKING:
    from msgspec import Struct

    from ledger.service.bench.draws import Proposed
    from ledger.service.lots.dossier import Dossier
    from reports.json.desk.recorded import RecordedAnswer


def say(call: Call, plain: "Callable[[], Struct]", *lines: str) -> None:
    """Print lines, or the answer for machines, made only when it is asked for."""
    if call.json:
        print_json(plain())
    else:
        print_lines(lines)


def recorded(call: Call, book: Book, done: Recorded) -> None:
    """Print the answer to a recording."""
    found = dossier_of(book, done)
    step = step_after(book, done, found)
    if call.held:
        call.held.hear(done, found, step)
        return
    say(call, lambda: plain(done, found, step), *answer(done, found, step).lines)


def plain(done: Recorded, found: "Dossier | None", step: str | None) -> "RecordedAnswer":
    """Return the answer to a recording for machines."""
    from reports.json.desk.recorded import recorded_answer

    return recorded_answer(done, found, step)


def step_after(book: Book, done: Recorded, found: "Dossier | None") -> str | None:
    """Return the next step after a recording."""
    step = next_step(done.entry, found, lacking_in(book, found))
    return DUE if step == FIRST_MATERIAL and _has_materials(book) else doable(book, found, step)


def _has_materials(book: Book) -> bool:
    from ledger.service.masters.material import materials

    return bool(materials(book))


def step_for(book: Book, found: "Dossier") -> str | None:
    """Return the next step for a lot as it stands."""
    return doable(book, found, step_of_lot(found, lacking_in(book, found)))


def doable(book: Book, found: "Dossier | None", step: str | None) -> str | None:
    """Return the next step for a lot; where that is its release, what stands in its way first."""
    if found is None or step != release_of(found.state.code):
        return step
    from ledger.service.verdicts.gate import in_the_way

    return before_release(step, in_the_way(book, found.state.code))


def dossier_of(book: Book, done: Recorded) -> "Dossier | None":
    """Return all that is known of the lot that an entry opened or is about, if there is one."""
    lot = done.code or done.entry.draft.lot
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
