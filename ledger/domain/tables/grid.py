"""A table as it was handed in, and where in it something stands.

Guarantees: every row has its line in the file and as many cells as the heading; what is found
wrong names file, line and, where it is known, column.
"""

from msgspec import Struct


class Line(Struct, frozen=True):
    """One row of a table."""

    number: int
    """Its line in the file, or its row in the workbook, 1 for the first."""
    cells: tuple[str, ...]
    """Its cells, as many as the heading has."""


class Table(Struct, frozen=True):
    """A table with its heading."""

    file: str
    """Name of its file, for people; with its sheet, where it is of a workbook."""
    name: str
    """What it is called: the file without its ending, or the sheet of a workbook."""
    head: tuple[str, ...]
    """The heads of its columns."""
    lines: tuple[Line, ...]
    """Its rows below the heading, those without any cell left out."""
    said: tuple[str, ...] = ()
    """How it was read, in words: what parts its cells, how its letters are kept."""

    def cell(self, line: Line, column: str) -> str:
        """Return the cell of a row under a head; nothing where there is no such column."""
        return line.cells[self.head.index(column)] if column in self.head else ""


class Found(Struct, frozen=True):
    """Something wrong with what was handed in."""

    file: str
    """Name of the file."""
    line: int | None
    """Its line; None: the file as a whole."""
    column: str | None
    """Head of the column; None: the row as a whole, or not known which."""
    what: str
    """What is wrong, a whole sentence."""
    todo: str
    """What to do about it."""

    @property
    def place(self) -> str:
        """Where it stands, for people.

        >>> Found("may.csv", 5, "Oil mL", "", "").place, Found("may.csv", None, None, "", "").place
        ('may.csv line 5, column Oil mL', 'may.csv')
        """
        line = f" line {self.line}" if self.line else ""
        return f"{self.file}{line}{f', column {self.column}' if self.column else ''}"
