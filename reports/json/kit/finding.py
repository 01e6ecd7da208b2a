"""What a check found, the same wherever it stands."""

from reports.json.kit.answer import Answer


class Finding(Answer, frozen=True):
    """One thing that does not fit."""

    entry: int | None
    """Number of the entry it belongs to; null for the whole."""
    what: str
    """What differs, a whole sentence."""
