"""What a device remembers of the bench: who has which lot in hand there, and what it counts down.

Guarantees: as `cli.kit.device` does. Refuses: to keep what the book has.
"""

from contextlib import suppress
from datetime import datetime

from cli.kit.device import remember, remembered


def lot_in_hand(where: str, by: str | None) -> str | None:
    """Return the code of the lot that a person had in hand at this device, or None."""
    found = remembered(where).get("hands", {}).get(_who(by))
    return found if isinstance(found, str) else None


def take_in_hand(where: str, by: str | None, lot: str) -> None:
    """Remember which lot a person has in hand at this device."""
    own = remembered(where)
    remember(where, own | {"hands": own.get("hands", {}) | {_who(by): lot}})


def rests(where: str) -> dict[str, datetime]:
    """Return when the rests end that this device counts down, by the code of their lot."""
    kept = remembered(where).get("rests", {})
    found: dict[str, datetime] = {}
    for lot, until in kept.items() if isinstance(kept, dict) else ():
        with suppress(ValueError, TypeError):
            found[lot] = datetime.fromisoformat(until)
    return found


def count_down(where: str, lot: str, until: datetime | None) -> None:
    """Count a rest down from now on; None: no longer."""
    own = remembered(where)
    kept = {code: end for code, end in own.get("rests", {}).items() if code != lot}
    if until:
        kept[lot] = until.isoformat()
    remember(where, own | {"rests": kept})


def _who(by: str | None) -> str:
    return (by or "").strip().upper()
