"""Nutrition as it is declared on a label: rounded, and in the order of the law.

Guarantees: halves are rounded up; what is so little that it may be called nothing is called so, or
less than the least, as the rule has it. Refuses: to say whether a product needs a declaration.

References:
    European Commission, Guidance document for competent authorities ... with regard to the setting
    of tolerances for nutrient values declared on a label, December 2012, table 4.
    Regulation (EU) No 1169/2011, Annex XV: the order of the lines.
    21 CFR 101.9(c): calories (1), fat (2), sodium (4), carbohydrate and sugars (6); protein (7)
    is from memory, the rest was read (nutrition.csv).
"""

from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal

from msgspec import Struct

from ledger.science.contents.nutrition import Nutrition

FEW_KCAL, MIDDLE_KCAL = 5, 50
"""Below the one calories are 0; up to the other they are rounded to 5, above it to 10."""


class Line(Struct, frozen=True):
    """A line of a declaration."""

    name: str
    """What is declared."""
    amount: str
    """How much, with its unit, rounded."""


def eu_lines(of: Nutrition) -> tuple[Line, ...]:
    """Return the declaration for the European Union, of so much as is given.

    >>> [line.amount for line in eu_lines(Nutrition(carbohydrate=85, sugars=85))][:4]
    ['1445 kJ / 340 kcal', '0 g', '0 g', '85 g']
    """
    return (
        Line("energy", f"{nearest(of.kj)} kJ / {nearest(of.kcal)} kcal"),
        Line("fat", eu_gram(of.fat)),
        Line("of which saturates", eu_gram(of.saturates, nothing=0.1)),
        Line("carbohydrate", eu_gram(of.carbohydrate)),
        Line("of which sugars", eu_gram(of.sugars)),
        Line("protein", eu_gram(of.protein)),
        Line("salt", eu_salt(of.salt)),
    )


def us_lines(of: Nutrition, added_sugars: float | None = None) -> tuple[Line, ...]:
    """Return the lines of a panel for the United States, of so much as a serving holds.

    Args:
        of: What the serving holds.
        added_sugars: The sugars that were added, in g; None: all of them.
    """
    added = of.sugars if added_sugars is None else added_sugars
    return (
        Line("calories", us_calories(of.kcal)),
        Line("total fat", us_fat(of.fat)),
        Line("sodium", us_sodium(1000 * of.sodium)),
        Line("total carbohydrate", us_gram(of.carbohydrate + of.fibre)),
        Line("total sugars", us_gram(of.sugars)),
        Line("includes added sugars", us_gram(added)),
        Line("protein", us_gram(of.protein)),
    )


def nearest(value: float, step: str = "1") -> str:
    """Return a value rounded to the nearest step, halves up.

    >>> nearest(2.5), nearest(0.125, "0.01"), nearest(1234.4, "10")
    ('3', '0.13', '1230')
    """
    # By its shortest decimal text, so that 2.675 is the half that it was meant to be.
    size = Decimal(step)
    steps = (Decimal(repr(value)) / size).quantize(Decimal(1), ROUND_HALF_UP)
    return format(steps * size, "f")


def eu_gram(gram: float, nothing: float = 0.5) -> str:
    """Return grams of fat, carbohydrate, sugars, protein or, with 0.1, of saturates.

    >>> eu_gram(10.4), eu_gram(9.96), eu_gram(0.51), eu_gram(0.5), eu_gram(0)
    ('10 g', '10.0 g', '0.5 g', '<0.5 g', '0 g')
    """
    if gram <= nothing:
        return f"<{nothing} g" if gram else "0 g"
    return f"{nearest(gram)} g" if gram >= 10 else f"{nearest(gram, '0.1')} g"


def eu_salt(gram: float) -> str:
    """Return grams of salt.

    >>> eu_salt(1.24), eu_salt(0.014), eu_salt(0.0125), eu_salt(0)
    ('1.2 g', '0.01 g', '<0.01 g', '0 g')
    """
    if gram <= 0.0125:
        return "<0.01 g" if gram else "0 g"
    return f"{nearest(gram, '0.1')} g" if gram >= 1 else f"{nearest(gram, '0.01')} g"


def us_calories(kcal: float) -> str:
    """Return calories.

    >>> us_calories(4.9), us_calories(48), us_calories(52), us_calories(156)
    ('0', '50', '50', '160')
    """
    if kcal < FEW_KCAL:
        return "0"
    return nearest(kcal, "5" if kcal <= MIDDLE_KCAL else "10")


def us_gram(gram: float) -> str:
    """Return grams of carbohydrate, sugars or protein.

    >>> us_gram(0.49), us_gram(0.5), us_gram(39.4)
    ('0 g', 'less than 1 g', '39 g')
    """
    return _from(gram, 0.5, lambda: "less than 1 g" if gram < 1 else f"{nearest(gram)} g")


def us_fat(gram: float) -> str:
    """Return grams of fat.

    >>> us_fat(0.4), us_fat(2.3), us_fat(5.4)
    ('0 g', '2.5 g', '5 g')
    """
    return _from(gram, 0.5, lambda: f"{nearest(gram, '0.5' if gram < 5 else '1')} g")


def us_sodium(milligram: float) -> str:
    """Return milligrams of sodium.

    >>> us_sodium(4.9), us_sodium(57), us_sodium(146)
    ('0 mg', '55 mg', '150 mg')
    """
    return _from(
        milligram, 5, lambda: f"{nearest(milligram, '5' if milligram <= 140 else '10')} mg", "mg"
    )


def _from(value: float, least: float, words: Callable[[], str], unit: str = "g") -> str:
    return words() if value >= least else f"0 {unit}"
