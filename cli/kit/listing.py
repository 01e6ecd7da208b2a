"""A small list: as a table, as JSON, or as words when there is nothing to list.

Guarantees: the same rows in every form, and a next step where there is none.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table


@dataclass(frozen=True, slots=True)
class Listing:
    """A list as a table, as JSON, or as words when there is nothing to list."""

    heads: Sequence[str]
    """Column heads."""
    rows: Sequence[Sequence[str]]
    """Cells."""
    nothing: Sequence[str]
    """What is said when there is no row: that there is none, and the next step."""
    keys: Sequence[str] = ()
    """Keys of the JSON; none: the heads."""
    right: str = ""
    """Heads of the columns set to the right, with commas between."""

    def say(self, call: Call) -> None:
        """Print it."""
        if call.json:
            keys = self.keys or self.heads
            print_json([dict(zip(keys, row, strict=True)) for row in self.rows])
        elif self.rows:
            print_table(self.heads, self.rows, self.right)
        else:
            print_lines(self.nothing)
