"""The list of complaints.

Guarantees: what filters leave out is left out of every form; with none left, the next step is said.
"""

from datetime import UTC, date

from cli.kit.call import Call
from cli.kit.listing import Listing
from ledger.domain.entries.choices import Outcome
from ledger.domain.entries.texts import read_word
from ledger.service.desk.clock import now_at_home
from ledger.service.desk.times import read_when
from ledger.service.lots.complaints import Complained, complaints
from ledger.service.lots.dossier import find_lot
from reports.json.lots.complaints import complaint_row
from reports.words.lots.complaints import HEADS, complaint_cells

NOTHING = ("There are no such complaints.", 'Next: pottle complain LOT "WHAT IS WRONG" --from WHO')


def list_complaints(
    call: Call,
    *,
    lot: str | None,
    only_open: bool,
    party: str | None,
    outcome: str | None,
    days: tuple[str | None, str | None],
) -> None:
    """List the complaints that every filter lets through, by when they were made."""
    book = call.book()
    wanted = read_word(outcome, Outcome, "outcome") if outcome else None
    code = find_lot(book, lot, call.writer) if lot else None
    now = now_at_home(book)
    zone = now.tzinfo or UTC
    since, until = (read_when(text, now, zone).local().date() if text else None for text in days)

    def is_wanted(item: Complained) -> bool:
        became = item.answer.facts.outcome if item.answer else None
        return (
            (code is None or item.lot.code == code)
            and (item.is_open or not only_open)
            and (party is None or item.entry.facts.party == party)
            and (wanted is None or became is wanted)
            and (since or date.min) <= item.entry.draft.happened.local().date()
            and item.entry.draft.happened.local().date() <= (until or date.max)
        )

    found = [item for item in complaints(book) if is_wanted(item)]
    Listing(
        HEADS,
        [complaint_cells(item) for item in found],
        NOTHING,
        lambda: [complaint_row(item) for item in found],
    ).say(call)
