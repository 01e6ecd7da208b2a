"""How finely money is counted: the digits after the point of each currency.

Guarantees: the digits are those of ISO 4217, list one, which a test holds the table to; a currency
that is not in it has two. Refuses: to change the scale of what is in the book already.
"""

from fractions import Fraction

NO_DIGITS = (
    "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND",
    "VUV", "XAF", "XOF", "XPF",
)  # fmt: skip
THREE_DIGITS = ("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND")
FOUR_DIGITS = ("CLF", "UYW")
TWO = 2
"""The digits of all others, and of money of which none are said."""
_DIGITS = {
    **dict.fromkeys(NO_DIGITS, 0),
    **dict.fromkeys(THREE_DIGITS, 3),
    **dict.fromkeys(FOUR_DIGITS, 4),
}


def digits_of(currency: str) -> int:
    """Return how many digits after the point a currency has.

    >>> digits_of("EUR"), digits_of("JPY"), digits_of("KWD")
    (2, 0, 3)
    """
    return _DIGITS.get(currency, TWO)


def digits_told(digits: int) -> int | None:
    """Return digits as an entry says them: two are not said."""
    return None if digits == TWO else digits


def in_hundredths(minor: int, digits: int | None) -> Fraction:
    """Return an amount of money in hundredths of its currency.

    >>> in_hundredths(1234, 3), in_hundredths(338, 0), in_hundredths(4800, None)
    (Fraction(617, 5), Fraction(33800, 1), Fraction(4800, 1))
    """
    return Fraction(100 * minor, 10 ** (TWO if digits is None else digits))


def coins(minor: int, digits: int | None = None) -> str:
    """Return an amount of money without its currency, with all digits it is counted with.

    >>> coins(4800), coins(1234, 3), coins(338, 0), coins(-5)
    ('48.00', '1.234', '338', '-0.05')
    """
    places = TWO if digits is None else digits
    whole, rest = divmod(abs(minor), 10**places)
    sign = "-" if minor < 0 else ""
    return f"{sign}{whole}.{rest:0{places}d}" if places else f"{sign}{whole}"
