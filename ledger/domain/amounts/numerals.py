"""Reading the numbers a maker writes: 30, 0.5, 0,5, 1/2, 1 1/2 and 1½.

Guarantees: the value is an exact fraction. Refuses: digits other than 0 to 9, characters that
cannot be seen, separators between thousands, and a comma that could be either kind.
"""

import re
import unicodedata
from fractions import Fraction

from ledger.errors import InputError

LONGEST_TEXT = 60
"""The most characters an amount may be written in."""

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_WRITTEN_OUT = {ord(sign): f" {unicodedata.normalize('NFKC', sign)}" for sign in _VULGAR}
_SLASH = re.compile(r"\s*[/\u2044]\s*")
_DECIMAL = re.compile(r"[0-9]*[.,][0-9]+|[0-9]+")
_FRACTION = re.compile(r"(?:([0-9]+) )?([0-9]+)/([0-9]+)")
_EITHER_COMMA = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")


def fold_text(text: str) -> str:
    """Fold every run of white space to one space, and refuse what cannot be an amount.

    Raises:
        InputError: The text is empty or too long, or holds a character that cannot be seen
            or a digit of another script.
    """
    if len(text) > LONGEST_TEXT:
        raise InputError(
            f"An amount has at most {LONGEST_TEXT} characters, and this text has {len(text)}.",
            "Write the amount alone, such as 30 mL, and put the rest in a note.",
        )
    # Of the common letters and signs none is refused.
    if not (text.isascii() and text.isprintable()):
        for character in text:
            _refuse_character(character)
    folded = " ".join(text.split())
    if not folded:
        raise InputError("No amount was given.", "Write a number and a unit, such as 30 mL.")
    return folded


def _refuse_character(character: str) -> None:
    kind = unicodedata.category(character)
    if kind.startswith("C") and character not in "\t\n\r":
        raise InputError(
            f"The amount holds a character that cannot be seen (U+{ord(character):04X}).",
            "Type the amount again by hand.",
        )
    if kind.startswith("N") and not character.isascii() and character not in _VULGAR:
        raise InputError(
            f'The amount holds "{character}" (U+{ord(character):04X}), '
            "which is not one of the digits 0 to 9.",
            "Write the amount with the digits 0 to 9.",
        )


def spread_fractions(text: str) -> str:
    """Write single-character fractions out: "1½ L" becomes "1 1/2 L"."""
    # Unicode writes its fractions out with a slash of their own, U+2044.
    return " ".join(_SLASH.sub("/", text.translate(_WRITTEN_OUT)).split())


def read_number(number: str, *, piece: str) -> Fraction:
    """Read a number that is zero or more, exactly.

    A comma is read as a decimal point, save where it could as well part thousands.

    Args:
        number: The number as written, fractions spread.
        piece: Number and unit as written, to be quoted in errors.

    Raises:
        InputError: It is not a number of a known form, or its comma could mean two things.

    >>> read_number("1 1/2", piece="1 1/2 L")
    Fraction(3, 2)
    """
    if _EITHER_COMMA.fullmatch(number):
        thousands, decimal = (piece.replace(",", other, 1) for other in ("", "."))
        raise InputError(
            f"{piece} could be {thousands} or {decimal}, "
            "because a comma can part thousands or decimals.",
            f"Write {thousands} or {decimal}.",
        )
    if _DECIMAL.fullmatch(number):
        return Fraction(number.replace(",", "."))
    parts = _FRACTION.fullmatch(number)
    if parts and int(parts[3]):
        return int(parts[1] or 0) + Fraction(int(parts[2]), int(parts[3]))
    raise InputError(
        f'"{number}" in {piece} is not a number the book can read.',
        "Write a number such as 30, 0.5, 1/2 or 1 1/2, with nothing between thousands.",
    )
