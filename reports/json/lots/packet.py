"""A packet for an inspector, for machines."""

from reports.json.kit.answer import Answer, Code


class PacketAnswer(Answer, frozen=True):
    """A packet that was written."""

    of: str
    """The lot, or the first and the last day."""
    codes: tuple[Code, ...]
    """Codes of the lots whose records are in it."""
    entries: int
    """How many entries are in it as they were written."""
    path: str
    """Where it is."""
