"""The words around the demonstration.

Guarantees: says that the season is invented. Refuses: to claim more than the counts show.
"""

from ledger.service.suspecting import Suspicion
from reports.build.suspicion import suspicion_lines


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
