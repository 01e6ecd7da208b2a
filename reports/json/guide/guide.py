"""The pages of the guide, for machines."""

from reports.json.kit.answer import Answer


class TopicRow(Answer, frozen=True):
    """A page of the guide, as it is listed."""

    topic: str
    """Its name at the prompt."""
    title: str
    """Its title."""


class PageAnswer(TopicRow, frozen=True):
    """A page of the guide."""

    text: str
    """Its text, Markdown."""
