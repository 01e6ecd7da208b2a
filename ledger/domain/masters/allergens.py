"""Allergens that a label must name, found in the words of a material's own facts.

Guarantees: whole words alone count, so that nutmeg is no nut; what is told and is on no list is
told as it is written. Refuses: to find an allergen in what a material is called; its papers decide.
"""

import re
from collections.abc import Iterable
from enum import StrEnum

from msgspec import Struct

from ledger.errors import InputError

NONE_TOLD = frozenset({"none", "no", "none known", "none declared", "-"})
"""How papers say that there is none."""


def read_allergens(text: str) -> str:
    """Return the words that tell a material's allergens, as they are kept.

    Raises:
        InputError: They say both that there is none and something else.

    >>> read_allergens("none"), read_allergens("milk, soya")
    ('none', 'milk, soya')
    """
    told = text.strip().lower()
    if told not in NONE_TOLD and re.match(r"(none|no)\b", told):
        raise InputError(
            f'"{text.strip()}" does not say whether there are allergens.',
            'Say "none", or name them: "milk, soya".',
        )
    return text


class Place(StrEnum):
    """Whose rules a list of ingredients follows."""

    EU = "EU"
    UK = "UK"
    US = "US"


EU_MEMBERS = frozenset({
    "AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU",
    "IE", "IT", "LT", "LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK",
})  # fmt: skip
"""ISO 3166 codes of the members of the European Union (2020 on, from memory)."""


def place_of(country: str | None) -> Place | None:
    """Return whose rules hold in a country; None where none are kept here.

    >>> place_of("IE"), place_of("gb"), place_of("CA")
    (<Place.EU: 'EU'>, <Place.UK: 'UK'>, None)
    """
    code = (country or "").strip().upper()
    if code in EU_MEMBERS or code == "EU":
        return Place.EU
    return {"GB": Place.UK, "UK": Place.UK, "US": Place.US}.get(code)


class Allergen(Struct, frozen=True):
    """An allergen of the lists."""

    name: str
    """How a label names it."""
    words: tuple[str, ...]
    """Words by which it is recognised."""
    places: tuple[Place, ...]
    """Where it must be named."""


def named_in(text: str, known: Iterable[Allergen], place: Place) -> tuple[str, ...]:
    """Return the allergens of a place whose words stand in a text, by their names."""
    words = set(re.findall(r"\w+", text.lower()))
    return tuple(item.name for item in known if place in item.places and words & set(item.words))


def allergens_in(text: str | None, known: Iterable[Allergen], place: Place) -> tuple[str, ...]:
    """Return the allergens that a material's facts tell of, as a label of a place names them.

    Args:
        text: The words that were recorded, with commas or semicolons between; None: nothing.
        known: The lists.
        place: Whose list counts.
    """
    if text is None or text.strip().lower() in NONE_TOLD:
        return ()
    found: dict[str, None] = {}
    counting = [item for item in known if place in item.places]
    for piece in filter(str.strip, re.split(r"[;,\n]", text)):
        words = set(re.findall(r"\w+", piece.lower()))
        names = [item.name for item in counting if words & set(item.words)]
        # Told but on no list of this place: it is not hidden either.
        found |= dict.fromkeys(names or [piece.strip().lower()])
    return tuple(found)
