"""Reckoned figures as people read them: rounded once, here, to what they are worth.

Guarantees: three figures for masses and volumes, two decimals for strengths. Refuses: to show a
figure as nought that is not.
"""

from ledger.science.ranges import significant


def abv_words(abv: float) -> str:
    """Return a strength, to a hundredth below 10 % and to a tenth above.

    >>> abv_words(2.594), abv_words(89.44), abv_words(0.004)
    ('2.59 % vol', '89.4 % vol', 'under 0.01 % vol')
    """
    if 0 < abv < 0.005:
        return "under 0.01 % vol"
    return f"{abv:.2f} % vol" if abv < 10 else f"{abv:.1f} % vol"


def mg_words(mass_mg: float) -> str:
    """Return a mass in mg, or in g from one gram.

    >>> mg_words(63.74), mg_words(1234)
    ('63.7 mg', '1.23 g')
    """
    return f"{significant(mass_mg)} mg" if mass_mg < 1000 else f"{significant(mass_mg / 1000)} g"
