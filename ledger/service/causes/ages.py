"""How old a lot was when it was looked at, in the ages that a trial is looked at.

Guarantees: age counts from the end of the making; of what was never finished from the last act at
the bench before the look, so that the looks of a jar after a day and after a week stay apart; an
age that was told with the look goes before either.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta

from ledger.domain.entries import Entry, Finish, Look, entries_of

AGES = ((12, "at once"), (72, "1 d"), (336, "7 d"), (1440, "30 d"), (None, "90 d"))
"""Ages of a look by their hours: up to each; the names are of the ages a trial is looked at
(trade practice: at once, after a night in the cold, after a week; common practice, no source)."""


def aged_looks(said: Sequence[Entry]) -> tuple[tuple[str, Look], ...]:
    """Return each look with its age.

    Args:
        said: The entries of one lot in force, in their order.
    """
    ends = [entry.draft.happened.at for entry in entries_of(said, Finish)]
    return tuple(
        (_age(_since(entry, said, ends[-1] if ends else None)), entry.facts)
        for entry in entries_of(said, Look)
    )


def _since(look: Entry[Look], said: Sequence[Entry], end: datetime | None) -> timedelta:
    if look.facts.age_minutes is not None:
        return timedelta(minutes=look.facts.age_minutes)
    at = look.draft.happened.at
    if end is None:
        made = [entry for entry in said if not isinstance(entry.facts, Look)]
        end = max(
            (entry.draft.happened.at for entry in made if entry.position < look.position),
            default=at,
        )
    return at - end


def _age(since: timedelta) -> str:
    hours = since / timedelta(hours=1)
    return next(name for most, name in AGES if most is None or hours < most)
