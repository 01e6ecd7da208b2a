"""The units a maker may write, each an exact number of the book's smallest units.

Guarantees: factors are exact fractions, and a unit's name leads to one unit only. Refuses,
with the choices to write: names that mean two things (oz, gal, qt, pt, gr, Mg), drops, and
names that are not known.

Case is ignored ("ML" and "ml" are mL, as labels print them) save for "Mg", which is the
megagram of science as often as a slip for mg. Spaces and full stops within a name are ignored.

References:
    NIST Handbook 44, Appendix C: the US gallon is 231 cubic inches of 25.4 mm; the pound
    is 453.59237 g. Units of Measurement Regulations 1995 (UK): the gallon is 4.54609 litres.
"""

from difflib import get_close_matches
from enum import StrEnum
from fractions import Fraction

from msgspec import Struct

from ledger.errors import InputError


class Measure(StrEnum):
    """What is measured, named by the smallest unit in which the book counts it."""

    UL = "uL"
    """Volume, in microlitres."""
    MG = "mg"
    """Mass, in milligrams."""
    UEACH = "ueach"
    """Things counted, in millionths of one."""


class Unit(Struct, frozen=True):
    """A unit in which an amount may be written."""

    name: str
    """The name as the book prints it, such as "US fl oz"."""
    measure: Measure
    """What it measures."""
    smallest: Fraction
    """How many of the measure's smallest unit one of it is, exactly."""
    system: str = ""
    """Whose unit it is: "US", "imp" or "av"; empty for metric units and for things counted."""


def _gallons(system: str, gallon_ul: Fraction, ounces: int) -> tuple[Unit, ...]:
    parts = {"fl oz": ounces, "pt": 8, "qt": 4, "gal": 1}
    return tuple(
        Unit(f"{system} {name}", Measure.UL, gallon_ul / part, system)
        for name, part in parts.items()
    )


_POUND_MG = Fraction("453592.37")

UNITS: tuple[Unit, ...] = (
    Unit("µL", Measure.UL, Fraction(1)),
    Unit("mL", Measure.UL, Fraction(10**3)),
    Unit("cL", Measure.UL, Fraction(10**4)),
    Unit("dL", Measure.UL, Fraction(10**5)),
    Unit("L", Measure.UL, Fraction(10**6)),
    *_gallons("US", Fraction("3785411.784"), 128),
    *_gallons("imp", Fraction(4_546_090), 160),
    Unit("mg", Measure.MG, Fraction(1)),
    Unit("g", Measure.MG, Fraction(10**3)),
    Unit("kg", Measure.MG, Fraction(10**6)),
    Unit("oz av", Measure.MG, _POUND_MG / 16, "av"),
    Unit("lb", Measure.MG, _POUND_MG, "av"),
    Unit("each", Measure.UEACH, Fraction(10**6)),
)
"""Every unit the book knows, smallest first within a family."""

_SPELLINGS = {
    "µL": "uL|microlitre|microlitres|microliter|microliters",
    "mL": "mLs|millilitre|millilitres|milliliter|milliliters",
    "cL": "centilitre|centilitres|centiliter|centiliters",
    "dL": "decilitre|decilitres|deciliter|deciliters",
    "L": "ltr|ltrs|litre|litres|liter|liters",
    "mg": "milligram|milligrams",
    "g": "gram|grams",
    "kg": "kgs|kilo|kilos|kilogram|kilograms",
    "oz av": "av oz|oz wt|oz avoirdupois|avoirdupois oz",
    "lb": "lbs|pound|pounds",
    "each": "ea|pc|pcs|piece|pieces",
}
_BARE = {
    "gal": "gals|gallon|gallons",
    "qt": "qts|quart|quarts",
    "pt": "pts|pint|pints",
    "fl oz": "fluid oz|fluid ounce|fluid ounces",
    "oz": "ounce|ounces",
}
_SYSTEMS = {"US": ("us",), "imp": ("imp", "imperial", "uk")}
_FLUID_OUNCES = {"US": "US", "imperial": "imp"}
_TWO_MEANINGS = {
    "oz": ("could be a volume or a weight", "US fl oz, imp fl oz or oz av"),
    "gal": ("could be US or imperial, and the imperial is a fifth larger", "US gal or imp gal"),
    "qt": ("could be US or imperial, and the imperial is a fifth larger", "US qt or imp qt"),
    "pt": ("could be US or imperial, and the imperial is a fifth larger", "US pt or imp pt"),
    "gr": ("could be in grams or in grains", "g or mg"),
    "Mg": ("could be in milligrams or in megagrams", "mg or kg"),
}


def _key(word: str) -> str:
    return word.casefold().replace(" ", "").replace(".", "")


def _spelled(spellings: dict[str, str]) -> dict[str, str]:
    return {
        _key(word): name
        for name, others in spellings.items()
        for word in (name, *others.split("|"))
    }


_BARE_BY_KEY = _spelled(_BARE)


def _units_by_key() -> dict[str, Unit]:
    named = {unit.name: unit for unit in UNITS}
    units = {_key(name): unit for name, unit in named.items()}
    units |= {key: named[name] for key, name in _spelled(_SPELLINGS).items()}
    for system, prefixes in _SYSTEMS.items():
        for key, bare in _BARE_BY_KEY.items():
            if bare != "oz":
                unit = named[f"{system} {bare}"]
                # Whose it is may stand on either side: US gal, gal US.
                units |= {both: unit for p in prefixes for both in (p + key, key + p)}
    return units


_UNIT_BY_KEY = _units_by_key()
_GUESSES = {key: unit.name for key, unit in _UNIT_BY_KEY.items()} | {
    key: _TWO_MEANINGS[bare][1] if bare in _TWO_MEANINGS else bare
    for key, bare in _BARE_BY_KEY.items()
}


def find_unit(
    word: str, *, piece: str, before: Unit | None = None, fluid_ounce: str = "US"
) -> Unit:
    """Find the unit a maker wrote.

    A bare "oz", "gal", "qt", "pt" or "fl oz" that follows a unit of a named system belongs
    to that system: in "1 lb 4 oz" the ounces are mass, in "1 imp gal 2 pt" the pints are
    imperial.

    Args:
        word: The unit as written.
        piece: Number and unit as written, to be quoted in errors.
        before: The unit before this one in the same amount, if any.
        fluid_ounce: Whose a bare "fl oz" is otherwise: "US" or "imperial".

    Raises:
        InputError: The word means two things, is a drop, or is not known; or ``fluid_ounce``
            is neither "US" nor "imperial".

    >>> find_unit("fl. oz.", piece="8 fl. oz.", fluid_ounce="imperial").name
    'imp fl oz'
    """
    if fluid_ounce not in _FLUID_OUNCES:
        raise InputError(
            f'The fluid ounce of the house must be US or imperial, and "{fluid_ounce}" is neither.',
            "Choose US or imperial.",
        )
    key = _key(word)
    if key in _UNIT_BY_KEY and word != "Mg":
        return _UNIT_BY_KEY[key]
    bare = _BARE_BY_KEY.get(key, "")
    name = _in_system(bare, before.system if before else "", _FLUID_OUNCES[fluid_ounce])
    if name:
        return _UNIT_BY_KEY[_key(name)]
    raise _not_a_unit(word, piece, bare or ("Mg" if word == "Mg" else key))


def _in_system(bare: str, system: str, fluid_ounce: str) -> str:
    if system == "av" and bare == "oz":
        return "oz av"
    if system in _SYSTEMS and bare:
        return f"{system} {'fl oz' if bare == 'oz' else bare}"
    return f"{fluid_ounce} fl oz" if bare == "fl oz" else ""


def _not_a_unit(word: str, piece: str, name: str) -> InputError:
    if name in _TWO_MEANINGS:
        why, choices = _TWO_MEANINGS[name]
        return InputError(f"{piece} {why}.", f"Write {choices}.")
    if name in {"drop", "drops"}:
        return InputError(
            f"{piece} is not an amount the book keeps: drops differ by half between droppers, "
            "from 20 to 40 in a millilitre.",
            "Weigh it in mg or g, or measure it in mL.",
        )
    close = get_close_matches(name, _GUESSES, n=1, cutoff=0.75)
    guess = f"Did you mean {_GUESSES[close[0]]}? " if close else ""
    return InputError(
        f'"{word}" in {piece} is not a unit the book knows; it knows '
        f"{', '.join(unit.name for unit in UNITS[:-1])} and {UNITS[-1].name}.",
        f"{guess}Write the amount again with one of these.",
    )
