"""Amounts of liquid, solid and things: read as makers write them, kept as whole numbers.

Guarantees: an amount read is a whole number of the smallest unit (µL, mg or a millionth of
one), converted exactly and rounded half to even once, with the text kept as it was written.
Refuses: nothing, less than nothing, what rounds to nothing, more than 10**15 of the smallest
unit, and whatever could be read in two ways. No floating-point number is used.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from msgspec import Struct

from ledger.domain.amounts.numerals import fold_text, read_number, spread_fractions
from ledger.domain.amounts.units import Measure, Unit, find_unit
from ledger.errors import InputError, RefusedError

__all__ = [
    "MOST",
    "Measure",
    "Quantity",
    "mass_from_volume",
    "parse_quantity",
    "show",
    "show_alike",
    "show_exactly",
    "volume_from_mass",
]

# Below 2**53, to which every reader of JSON reads whole numbers exactly.
MOST = 10**15
"""The largest amount the book holds, in the smallest unit of any measure."""

_PIECE = re.compile(r"([.,]?[0-9][0-9.,/ ]*)((?:[^0-9.,]|[.,](?![0-9]))*)")
_RUN_TOGETHER = re.compile(r"(\d)([^\W\d_])")
_MANY = re.compile(r"([0-9]{5,}) ?(mL|ml|g)")
_LARGE = {"ml": "L", "g": "kg"}
_NEGATIVE = re.compile(r"[-−–] ?[.,]?[0-9]")
_NAMES = {Measure.UL: "volume", Measure.MG: "mass", Measure.UEACH: "count"}
_LEAST = {Measure.UL: "1 µL", Measure.MG: "1 mg", Measure.UEACH: "0.000001 each"}
_LARGEST = {Measure.UL: "L", Measure.MG: "kg", Measure.UEACH: "each"}


class Quantity(Struct, frozen=True):
    """An amount of one measure, with the words it was written in."""

    amount: int
    """How many of the measure's smallest unit."""
    measure: Measure
    """What was measured, and so the smallest unit."""
    written: str
    """The text as the maker wrote it, white space folded."""


def parse_quantity(
    text: str, *, counted: bool = False, fluid_ounce: str = "US", may_be_nothing: bool = False
) -> Quantity:
    """Read an amount as a maker writes it.

    An amount is a number and a unit, or several such from the largest unit to the smallest,
    which are added up. The sum is rounded half to even to the smallest unit.

    Args:
        text: What was written.
        counted: Whether things are being counted, so that a bare number means each.
        fluid_ounce: Whose a bare "fl oz" is: "US" or "imperial".
        may_be_nothing: Whether zero is an amount too.

    Raises:
        InputError: The text cannot be read as one amount, or is more than the book holds.
        RefusedError: The amount is zero and may not be, is negative, or rounds to nothing.

    >>> parse_quantity("1 lb 4 oz")
    Quantity(amount=566990, measure=<Measure.MG: 'mg'>, written='1 lb 4 oz')
    >>> parse_quantity("½ fl oz", fluid_ounce="imperial").amount
    14207
    """
    written = fold_text(text)
    spread = spread_fractions(written)
    if _NEGATIVE.match(spread):
        raise _not_above_zero(written)
    if not _PIECE.match(spread):
        raise InputError(
            f'"{written}" is not an amount, because it does not begin with a number.',
            "Write a number and a unit, such as 30 mL.",
        )
    pieces = list(_pieces(spread, counted, fluid_ounce))
    _refuse_run_together([unit for _, unit in pieces], written)
    measure = pieces[0][1].measure
    exact = sum((number * unit.smallest for number, unit in pieces), Fraction(0))
    if exact == 0 and may_be_nothing:
        return Quantity(0, measure, written)
    return Quantity(_kept(exact, measure, written), measure, written)


def _pieces(spread: str, counted: bool, fluid_ounce: str) -> Iterator[tuple[Fraction, Unit]]:
    unit = None
    for match in _PIECE.finditer(spread):
        piece, word = match[0].rstrip(" ,"), match[2].strip(" ,")
        number = read_number(match[1].strip(), piece=piece)
        if not word and not counted:
            raise InputError(
                f"{piece} has no unit.", "Write the unit too, as in 30 mL, 15 g or 200 each."
            )
        unit = find_unit(word or "each", piece=piece, before=unit, fluid_ounce=fluid_ounce)
        yield number, unit


def _refuse_run_together(units: list[Unit], written: str) -> None:
    for larger, smaller in pairwise(units):
        if larger.measure is not smaller.measure:
            raise InputError(
                f"{written} mixes a {_NAMES[larger.measure]} in {larger.name} "
                f"with a {_NAMES[smaller.measure]} in {smaller.name}.",
                "Write one amount at a time.",
            )
        if larger.smallest <= smaller.smallest:
            raise InputError(
                f"{written} has {smaller.name} after {larger.name}, "
                "so it could be two amounts run together.",
                "Write one amount, with its largest unit first.",
            )


def _kept(exact: Fraction, measure: Measure, written: str) -> int:
    if exact == 0:
        raise _not_above_zero(written)
    amount = round(exact)
    if amount == 0:
        raise RefusedError(
            f"{written} rounds to nothing: the smallest {_NAMES[measure]} the book keeps "
            f"is {_LEAST[measure]}.",
            "Check the number and the unit.",
        )
    if amount > MOST:
        raise InputError(
            f"{written} is more than the book holds: at most {MOST // 10**6} {_LARGEST[measure]}.",
            "Check the number and the unit.",
        )
    return amount


def _not_above_zero(written: str) -> RefusedError:
    return RefusedError(
        f"An amount must be more than zero, and {written} is not.",
        "Write how much there really was.",
    )


def show(amount: int, measure: Measure) -> str:
    """Show an amount for people, in metric units.

    Volumes are in mL, and in L from 1000 mL. Masses are in mg below 1 g, in g, and in kg from
    1000 g; no mass at all is "0 g". All of these have at most 3 decimals, rounded half to
    even, so only amounts in L and kg can lose digits. Counts are shown exactly, without a
    unit. Trailing zeros are dropped, thousands are not parted and the minus sign is "-".

    >>> show(500, Measure.UL), show(3_785_412, Measure.UL), show(15_000_000, Measure.UEACH)
    ('0.5 mL', '3.785 L', '15')
    """
    if measure is Measure.UEACH:
        return _decimal(amount, 10**6, 6)
    small, large = ("mL", "L") if measure is Measure.UL else ("g", "kg")
    if abs(amount) >= 10**6:
        return f"{_decimal(amount, 10**6, 3)} {large}"
    if measure is Measure.MG and 0 < abs(amount) < 10**3:
        return f"{amount} mg"
    return f"{_decimal(amount, 10**3, 3)} {small}"


def show_exactly(amount: int, measure: Measure) -> str:
    """Show an amount for people to the last digit, as what is typed back has to be.

    As `show`, and in mL or g where L or kg would lose digits.

    >>> show_exactly(1_000_600, Measure.UL), show_exactly(2_060_000, Measure.UL)
    ('1000.6 mL', '2.06 L')
    """
    if measure is Measure.UEACH or abs(amount) < 10**6 or amount % 10**3 == 0:
        return show(amount, measure)
    return f"{_decimal(amount, 10**3, 3)} {'mL' if measure is Measure.UL else 'g'}"


def show_alike(measure: Measure, *amounts: int) -> tuple[str, ...]:
    """Show amounts for people to the last digit, beside each other.

    As `show_exactly`, and all from a litre or a kilogram up in mL or g where one of them is.

    >>> show_alike(Measure.UL, 3_747_000, 3_746_512), show_alike(Measure.UL, 2_000_000, 470_000)
    (('3747 mL', '3746.512 mL'), ('2 L', '470 mL'))
    """
    large = [amount for amount in amounts if abs(amount) >= 10**6]
    if measure is Measure.UEACH or all(amount % 10**3 == 0 for amount in large):
        return tuple(show(amount, measure) for amount in amounts)
    unit = "mL" if measure is Measure.UL else "g"
    return tuple(
        f"{_decimal(amount, 10**3, 3)} {unit}" if amount in large else show(amount, measure)
        for amount in amounts
    )


def show_apart(measure: Measure, *amounts: int) -> tuple[str, ...]:
    """Show amounts for people so that no two that differ look the same.

    As `show`, and with all their digits where rounding would hide a difference.

    >>> show_apart(Measure.UL, 2_100_400, 2_000_000), show_apart(Measure.UL, 2_100_400, 2_100_000)
    (('2.1 L', '2 L'), ('2.1004 L', '2.1 L'))
    """
    shown = tuple(show(amount, measure) for amount in amounts)
    if len(set(shown)) == len(set(amounts)):
        return shown
    unit = "L" if measure is Measure.UL else "kg"
    return tuple(
        f"{_decimal(amount, 10**6, 6)} {unit}" if abs(amount) >= 10**6 else told
        for amount, told in zip(amounts, shown, strict=True)
    )


def _decimal(amount: int, divisor: int, places: int) -> str:
    scaled = round(Fraction(amount * 10**places, divisor))
    whole, rest = divmod(abs(scaled), 10**places)
    decimals = f"{rest:0{places}d}".rstrip("0")
    return f"{'-' if scaled < 0 else ''}{whole}{'.' if decimals else ''}{decimals}"


def tidy(written: str) -> str:
    """Return an amount as it was written, with a space between number and unit.

    Thousands of a small unit that nobody can count at a glance are told in the large one.

    >>> tidy("250mL"), tidy("1 1/2 fl oz"), tidy("4000000 mL"), tidy("12345 g")
    ('250 mL', '1 1/2 fl oz', '4000 L', '12.345 kg')
    """
    many = _MANY.fullmatch(written)
    if many:
        return f"{_decimal(int(many[1]), 10**3, 3)} {_LARGE[many[2].lower()]}"
    return _RUN_TOGETHER.sub(r"\1 \2", written)


def mass_from_volume(volume_ul: int, density_mg_per_l: int) -> int:
    """Compute the mass in mg of a volume in µL, rounded half to even.

    Raises:
        RefusedError: The density is not above zero.

    >>> mass_from_volume(30_000, 842_000)
    25260
    """
    _refuse_density(density_mg_per_l)
    return round(Fraction(volume_ul * density_mg_per_l, 10**6))


def volume_from_mass(mass_mg: int, density_mg_per_l: int) -> int:
    """Compute the volume in µL of a mass in mg, rounded half to even.

    Raises:
        RefusedError: The density is not above zero.

    >>> volume_from_mass(25_260, 842_000)
    30000
    """
    _refuse_density(density_mg_per_l)
    return round(Fraction(mass_mg * 10**6, density_mg_per_l))


def _refuse_density(density_mg_per_l: int) -> None:
    if density_mg_per_l <= 0:
        raise RefusedError(
            f"A density must be more than zero, and {density_mg_per_l} mg/L is not.",
            "Enter the density on the certificate, or measure it.",
        )


def reckoned(amount: int) -> int:
    """Return an amount that was reckoned and not measured, as it is told: to three digits.

    >>> reckoned(3_746_512), reckoned(969_606), reckoned(12)
    (3750000, 970000, 12)
    """
    return round(amount, min(3 - len(str(abs(amount))), 0))
