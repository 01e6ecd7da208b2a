"""Reading a decimal number in the unit its field asks for, as a whole number of a smaller one.

Guarantees: the number is exact; one in another unit of the trade (°F; inHg, mmHg, mbar) is turned
into the field's own and rounded half to even. Refuses: to round what is finer than the book keeps,
units it does not know, and a missing number.

References:
    NIST SP 811 (2008), Appendix B.8: the degree Fahrenheit is 5/9 of a kelvin, 32 °F are 0 °C; one
    conventional inch of mercury is 3.386389 kPa, one conventional millimetre 0.1333224 kPa.
"""

import re
from decimal import Decimal
from fractions import Fraction

from ledger.errors import InputError

_NUMBER = re.compile(r"([-−+]?\d+(?:[.,]\d+)?) ?(.*)", re.ASCII)


_OTHERS: dict[tuple[str, str], tuple[Fraction, Fraction]] = {
    ("c", "f"): (Fraction(32), Fraction(5, 9)),
    ("kpa", "mbar"): (Fraction(0), Fraction(1, 10)),
    ("kpa", "hpa"): (Fraction(0), Fraction(1, 10)),
    ("kpa", "bar"): (Fraction(0), Fraction(100)),
    ("kpa", "inhg"): (Fraction(0), Fraction("3.386389")),
    ("kpa", "mmhg"): (Fraction(0), Fraction("0.1333224")),
}
"""For a field's unit and another: what is taken off first, and what the rest is multiplied by."""


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
    turned = _OTHERS.get((_plain(unit), _plain(match[2]))) if match else None
    if not match or not (turned or _same_unit(match[2], unit)):
        raise InputError(
            f'"{text}" is not {with_article(what)}{wanted}.', f"Write a number{wanted}."
        )
    # Exactly: reckoned as decimals, a digit beyond the 28th would be rounded away in silence.
    number = Fraction(Decimal(match[1].replace(",", ".").replace("−", "-")))
    number = Fraction(round((number - turned[0]) * turned[1] * scale)) if turned else number * scale
    if number.denominator != 1:
        raise InputError(
            f'"{text}" is a finer {what} than the book keeps.', "Round it and write it again."
        )
    if abs(number) > 10**15:
        raise InputError(f'"{text}" is too large for a {what}.', "Check the number.")
    return int(number)


def _same_unit(written: str, unit: str) -> bool:
    return _plain(written) in ("", _plain(unit))


def _plain(unit: str) -> str:
    # The micro sign and the Greek mu are two letters that look alike.
    return unit.strip().lower().replace("μ", "µ").replace("µ", "u").lstrip("°").replace(" ", "")
