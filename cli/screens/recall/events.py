"""Writing the key data of a period for a spreadsheet.

Guarantees: what the book does not know is said beside the file.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.tables import print_json, print_lines
from ledger.service.lots.sales import read_period
from ledger.service.recall.events import events_of
from reports.json.kit.answer import File
from reports.kit.format import plural
from reports.kit.tables import spreadsheet
from reports.words.recall.key_data import key_events

OTHER = "Give another name with --key-data, or --force to write over it."
LAW = (
    "The columns are named after 21 CFR 1.1340, 1.1345 and 1.1350; whether that or another law "
    "applies to you, and is met, is not for pottle to say."
)


def write_key_data(
    call: Call, out: Path, days: tuple[str | None, str | None], *, force: bool
) -> None:
    """Write what came, was made and went out in a period."""
    period = read_period(*days)
    check_place(out, force=force, instead=OTHER)
    keys = key_events(events_of(call.book(), period))
    write(out, spreadsheet(keys.sheet, out.name), force=force, instead=OTHER)
    if call.json:
        print_json(File(str(out)))
    else:
        rows = plural(len(keys.sheet.rows), "row")
        print_lines([f"{rows} of events in {out}, by day.", *keys.missing, LAW])
