"""Reading strengths and temperatures as makers write them, and a whole dilution.

Guarantees: a strength comes back in % vol at 20 °C, a temperature in °C; all that is wrong with
the words of a dilution is told at once. Refuses: to guess what an unknown unit means.
"""

import re
from collections.abc import Callable

from ledger.domain.amounts.quantity import Measure, Quantity, parse_quantity
from ledger.errors import InputError, LedgerError, attempt, together
from ledger.science.liquids.alcohol import (
    abv_from_grams_per_100ml,
    abv_from_mass_percent,
    abv_from_us_proof,
    check_strength,
    check_temperature,
)
from ledger.science.liquids.dilution import Dilution, check_amount, dilute

LONGEST_SHOWN = 40
"""How many characters of what cannot be read are quoted."""

_NUMBER = re.compile(r"([-−+]?)([0-9]{0,9}(?:[.,][0-9]{1,9})?)(?![0-9.,]) ?(.*)")
_STRENGTHS: dict[str, Callable[[float], float]] = {
    "|%|%vol|vol%|%v/v|%abv|abv|percent|percentvol": check_strength,
    "%mass|%bymass|%w/w|%m/m|%wt": abv_from_mass_percent,
    "%w/v|g/100ml": abv_from_grams_per_100ml,
    "proof|usproof": abv_from_us_proof,
}
_BY_UNIT = {unit: reader for units, reader in _STRENGTHS.items() for unit in units.split("|")}


def parse_strength(text: str, what: str = "strength") -> float:
    """Read a strength and return it in % vol at 20 °C, not rounded.

    Args:
        text: "96.3", "96.3%", "96.3 % vol", "94 % w/w", "31.57 g/100 mL" or "190 proof" (US).
        what: What it is the strength of, for the sentence.

    Raises:
        InputError: It cannot be read.
        RefusedError: No mixture of ethanol and water is that strong.

    >>> parse_strength("96,3 %"), round(parse_strength("100 proof"), 2)
    (96.3, 50.06)
    """
    number, unit = split_number(text)
    reader = _BY_UNIT.get(unit)
    if number is None or reader is None:
        raise InputError(
            f"{quoted(text)} is not a {what}.",
            "Write % vol at 20 °C, such as 96.3%; or % w/w, g/100 mL or proof (US).",
        )
    return reader(number)


def parse_temperature(text: str) -> float:
    """Read a temperature and return it in °C, not rounded; a bare number is °C.

    Raises:
        InputError: It cannot be read.

    >>> parse_temperature("25 °C"), parse_temperature("68F"), parse_temperature("−5")
    (25.0, 20.0, -5.0)
    """
    number, unit = split_number(text)
    unit = unit.lstrip("°º").removeprefix("deg")
    if number is None or unit not in ("", "c", "f"):
        raise InputError(
            f"{quoted(text)} is not a temperature.", "Write it in °C or °F, such as 25C or 77F."
        )
    return (number - 32) / 1.8 if unit == "f" else number


def dilution_asked(stock: str, target: str, amount: str, temp: str | None = None) -> Dilution:
    """Return the dilution that four texts ask for.

    Args:
        stock: Strength of the spirit.
        target: Strength wanted.
        amount: How much is wanted, a volume at 20 °C or a mass.
        temp: Temperature of the liquids when they are measured, or None for 20 °C.

    Raises:
        InputError: One or more cannot be read.
        RefusedError: One or more cannot be true, or the dilution cannot be made.
    """
    errors: list[LedgerError] = []
    strong = attempt(errors, lambda: parse_strength(stock, "strength of the spirit"), 0.0)
    wanted = attempt(errors, lambda: parse_strength(target, "strength to dilute to"), 0.0)
    final = attempt(errors, lambda: check_amount(read_amount(amount)), Quantity(1, Measure.UL, ""))
    temp_c = attempt(
        errors, lambda: check_temperature(parse_temperature(temp)) if temp else None, None
    )
    if errors:
        raise together(errors)
    return dilute(strong, wanted, final, temp_c)


def read_amount(text: str) -> Quantity:
    """Return an amount as it is written, with whose fluid ounces are meant.

    Raises:
        InputError: It cannot be read, or could be two.
    """
    amount = parse_quantity(text, fluid_ounce="US")
    if parse_quantity(text, fluid_ounce="imperial") != amount:
        raise InputError(
            f"{amount.written} could be in US or imperial fluid ounces.",
            "Write US fl oz or imp fl oz.",
        )
    return amount


def split_number(text: str) -> tuple[float | None, str]:
    """Return the number that a text begins with, or None, and its unit without blanks or capitals.

    >>> split_number("66,7 °Bx")
    (66.7, '°bx')
    """
    match = _NUMBER.fullmatch(" ".join(text.split()))
    if not match or not match[2]:
        return None, ""
    sign = "-" if match[1] in ("-", "−") else ""
    return float(sign + match[2].replace(",", ".")), re.sub(r"[ .]", "", match[3]).casefold()


def quoted(text: str) -> str:
    """Return what cannot be read between quotation marks, printable and not too long."""
    shown = "".join(letter if letter.isprintable() else "?" for letter in text)
    return f'"{shown[:LONGEST_SHOWN]}{"…" if len(shown) > LONGEST_SHOWN else ""}"'
