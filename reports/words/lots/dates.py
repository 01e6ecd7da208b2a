"""Best-before dates in words.

Guarantees: the date unopened and the days once opened are told apart, each with what set it, and
an opened bottle is never told to keep beyond the date. Refuses: to promise anything; a best-before
date is about quality.
"""

from ledger.domain.lots.dates import Dates
from reports.kit.format import plural


def date_lines(dates: Dates) -> list[str]:
    """Return what is known of a lot's dates, a line each."""
    lines = []
    if dates.best_before:
        why = f", {dates.set_by}" if dates.set_by else ""
        lines.append(f"Best before {dates.best_before}{why}.")
    if opened := opened_words(dates):
        lines.append(f"{opened}.")
    return lines


def opened_words(dates: Dates) -> str | None:
    """Return within how many days to use it once opened, and never after its date, or None.

    >>> opened_words(Dates(opened_days=30))
    'Once opened use within 30 days'
    >>> from datetime import date
    >>> opened_words(Dates(date(2026, 9, 1), opened_days=30))
    'Once opened use within 30 days, and by the best-before date'
    """
    if dates.opened_days is None:
        return None
    told = f"Once opened use within {plural(dates.opened_days, 'day')}"
    return f"{told}, and by the best-before date" if dates.best_before else told


def keeping_words(dates: Dates) -> str | None:
    """Return how a bottle is to be kept, for its label, or None.

    >>> keeping_words(Dates(storage="cool and dark", opened_days=30))
    'Keep cool and dark. Once opened use within 30 days.'
    """
    parts = (f"Keep {dates.storage}" if dates.storage else None, opened_words(dates))
    told = ". ".join(part for part in parts if part)
    return f"{told}." if told else None
