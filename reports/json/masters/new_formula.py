"""The file of a formula to begin with, for machines."""

from reports.json.kit.answer import Answer


class NewFormulaAnswer(Answer, frozen=True):
    """A file that was written."""

    formula: str
    """Short name of the formula."""
    file: str
    """Path of the file."""
