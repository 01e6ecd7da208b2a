"""A target: tables that a maker hands in, as files and by the maps that their headings propose."""

from pathlib import Path

from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.dialect import read_table
from ledger.domain.tables.grid import Found
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.map_proposal import proposed_map
from ledger.service.copies.intake.row_acts import Reading, acts_of_table
from ledger.service.copies.intake.table_maps import mapped
from tests.fuzz.laws import attempt, check_error

SEASON = Path(__file__).parents[1] / "service" / "copies" / "intake" / "german_season"


def tables(data: bytes) -> None:
    """Anything is a table or told why not; a map that its heading proposes can be read.

    What its rows then tell are acts, or it is told with a whole sentence why they are none.
    """
    table, found = read_table("made.csv", "made", data)
    assert table is not None or found
    if table is not None:
        # One that names a word that is needed and not there may still be told so.
        asked = attempt(lambda: read_map("proposed", proposed_map([table])))
        assert asked is not None
        parts, wrong = mapped([table], asked)
        found = [*found, *wrong]
        for part in parts:
            reading = Reading(asked.dates or DayOrder.DMY, ",", asked.words)
            if part.told:
                found += acts_of_table(table, part.told, reading, 0)[1]
    for each in found:
        check_error(_told(each))


def _told(found: Found) -> InputError:
    return InputError(found.what, found.todo)


def seeds() -> list[bytes]:
    """Return the tables of an invented maker, in several dialects."""
    texts = [path.read_text(encoding="utf-8") for path in sorted(SEASON.glob("*.csv"))]
    odd = 'Lot "fine";Date;{Oil} ml;Bottles\\;Total\nO 1;1.2.26;3,5;4;x\n'
    return [
        *(text.encode() for text in (*texts, odd)),
        *(text.replace(";", "\t").encode("cp1252") for text in texts),
    ]
