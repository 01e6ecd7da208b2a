"""Numbers in a maker's tables: which sign is the decimal one, and the number as the book reads it.

Guarantees: the decimal sign of a table is the one that its own cells show; a number that could be
read in two ways is not read. Refuses: to guess from the language or from what parts the cells.
"""

import re
from collections.abc import Iterable

from ledger.errors import InputError

SIGNS = (",", ".")
"""The signs that may part the decimals."""
_NUMBER = re.compile(r"([-+−]?\d[\d.,' \u00a0\u202f’]*\d|[-+−]?\d)(?!\d)(\s*[^\d\s].*)?", re.DOTALL)
_THOUSANDS = {
    sign: re.compile(rf"[-+−]?\d{{1,3}}(?:[{others}]\d{{3}})+(?:{re.escape(sign)}\d+)?")
    for sign, others in ((",", r".' \u00a0\u202f’"), (".", r",' \u00a0\u202f’"))
}
_PLAIN = {sign: re.compile(rf"[-+−]?\d+(?:{re.escape(sign)}\d+)?") for sign in SIGNS}


def decimal_sign(cells: Iterable[str]) -> str | None:
    """Return the sign that parts the decimals in cells, or None where they do not show it.

    >>> decimal_sign(["30,5", "450", "1.250"]), decimal_sign(["1.250", "2,500"])
    (',', None)
    """
    shown = {sign for cell in cells if (sign := _shows(cell))}
    return shown.pop() if len(shown) == 1 else None


def _shows(cell: str) -> str | None:
    """Return the decimal sign of a number that can be read in one way only, if it has one."""
    number = _NUMBER.fullmatch(cell.strip())
    readings = [sign for sign in SIGNS if number and _read(number[1], sign) is not None]
    return readings[0] if number and len(readings) == 1 else None


def _read(digits: str, sign: str) -> str | None:
    """Return a number with a point, read with one decimal sign; None where it cannot be."""
    if _PLAIN[sign].fullmatch(digits):
        return digits.replace(sign, ".")
    if _THOUSANDS[sign].fullmatch(digits):
        whole, _, decimals = digits.partition(sign)
        whole = re.sub(r"[^\d+−-]", "", whole)
        return f"{whole}.{decimals}" if decimals else whole
    return None


def plain_number(cell: str, sign: str | None) -> str:
    """Return a cell with its number as the book reads it, and its unit; other text as it is.

    Args:
        cell: What is written.
        sign: The decimal sign of the table; None: not known.

    Raises:
        InputError: The number could be read in two ways.

    >>> plain_number("1.250,5 ml", ","), plain_number("12 x 1", ",")
    ('1250.5 ml', '12 x 1')
    """
    text = cell.strip()
    number = _NUMBER.fullmatch(text)
    if number is None:
        return text
    digits, unit = number[1], number[2] or ""
    if sign:
        read = _read(digits, sign)
        return text if read is None else f"{read}{unit}"
    readings = list(dict.fromkeys(read for each in SIGNS if (read := _read(digits, each))))
    if len(readings) > 1:
        raise InputError(
            f'"{digits}" could be {" or ".join(readings)}.',
            "Say which sign parts the decimals, with --decimal , or --decimal .",
        )
    return f"{readings[0]}{unit}" if readings else text
