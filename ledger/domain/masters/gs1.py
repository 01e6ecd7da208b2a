"""Numbers of GS1 for articles, places and cases, and the address that a Digital Link is.

Guarantees: a number that is returned has all its digits and a right check digit; an address is the
canonical one, at id.gs1.org, unless another place is named. Refuses: to make a number up; GS1 alone
gives those of articles and places, and the digits that those of cases begin with.

References:
    GS1 General Specifications, 7.9 (check digits), 3.2 and 3.4.1 (article, lot), 3.2.2 (number of
    a case, SSCC), 1.4.4 (length of a prefix; from memory).
    GS1 Digital Link: URI Syntax, 4.11 (canonical addresses); vectors: tests/reference/gs1.
"""

from collections.abc import Container
from datetime import date

from ledger.errors import InputError, visible

GTIN_LENGTHS = (8, 12, 13, 14)
"""Digits that the number of an article may have."""
GTIN_DIGITS = 14
"""Digits of the number of an article, the shorter ones with noughts in front."""
GLN_DIGITS = 13
"""Digits of the number of a place or a party."""
PREFIX_LENGTHS = range(4, 13)
"""Digits that all numbers of a house begin with."""
SSCC_DIGITS = 18
"""Digits of the number of a case."""
RESOLVER = "https://id.gs1.org"
"""Where canonical addresses are."""


def check_digit(digits: str) -> int:
    """Return the check digit of digits: weights of 3 and 1, from the right.

    >>> check_digit("952123454321"), check_digit("629104150021")
    (3, 3)
    """
    total = sum(int(digit) * (3, 1)[place % 2] for place, digit in enumerate(reversed(digits)))
    return -total % 10


def read_gtin(text: str) -> str:
    """Return the number of an article with all its digits.

    Raises:
        InputError: It is none, or its check digit is wrong.

    >>> read_gtin("9521234543213")
    '09521234543213'
    """
    digits = text.strip()
    if not _is_number(digits, GTIN_LENGTHS):
        raise InputError(
            f"{visible(text)} is no number of an article.",
            "Give its 8, 12, 13 or 14 digits (GTIN).",
        )
    return _checked(digits).zfill(GTIN_DIGITS)


def read_gln(text: str) -> str:
    """Return the number of a place or a party.

    Raises:
        InputError: It is none, or its check digit is wrong.
    """
    digits = text.strip()
    if not _is_number(digits, (GLN_DIGITS,)):
        raise InputError(f"{visible(text)} is no number of a place.", "Give its 13 digits (GLN).")
    return _checked(digits)


def read_prefix(text: str) -> str:
    """Return the digits that all numbers begin with which GS1 lets a house give.

    Raises:
        InputError: They are none.
    """
    digits = text.strip()
    if not _is_number(digits, PREFIX_LENGTHS):
        raise InputError(
            f"{visible(text)} is no GS1 Company Prefix.",
            "Give the 4 to 12 digits of your licence from GS1, without a check digit.",
        )
    return digits


def case_number(prefix: str, number: int) -> str:
    """Return the number of a case (SSCC), of a house's prefix and its own number for it.

    Raises:
        InputError: The prefix leaves too few digits for so many cases.

    >>> case_number("4012345", 111)
    '040123450000001112'
    """
    # The digit before the prefix has no meaning and counts on where the others are used up.
    free = SSCC_DIGITS - 1 - len(prefix)
    own = f"{number:0{free}}"
    if len(own) > free:
        raise InputError(
            f"The prefix {prefix} leaves {free} digits for a case, and {number} has {len(own)}.",
            "Ask GS1 for a further prefix.",
        )
    digits = f"{own[0]}{prefix}{own[1:]}"
    return f"{digits}{check_digit(digits)}"


def _is_number(digits: str, lengths: Container[int]) -> bool:
    return digits.isascii() and digits.isdigit() and len(digits) in lengths


def _checked(digits: str) -> str:
    check = check_digit(digits[:-1])
    if int(digits[-1]) != check:
        raise InputError(
            f"{digits} ends in {digits[-1]}, and its check digit is {check}.",
            "Copy the number again.",
        )
    return digits


def lot_link(gtin: str, lot: str, best_before: date | None = None, *, at: str = RESOLVER) -> str:
    """Return the Digital Link of a lot of an article, with its date where one is given.

    A code of a lot has letters, digits and dashes only, so nothing is to be escaped.

    >>> lot_link("09521234543213", "BOS-001-S", date(2026, 12, 31))
    'https://id.gs1.org/01/09521234543213/10/BOS-001-S?15=261231'
    """
    dated = f"?15={best_before:%y%m%d}" if best_before else ""
    return f"{at}/{lot_path(gtin, lot)}{dated}"


def lot_path(gtin: str, lot: str) -> str:
    """Return what stands in the Digital Link of a lot after the place where addresses are.

    >>> lot_path("09521234543213", "BOS-001-S")
    '01/09521234543213/10/BOS-001-S'
    """
    return f"01/{gtin}/10/{lot}"


def case_link(sscc: str) -> str:
    """Return the Digital Link of a case."""
    return f"{RESOLVER}/00/{sscc}"


def filled_case_link(sscc: str, gtin: str, count: int, lot: str) -> str:
    """Return the Digital Link of a case with what stands in it.

    >>> filled_case_link("952012345678912345", "09520123456788", 25, "ABC123")
    'https://id.gs1.org/00/952012345678912345?02=09520123456788&37=25&10=ABC123'
    """
    return f"{case_link(sscc)}?02={gtin}&37={count}&10={lot}"


def place_link(gln: str) -> str:
    """Return the Digital Link of a place."""
    return f"{RESOLVER}/414/{gln}"


def party_link(gln: str) -> str:
    """Return the Digital Link of a party."""
    return f"{RESOLVER}/417/{gln}"
