"""What the words of headings mean: materials, units, and the names that things get from words.

Guarantees: accents, capitals and signs do not matter; what no list knows means nothing.
"""

import re
import tomllib
import unicodedata
from functools import cache
from importlib.resources import files
from typing import Any

_LETTERS = re.compile(r"[^a-z0-9%]+")
_AMOUNT = re.compile(r"([-+−]?\d[\d.,]*)\s*([^\W\d]+)\.?")
_SHORT = re.compile(r"[A-Za-z0-9-]+")
_WHOLE = str.maketrans(
    {"ß": "ss", "ø": "o", "ł": "l", "æ": "ae", "œ": "oe", "đ": "d", "€": " eur "}
)
"""Letters that are no accented ones, and the sign of a currency, as headings are compared."""
KINDS = {"spirit": "ethanol", "carbonate": "clarifier", "essence": "other"}
"""The kinds of what headings are about, where the book has another word for them."""
LONGEST_NAME = 30
"""The most characters of the short name of a material."""


@cache
def known_words() -> dict[str, dict[str, Any]]:
    """Return the lists of words, by what they mean."""
    text = files("ledger").joinpath("headings.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def short_name(name: str) -> str:
    """Return the short name that a material may have in the book.

    >>> short_name("Orangenöl, süß")
    'orangenol-suss'
    """
    return (
        plain_words(name, with_unit=True).replace("%", "").strip().replace(" ", "-") or "material"
    )


def kind_of(name: str) -> str:
    """Return of what kind a material seems; "KIND" where nothing says so.

    >>> kind_of("Orangenöl"), kind_of("Alcohol 96"), kind_of("Botella 250"), kind_of("Stein")
    ('oil', 'ethanol', 'bottle', 'KIND')
    """
    parts = plain_words(name, with_unit=True).split()
    lists = {**known_words()["input"], **known_words()["goods"]}
    whole = (each for each, told in lists.items() if any(part in told for part in parts))
    # German writes the two as one word.
    ending = (
        each
        for each, told in lists.items()
        if any(part.endswith(word) for part in parts for word in told)
    )
    found = next(whole, None) or next(ending, None)
    return str(KINDS.get(found, found)) if found else "KIND"


def input_of(head: str) -> str | None:
    """Return the material that a heading is about, if it says an amount of one or its lot.

    >>> input_of("Öl ml"), input_of("Sprit-Los"), input_of("Essence"), input_of("Kunde")
    ('oil', 'spirit', None, None)
    """
    parts = plain_words(head, with_unit=True).split()
    words = known_words()
    rest = {*words["units"]["words"], *words["lot"]["words"], *words["column"]["cost"]}
    if not rest & set(parts):
        return None
    for material, told in known_words()["input"].items():
        if any(part in told for part in parts):
            return str(material)
    return None


def plain_words(head: str, *, with_unit: bool = False) -> str:
    """Return a heading without accents, capitals, signs, and without its unit.

    >>> plain_words("Öl (ml)"), plain_words("Öl ml", with_unit=True), plain_words("N° lot")
    ('ol', 'ol ml', 'n lot')
    >>> plain_words("Mængde (g)"), plain_words("Før filter"), plain_words("mL")
    ('maengde', 'for filter', 'ml')
    """
    apart = unicodedata.normalize("NFKD", head.casefold().translate(_WHOLE))
    bare = "".join(letter for letter in apart if not unicodedata.combining(letter))
    parts = _LETTERS.sub(" ", bare.replace("μ", "u")).split()
    units = known_words()["units"]["words"]
    if not with_unit and len(parts) > 1 and parts[-1] in units:
        parts = parts[:-1]
    return " ".join(parts)


def templated(head: str) -> str:
    """Return the template of a column, with the unit that its heading names.

    >>> templated("Öl (ml)"), templated("Menge")
    ('{Öl (ml)} mL', '{Menge}')
    """
    unit = plain_words(head, with_unit=True).split()[-1:]
    known = {"ml": "mL", "cl": "cL", "l": "L", "g": "g", "kg": "kg", "mg": "mg", "min": "min"}
    has_more = len(plain_words(head, with_unit=True).split()) > 1
    return (
        f"{{{head}}} {known[unit[0]]}" if has_more and unit and unit[0] in known else f"{{{head}}}"
    )


def plain_unit(amount: str) -> str:
    """Return an amount with its unit as the book writes it, where a list knows its word.

    >>> plain_unit("200 Stk."), plain_unit("2 litros"), plain_unit("12 x 250 mL")
    ('200 each', '2 L', '12 x 250 mL')
    """
    told = _AMOUNT.fullmatch(amount)
    word = plain_words(told[2], with_unit=True) if told else ""
    known = known_words()["unit_words"].items()
    unit = next((each for each, words in known if word in words), None)
    return f"{told[1]} {unit}" if told and unit else amount


MOST_POINTS = 5
"""A text with more points is taken for a key of many parts by who reads a map."""


def is_plain(text: str) -> bool:
    """Return whether a heading or a cell can stand between quotes, and as a column of a map.

    >>> is_plain("Öl (ml)"), is_plain('the "fine" one'), is_plain("{x}"), is_plain("")
    (True, False, False, False)
    """
    is_short = text.count(".") <= MOST_POINTS
    return bool(text) and is_short and text.isprintable() and not set(text) & set('{}"\\')


def quoted(name: str) -> str:
    """Return a name as the key of a table in TOML.

    >>> quoted("Chargen"), quoted("Chargen 2026")
    ('Chargen', '"Chargen 2026"')
    """
    if re.fullmatch(r"[A-Za-z0-9_-]+", name):
        return name
    return f'"{name}"' if is_plain(name) else "table"


def kept_code(text: str) -> str:
    """Return a maker's own code in the letters that codes have; one that has them stays as it is.

    >>> kept_code("OR 23/01"), kept_code("Öl-7"), kept_code("orange-oil"), kept_code("?")
    ('OR-23-01', 'Ol-7', 'orange-oil', '?')
    """
    apart = unicodedata.normalize("NFKD", text)
    plain = "".join(letter for letter in apart if not unicodedata.combining(letter))
    return re.sub(r"[^A-Za-z0-9]+", "-", plain).strip("-") or text


def kept_name(text: str) -> str:
    """Return the short name of a material by what a maker calls it; a short one stays as it is.

    >>> kept_name("Aceite de naranja"), kept_name("Orange-oil"), kept_name("Öl (süß) 96 %")
    ('aceite-de-naranja', 'Orange-oil', 'ol-suss-96')
    """
    if _SHORT.fullmatch(text):
        return text
    return short_name(text)[:LONGEST_NAME].strip("-")
