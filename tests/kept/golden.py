"""Compare a text with the one kept under `golden/`, whole.

With the environment variable ``POTTLE_GOLDEN=write`` the kept text is written anew instead.
"""

import os
from difflib import unified_diff
from pathlib import Path

GOLDEN = Path(__file__).parents[1] / "golden"


def check_golden(name: str, text: str) -> None:
    """Fail with a diff if the text is not the kept one, to the last character."""
    path = GOLDEN / name
    if os.environ.get("POTTLE_GOLDEN") == "write":
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode())
        return
    kept = path.read_bytes().decode() if path.exists() else ""
    if text != kept:
        diff = unified_diff(
            kept.splitlines(keepends=True), text.splitlines(keepends=True), "kept", "now"
        )
        raise AssertionError(f"golden/{name} differs from what is printed now:\n{''.join(diff)}")
