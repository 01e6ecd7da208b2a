"""The words around the demonstration.

Guarantees: says that the season is invented. Refuses: to claim more than the counts show.
"""

from ledger.service.causes.suspects import Suspicion
from ledger.service.evidence.verify import Audit
from reports.words.causes.suspects import suspicion_lines


def told(house: str, entries: int, cloudy: str, causes: Suspicion) -> list[str]:
    """Return the lines that lead to the cloudy bottle and its cause."""
    return [
        f"{house} is an invented maker; its people, suppliers and customers are invented too.",
        f"Its season went into a new book, entry by entry: {entries} entries.",
        "",
        *suspicion_lines(causes),
        "",
        f"The trace of {cloudy}, one of the bottles that came back:",
    ]


def book_line(where: str, audit: Audit) -> str:
    """Return where the book of the season is, and whether it verified."""
    verified = "it does not verify" if audit.faults else "verified"
    return f"The book is at {where} ({audit.entries} entries, {verified})."
