"""Findings: what a check raised, kept once with the input that shows it.

Guarantees: fuzzing goes on after a finding; one fault at one place is kept once. Refuses: nothing.
"""

import traceback
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

FRAMES_TOLD = 8
"""How many steps of the way to a fault are told."""


def place_of(error: BaseException) -> str:
    """Return what an error is and where it arose in the book, the same for one fault."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if "/ledger/" in frame.filename]
    where = (ours or frames)[-1]
    law = str(error).split(":")[0] if isinstance(error, AssertionError) else ""
    return f"{type(error).__name__} {law} {Path(where.filename).name}:{where.lineno}"


def keeping(check: Callable[[bytes], None], name: str, folder: Path) -> Callable[[bytes], None]:
    """Return a check that keeps the first input of each finding and goes on."""
    found: set[str] = set()

    def one(data: bytes) -> None:
        try:
            check(data)
        except Exception as error:
            place = place_of(error)
            if place not in found:
                found.add(place)
                stem = f"{name}-{sha256(data).hexdigest()[:8]}"
                (folder / f"{stem}.input").write_bytes(data)
                told = "".join(traceback.format_exception(error, limit=-FRAMES_TOLD))
                (folder / f"{stem}.txt").write_text(told, encoding="utf-8", errors="replace")

    return one
