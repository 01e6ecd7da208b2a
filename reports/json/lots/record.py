"""The record of a lot, for machines: where it is."""

from reports.json.kit.answer import Answer, Code


class RecordAnswer(Answer, frozen=True):
    """A record that was written."""

    code: Code
    """Code of the lot."""
    path: str
    """Where the record is."""
