"""Tables that were handed in, for machines."""

from ledger.domain.tables.grid import Found
from ledger.service.copies.intake.take_in import TakenIn
from reports.json.kit.answer import Answer


class TableRead(Answer, frozen=True):
    """A table that was read."""

    file: str
    """Name of its file."""
    rows: int
    """How many rows it has."""
    read_as: tuple[str, ...]
    """How it was read, in words."""


class RowFound(Answer, frozen=True):
    """Something that was found of a row."""

    file: str
    """Name of its file."""
    line: int | None
    """Its line; null: the file as a whole."""
    column: str | None
    """Head of the column; null: the row as a whole, or not known which."""
    what: str
    """What, a whole sentence."""
    what_to_do: str
    """What to do about it; empty where there is nothing."""


class TakenInAnswer(Answer, frozen=True):
    """What became of tables that were handed in."""

    is_recorded: bool
    """Whether entries were made of them."""
    tables: tuple[TableRead, ...]
    """The tables that were read."""
    findings: tuple[RowFound, ...]
    """What is wrong: nothing is recorded while there is anything."""
    findings_wanting_reason: int
    """How many of these want only a reason."""
    remarks: tuple[RowFound, ...]
    """What is merely unusual."""
    entries: tuple[int, ...]
    """Numbers of the entries that were made, or would be."""
    rows: int
    """How many rows were taken, or would be."""
    known_rows: int
    """How many rows the book had already."""
    untried: int
    """How many acts were not tried, since what they build on is among the findings."""


def taken_in_answer(told: TakenIn) -> TakenInAnswer:
    """Return what became of tables that were handed in."""
    return TakenInAnswer(
        is_recorded=told.is_recorded,
        tables=tuple(TableRead(each.file, each.rows, each.said) for each in told.tables),
        findings=tuple(map(_found, told.found)),
        findings_wanting_reason=told.answerable,
        remarks=tuple(map(_found, told.remarks)),
        entries=told.numbers,
        rows=told.rows,
        known_rows=told.known,
        untried=told.untried,
    )


def _found(found: Found) -> RowFound:
    return RowFound(found.file, found.line, found.column, found.what, found.todo)
