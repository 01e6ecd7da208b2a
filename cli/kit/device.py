"""What a device remembers of a book from one command to the next.

Guarantees: nothing of it is needed, since the book has all that happened; a device that cannot keep
it goes without, and it can be thrown away. No password is kept. Refuses: to say anything of a book
that it was not told of.
"""

import json
import os
import sys
from contextlib import suppress
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
    return Path(told or Path.home() / ".local" / "state") / "pottle" / "device.json"


def remembered(where: str) -> dict[str, Any]:
    """Return what this device remembers of a book, by the book's address."""
    own: dict[str, Any] = _read().get(_book(where), {})
    return own


def remember(where: str, own: dict[str, Any]) -> None:
    """Keep what this device remembers of a book, in place of what it did."""
    kept = _read()
    if kept.get(_book(where)) != own:
        kept[_book(where)] = own
        _write(kept)


def _book(where: str) -> str:
    # Never a password: a server's address is told without it.
    return masked(where) if "://" in where else str(Path(where).absolute())


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
