"""A batch sheet, for machines."""

from reports.json.kit.answer import Answer, Code
from reports.views.bench import BatchSheetView, SheetRow


class SheetRowTold(Answer, frozen=True):
    """One act to be done and written down."""

    row: str
    """Its code on the sheet, such as A1 or S2."""
    act: str
    """The verb, or the material that goes in."""
    words: str
    """What to do, with its limits."""
    target: str
    """How much of it is asked for; empty where nothing is."""
    blanks: tuple[str, ...]
    """Labels of the blanks to be filled in."""


class SheetAnswer(Answer, frozen=True):
    """The sheet that a batch is made from."""

    code: Code | None
    """Code of the batch; null where none is begun yet."""
    number: str
    """Number of the sheet: that code, else the version of the formula."""
    rows: tuple[SheetRowTold, ...]
    """What goes in and what is done, in the order of the work, and rows to spare."""
    path: str | None
    """Where it is; null when it was not written."""


def sheet_answer(view: BatchSheetView, code: str | None, path: str | None) -> SheetAnswer:
    """Return the sheet of a batch."""
    return SheetAnswer(code, view.number, tuple(map(_row, view.rows)), path)


def _row(row: SheetRow) -> SheetRowTold:
    return SheetRowTold(row.code, row.act, row.words, row.target, row.blanks)
