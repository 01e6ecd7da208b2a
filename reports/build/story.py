"""The words around the demonstration.

Guarantees: says that the season is invented. Refuses: to claim more than the counts show.
"""

from ledger.service.common_inputs import CommonInputs
from reports.format import plural


def told(house: str, entries: int, cloudy: str, causes: CommonInputs) -> list[str]:
    """Return the lines that lead to the cloudy bottle and its cause."""
    only = ", ".join(_named(code, causes) for code in causes.only_in_failed) or "none"
    shared = ", ".join(_named(code, causes) for code in causes.shared) or "nothing in common"
    return [
        f"{house} is an invented maker; its people, suppliers and customers are invented too.",
        f"Its season went into a new book, entry by entry: {entries} entries.",
        "",
        f"{plural(len(causes.failed), 'packed lot')} came back cloudy: {', '.join(causes.failed)}.",
        f"All are made of {shared}.",
        f"Of these, no packed lot without such a complaint is made of: {only}.",
        "That is where to look first; it is not yet a proof.",
        "",
        f"The trace of {cloudy}:",
    ]


def _named(code: str, causes: CommonInputs) -> str:
    return f"{code} {causes.names[code]}"
