"""What a device remembers of the bench: who has which lot in hand there, and what it counts down.

Guarantees: nothing of it is needed, since the book has all that happened; a device that cannot keep
it goes without. Refuses: to say anything of a book that it was not told of.
"""

import json
import os
import sys
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import Any

from ledger.errors import masked


def state_file() -> Path:
    """Return where this device keeps it: the user's own folder for state (XDG), or what is usual.

    The folder is as the XDG Base Directory Specification 0.8 has it.
    """
    told = os.environ.get("XDG_STATE_HOME") or (
        os.environ.get("LOCALAPPDATA") if sys.platform == "win32" else None
    )
    return Path(told or Path.home() / ".local" / "state") / "pottle" / "bench.json"


def lot_in_hand(where: str, by: str | None) -> str | None:
    """Return the code of the lot that a person had in hand at this device, or None."""
    found = _read().get(_book(where), {}).get("hands", {}).get(_who(by))
    return found if isinstance(found, str) else None


def take_in_hand(where: str, by: str | None, lot: str) -> None:
    """Remember which lot a person has in hand at this device."""
    kept = _read()
    own = kept.setdefault(_book(where), {})
    if own.setdefault("hands", {}).get(_who(by)) != lot:
        own["hands"][_who(by)] = lot
        _write(kept)


def rests(where: str) -> dict[str, datetime]:
    """Return when the rests end that this device counts down, by the code of their lot."""
    kept = _read().get(_book(where), {}).get("rests", {})
    found: dict[str, datetime] = {}
    for lot, until in kept.items() if isinstance(kept, dict) else ():
        with suppress(ValueError, TypeError):
            found[lot] = datetime.fromisoformat(until)
    return found


def count_down(where: str, lot: str, until: datetime | None) -> None:
    """Count a rest down from now on; None: no longer."""
    kept = _read()
    own = kept.setdefault(_book(where), {}).setdefault("rests", {})
    told = until.isoformat() if until else None
    if own.get(lot) == told:
        return
    own.pop(lot, None)
    if told:
        own[lot] = told
    _write(kept)


def _book(where: str) -> str:
    # Never a password: a server's address is told without it.
    return masked(where) if "://" in where else str(Path(where).absolute())


def _who(by: str | None) -> str:
    return (by or "").strip().upper()


def _read() -> dict[str, Any]:
    try:
        kept = json.loads(state_file().read_text(encoding="utf-8"))
    except (OSError, ValueError, RuntimeError):
        return {}
    books = kept if isinstance(kept, dict) else {}
    return {book: own for book, own in books.items() if isinstance(own, dict)}


def _write(kept: dict[str, Any]) -> None:
    with suppress(OSError, RuntimeError):
        path = state_file()
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f"{path.name}.{os.getpid()}.part")
        part.write_text(json.dumps(kept, indent=1), encoding="utf-8")
        part.replace(path)
