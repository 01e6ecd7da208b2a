"""A scale on a serial line: its next stable weight, as an amount.

Guarantees: only a weight that stands still becomes a number: one that the scale itself calls
stable, or the same three times in a row. Refuses: a scale that says nothing, or never comes to
rest.
"""

import re
import time
from collections.abc import Iterator

from ledger.errors import InputError, StorageError

WORD = "weigh"
"""The word of a line that stands for the weight on the scale."""
PATIENCE_S = 15.0
"""How long a weight is waited for."""
SAME = 3
"""How many equal readings in a row stand still, where the scale does not say so itself."""
ASK = b"S\r\n"
"""Asks for a stable weight (command S of the standard interface command set that makers of scales
publish for their serial lines, level 0; from memory); a scale that only sends takes no notice."""
_WEIGHT = re.compile(r"([+-]?) *(\d+(?:[.,]\d+)?) *(kg|mg|g)\b", re.IGNORECASE)
_MOVING = re.compile(r"^(?:S +[DI+-]|US|.*\?)", re.ASCII)
_STABLE = re.compile(r"^(?:S +S|ST)\b", re.ASCII)


def weight_in(line: str) -> tuple[str, bool] | None:
    """Return the weight that a line of a scale says, and whether it calls it stable; None: none.

    >>> weight_in("S S       7.52 g"), weight_in("ST,GS,+  7.52 g"), weight_in("+ 7.5 g")
    (('7.52g', True), ('7.52g', True), ('7.5g', False))
    >>> weight_in("S D      7.1 g"), weight_in("US,GS,+  7.1 g"), weight_in("")
    (None, None, None)
    """
    if _MOVING.match(line):
        return None
    found = _WEIGHT.search(line)
    if not found or found[1] == "-":
        return None
    return f"{found[2]}{found[3].lower()}", bool(_STABLE.match(line))


def stable(lines: Iterator[str]) -> str | None:
    """Return the first weight that stands still among the lines of a scale; None: none does."""
    last, times = "", 0
    for line in lines:
        read = weight_in(line.strip())
        if read is None:
            times = 0 if line.strip() else times
            continue
        weight, is_stable = read
        times = times + 1 if weight == last else 1
        last = weight
        if is_stable or times == SAME:
            return weight
    return None


def weigh(port: str) -> str:
    """Return the next stable weight of the scale at a serial port, such as "7.52g".

    Raises:
        StorageError: There is no such port, or nothing to read it with.
        InputError: It says no stable weight.
    """
    try:
        import serial
    except ImportError as error:
        raise StorageError(
            "A scale is read with pyserial, which is not installed.",
            "Install it: pip install 'pottle[scale]'",
        ) from error
    try:
        with serial.Serial(port, 9600, timeout=0.5) as line:
            line.reset_input_buffer()
            line.write(ASK)
            weight = stable(_lines(line))
    except (OSError, ValueError) as error:
        raise StorageError(
            f"The scale at {port} cannot be read: {error}.", "Look at its cable and its name."
        ) from error
    if weight is None:
        raise InputError(
            f"The scale at {port} said no weight that stands still.",
            "Let it come to rest and write the line again, or write the weight.",
        )
    return weight


def _lines(line: "serial.Serial") -> Iterator[str]:  # type: ignore[name-defined]  # noqa: F821
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        yield line.readline().decode("ascii", errors="replace")
