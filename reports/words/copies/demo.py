"""The words around the demonstration.

Guarantees: says that the season is invented; a lead is told as one, and a cause only after the
trial that shows it. Refuses: to claim more than the counts show.
"""

from collections.abc import Sequence
from datetime import date

from ledger.service.causes.suspects import Suspicion
from ledger.service.evidence.verify import Audit
from reports.words.causes.suspects import suspicion_lines


def told(house: str, entries: int) -> list[str]:
    """Return what was played."""
    return [
        f"{house} is an invented maker; its people, suppliers and customers are invented too.",
        f"Its season went into a new book, entry by entry: {entries} entries.",
    ]


def lead_lines(day: date, causes: Suspicion, step: str) -> list[str]:
    """Return what the book said of the cause on the day a trial was planned."""
    return [
        "",
        f"On {day}, when bottles had come back, its book said:",
        "",
        *suspicion_lines(causes),
        f"So a trial was planned, as the book proposed: {step}",
    ]


def shown_lines(outcome: Sequence[str]) -> list[str]:
    """Return what the jars of the trial showed once they were unblinded."""
    return ["", "Its jars were made as they were drawn, and looked at blind:", "", *outcome]


def trace_lines(cloudy: str) -> list[str]:
    """Return what stands above the trace."""
    return ["", f"The trace of {cloudy}, one of the bottles that came back:"]


def book_line(where: str, audit: Audit) -> str:
    """Return where the book of the season is, and whether it verified."""
    verified = "it does not verify" if audit.faults else "verified"
    return f"The book is at {where} ({audit.entries} entries, {verified})."
