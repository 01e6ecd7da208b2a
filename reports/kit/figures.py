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


def ml_words(volume_ul: float) -> str:
    """Return a volume in mL to three figures, and to one more where that is a half.

    >>> ml_words(44_375), ml_words(112_500), ml_words(30_000)
    ('44.4 mL', '112.5 mL', '30 mL')
    """
    shown = significant(volume_ul / 1000, 4)
    is_half = shown.endswith("5") and len(shown.replace(".", "").lstrip("0")) == 4
    exact = abs(float(shown) * 1000 - volume_ul) < 1e-6 * volume_ul
    return f"{shown if is_half and exact else significant(volume_ul / 1000)} mL"
