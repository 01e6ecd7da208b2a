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
    """What to do, with target and limits."""
    blanks: tuple[str, ...]
    """Labels of the blanks to be filled in."""


class SheetAnswer(Answer, frozen=True):
    """The sheet that a batch is made from."""

    code: Code
    """Code of the batch."""
    number: str
    """Number of the sheet, which is that code."""
    rows: tuple[SheetRowTold, ...]
    """What goes in, then what is done."""
    path: str | None
    """Where it is; null when it was not written."""


def sheet_answer(view: BatchSheetView, code: str, path: str | None) -> SheetAnswer:
    """Return the sheet of a batch."""
    return SheetAnswer(code, view.number, tuple(map(_row, (*view.additions, *view.steps))), path)


def _row(row: SheetRow) -> SheetRowTold:
    return SheetRowTold(row.code, row.act, row.words, row.blanks)
