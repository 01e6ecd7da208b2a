"""Compare a text with the one kept under `golden/`, whole.

With the environment variable ``POTTLE_GOLDEN=write`` the kept text is written anew instead.
"""

import os
from collections.abc import Sequence
from difflib import unified_diff
from pathlib import Path

GOLDEN = Path(__file__).parents[1] / "golden"


def check_golden(name: str, text: str) -> None:
    """Fail with a diff if the text is not the kept one, to the last character."""
    path = GOLDEN / name
    if _is_written():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode())
        return
    kept = path.read_bytes().decode() if path.exists() else ""
    if text != kept:
        diff = unified_diff(
            kept.splitlines(keepends=True), text.splitlines(keepends=True), "kept", "now"
        )
        raise AssertionError(f"golden/{name} differs from what is printed now:\n{''.join(diff)}")


def check_golden_part(name: str, lines: Sequence[str]) -> None:
    """Fail if what is kept under the first of some lines, to the next like it, is not the rest.

    A kept text is written anew whole, by the test that it is of.
    """
    if _is_written():
        return
    kept = (GOLDEN / name).read_text(encoding="utf-8").splitlines()
    begin = kept.index(lines[0])
    ends = (at for at in range(begin + 1, len(kept)) if not kept[at].startswith(" "))
    assert list(lines) == kept[begin : next(ends, len(kept))]


def _is_written() -> bool:
    return os.environ.get("POTTLE_GOLDEN") == "write"
