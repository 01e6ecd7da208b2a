"""A small list: as a table, as JSON, or as words when there is nothing to list.

Guarantees: the same rows in every form, and a next step where there is none.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from cli.kit.call import Call
from cli.kit.sheets import put_sheet
from cli.kit.tables import print_json, print_lines, print_table

if TYPE_CHECKING:
    from msgspec import Struct

    from reports.kit.tables import Sheet


@dataclass(frozen=True, slots=True)
class Listing:
    """A list as a table, as JSON, or as words when there is nothing to list."""

    heads: Sequence[str]
    """Column heads."""
    rows: Sequence[Sequence[str]]
    """Cells."""
    nothing: Sequence[str]
    """What is said when there is no row: that there is none, and the next step."""
    plain: "Callable[[], Sequence[Struct]]"
    """Returns the rows for machines."""
    right: str = ""
    """Heads of the columns set to the right, with commas between."""
    sheet: "Callable[[], Sheet] | None" = None
    """Returns the rows for a spreadsheet, of a list that can be written as one."""

    def say(self, call: Call, csv: Path | None = None, *, force: bool = False) -> None:
        """Print it, or write it to a spreadsheet."""
        if csv and self.sheet:
            put_sheet(call, self.sheet(), csv, force=force)
        if call.json:
            print_json(self.plain())
        elif csv:
            return
        elif self.rows:
            print_table(self.heads, self.rows, self.right)
        else:
            print_lines(self.nothing)
