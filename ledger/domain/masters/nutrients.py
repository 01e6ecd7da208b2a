"""What 100 g of a material hold of each nutrient, as its papers list it.

Guarantees: written once in one order, in g for 100 g, so that the same facts are the same text; all
that is wrong is told at once. Refuses: a nutrient it does not know, and more than there is.
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import partial

from ledger.domain.amounts.scaled import read_scaled
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together

NUTRIENTS = (
    "fat",
    "saturates",
    "carbohydrate",
    "sugars",
    "polyols",
    "fibre",
    "protein",
    "organic-acid",
    "sodium",
)
"""The nutrients, in the order of Regulation (EU) 1169/2011, Annex XV, then what brings energy
besides, and the sodium that salt is reckoned of; alcohol is reckoned of the strength."""
WHOLES = ("fat", "carbohydrate", "fibre", "protein", "organic-acid", "sodium")
"""Those that are no part of another."""
PARTS = (("saturates", "fat"), ("sugars", "carbohydrate"), ("polyols", "carbohydrate"))
"""Those that are part of another."""
HOW = f"Write each as NAME GRAMS in 100 g, with ; between them: {', '.join(NUTRIENTS)}."
"""How nutrients are written."""
NONE = "none"
"""What is written where nothing of any of them is in a material."""
_ITEM = re.compile(r"([a-z][a-z -]*?)\s*:?\s+([0-9]+(?:[.,][0-9]+)?)\s*g?")


def read_nutrients(text: str) -> str:
    """Return what 100 g hold, in the one way it is kept.

    Raises:
        InputError: A nutrient is not known, or has no number of grams.
        RefusedError: There is more than 100 g, or more of a part than of its whole.

    >>> read_nutrients("Sugars 78; carbohydrate: 82 g; salt 1")
    'carbohydrate 82; sugars 78; sodium 0.4'
    """
    if text.strip().lower() == NONE:
        return NONE
    errors: list[LedgerError] = []
    grams: dict[str, Fraction] = {}
    for piece in filter(str.strip, re.split(r"[;\n\r]", text)):
        found = attempt(errors, partial(_item, piece), None)
        if found:
            name, gram = found
            if name in grams:
                errors.append(InputError(f"{name} is told more than once.", "Write it once."))
            grams[name] = gram
    if not errors:
        errors += _impossible(grams)
    if errors:
        raise together(errors)
    return "; ".join(f"{name} {_plain(grams[name])}" for name in NUTRIENTS if name in grams)


def nutrients(text: str) -> Mapping[str, float]:
    """Return the mass fraction of each nutrient, of a text as it is kept.

    >>> nutrients("carbohydrate 82; sugars 78")
    {'carbohydrate': 0.82, 'sugars': 0.78}
    """
    if text == NONE:
        return {}
    pairs = (item.rsplit(" ", 1) for item in text.split("; "))
    return {name: float(Fraction(gram) / 100) for name, gram in pairs}


def _item(piece: str) -> tuple[str, Fraction]:
    match = _ITEM.fullmatch(piece.strip().lower())
    if match is None:
        raise InputError(f'"{piece.strip()}" is not a nutrient with its grams.', HOW)
    name = "-".join(match[1].split())
    # Salt is sodium times 2.5 (Regulation (EU) 1169/2011, Annex I, 11).
    factor = Fraction(2, 5) if name == "salt" else Fraction(1)
    name = "sodium" if name == "salt" else name
    if name not in NUTRIENTS:
        raise InputError(f'"{match[1]}" is not a nutrient.', HOW)
    return name, Fraction(read_scaled(match[2], 10_000, "", "number of grams"), 10_000) * factor


def _impossible(grams: Mapping[str, Fraction]) -> list[LedgerError]:
    nothing = Fraction(0)
    whole = sum((grams.get(name, nothing) for name in WHOLES), nothing)
    errors: list[LedgerError] = []
    if not grams:
        errors.append(InputError("No nutrient is told.", f'{HOW} Write "{NONE}" for none at all.'))
    if whole > 100:
        errors.append(
            RefusedError(
                f"The nutrients in 100 g weigh {_plain(whole)} g together.",
                "Read its papers again: they are g in 100 g.",
            )
        )
    errors += [
        RefusedError(
            f"{_plain(grams[part])} g of {part} cannot be in "
            f"{_plain(grams.get(of, nothing))} g of {of}.",
            f"Write how much {of} there is in all, its {part} among it.",
        )
        for part, of in PARTS
        if grams.get(part, nothing) > grams.get(of, nothing)
    ]
    return errors


def _plain(gram: Fraction) -> str:
    return f"{float(gram):.6f}".rstrip("0").rstrip(".")
