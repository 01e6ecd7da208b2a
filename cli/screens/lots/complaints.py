"""The list of complaints.

Guarantees: what filters leave out is left out of every form; with none left, the next step is said.
"""

from dataclasses import dataclass
from datetime import UTC, date
from pathlib import Path

from cli.kit.call import Call
from cli.kit.listing import Listing
from cli.kit.sheets import check_sheet
from ledger.domain.entries.choices import Outcome
from ledger.domain.entries.texts import read_word
from ledger.service.desk.clock import now_at_home
from ledger.service.desk.times import read_when
from ledger.service.lots.complaints import Complained, complaints
from ledger.service.lots.dossier import find_lot
from reports.json.lots.complaints import complaint_row
from reports.words.lots.complaints import HEADS, complaint_cells
from reports.words.lots.sheets import complaints_sheet

NOTHING = ("There are no such complaints.", 'Next: pottle complain LOT "WHAT IS WRONG" --from WHO')


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which complaints are listed, and where."""

    lot: str | None
    """Only of this lot."""
    only_open: bool
    """Only what is not closed."""
    party: str | None
    """Only by this customer."""
    outcome: str | None
    """Only with this outcome."""
    days: tuple[str | None, str | None]
    """Only from this day to that."""
    csv: Path | None = None
    """Spreadsheet to write."""
    force: bool = False
    """Whether it may take the place of a file."""


def list_complaints(call: Call, wanted: Wanted) -> None:
    """List the complaints that every filter lets through, by when they were made."""
    check_sheet(wanted.csv, force=wanted.force)
    book = call.book()
    lot, party, outcome, days = wanted.lot, wanted.party, wanted.outcome, wanted.days
    ended = read_word(outcome, Outcome, "outcome") if outcome else None
    code = find_lot(book, lot, call.writer) if lot else None
    now = now_at_home(book)
    zone = now.tzinfo or UTC
    since, until = (read_when(text, now, zone).local().date() if text else None for text in days)

    def is_wanted(item: Complained) -> bool:
        became = item.answer.facts.outcome if item.answer else None
        return (
            (code is None or item.lot.code == code)
            and (item.is_open or not wanted.only_open)
            and (party is None or item.entry.facts.party == party)
            and (ended is None or became is ended)
            and (since or date.min) <= item.entry.draft.happened.local().date()
            and item.entry.draft.happened.local().date() <= (until or date.max)
        )

    found = [item for item in complaints(book) if is_wanted(item)]
    Listing(
        HEADS,
        [complaint_cells(item) for item in found],
        NOTHING,
        lambda: [complaint_row(item) for item in found],
        sheet=lambda: complaints_sheet(found),
    ).say(call, wanted.csv, force=wanted.force)
