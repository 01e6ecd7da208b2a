"""Reading a decimal number in the unit its field asks for, as a whole number of a smaller one.

Guarantees: the number is exact. Refuses: to round what is finer than the book keeps, other units,
and a missing number.
"""

import re
from decimal import Decimal
from fractions import Fraction

from ledger.errors import InputError

_NUMBER = re.compile(r"([-−+]?\d+(?:[.,]\d+)?) ?(.*)", re.ASCII)


def with_article(what: str) -> str:
    """Return a noun with its article.

    >>> with_article("origin"), with_article("lot")
    ('an origin', 'a lot')
    """
    return f"{'an' if what[:1].lower() in set('aeio') else 'a'} {what}"


def read_scaled(text: str, scale: int, unit: str, what: str) -> int:
    """Return a decimal number times `scale` as a whole number.

    Args:
        text: The number, with or without its unit.
        scale: How many of the smaller unit make one.
        unit: The unit people write, or "" for none.
        what: What the number is, for the sentence.

    Raises:
        InputError: It is missing or no number, has another unit or too many decimals.
    """
    match = _NUMBER.fullmatch(text.strip())
    wanted = f" in {unit}" if unit else ""
    if not text.strip():
        raise InputError(f"The {what} is missing.", f"Write a number{wanted}.")
    if not match or not _same_unit(match[2], unit):
        raise InputError(
            f'"{text}" is not {with_article(what)}{wanted}.', f"Write a number{wanted}."
        )
    # Exactly: reckoned as decimals, a digit beyond the 28th would be rounded away in silence.
    number = Fraction(Decimal(match[1].replace(",", ".").replace("−", "-"))) * scale
    if number.denominator != 1:
        raise InputError(
            f'"{text}" is a finer {what} than the book keeps.', "Round it and write it again."
        )
    if abs(number) > 10**15:
        raise InputError(f'"{text}" is too large for a {what}.', "Check the number.")
    return int(number)


def _same_unit(written: str, unit: str) -> bool:
    # The micro sign and the Greek mu are two letters that look alike.
    plain = written.strip().lower().replace("μ", "µ").replace("µ", "u").lstrip("°")
    wanted = unit.lower().replace("µ", "u").lstrip("°")
    return plain in ("", wanted)
