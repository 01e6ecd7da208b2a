"""What is due, for machines."""

from typing import Any

from ledger.service.lots.due import DueList
from reports.words.lots.due import minutes_between, todo
from reports.words.lots.next_in_lists import step_of_due


def plain(found: DueList) -> list[dict[str, Any]]:
    """Return what is due for machines; `minutes` is below zero for what is past."""
    return [
        {
            "waits": str(item.waits),
            "lot": item.lot,
            "name": item.name,
            "says": todo(item, found.now),
            "due": item.at.isoformat() if item.at else None,
            "minutes": minutes_between(found.now, item.at) if item.at else None,
            "next": step_of_due(item, found.now),
        }
        for item in found.items
    ]
