"""The help of a command, for machines."""

from reports.json.kit.answer import Answer


class HelpAnswer(Answer, frozen=True):
    """The help of a command."""

    topic: str
    """The words that asked for it; empty for the list of all commands."""
    text: str
    """The help."""
