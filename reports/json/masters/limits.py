"""Limits for machines."""

from typing import Any

from ledger.domain.entries.plain import facts_to_plain
from ledger.domain.masters.limits import ListedLimit


def limit_plain(listed: ListedLimit) -> dict[str, Any]:
    """Return a limit as plain values, with where it stands and what is to come in its place."""
    return {
        **facts_to_plain(listed.limit),
        "holds": str(listed.holds),
        "to_come": facts_to_plain(listed.to_come) if listed.to_come else None,
    }
