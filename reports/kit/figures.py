"""Reckoned figures as people read them: rounded once, here, to what they are worth.

Guarantees: three figures for masses and volumes, two decimals for strengths. Refuses: to show a
figure as nought that is not.
"""

from math import ceil

from ledger.science.ranges import significant


def abv_words(abv: float) -> str:
    """Return a strength, to a hundredth below 10 % and to a tenth above.

    >>> abv_words(2.594), abv_words(89.44), abv_words(0.004)
    ('2.59 % vol', '89.4 % vol', 'under 0.01 % vol')
    """
    if 0 < abv < 0.005:
        return "under 0.01 % vol"
    return f"{abv:.2f} % vol" if abv < 10 else f"{abv:.1f} % vol"


def doubted(figure: float, half_width: float) -> str:
    """Return a figure with its doubt, both to the place that the doubt is worth (GUM, 7.2.6).

    The doubt has one digit, or two where the first is 1, and is never rounded down.

    >>> doubted(59.83, 0.41), doubted(0.4937, 0.0131), doubted(1234.0, 37.0), doubted(3.14159, 0)
    ('59.8 ± 0.5', '0.494 ± 0.014', '1230 ± 40', '3.14')
    """
    if half_width <= 0:
        return significant(figure)
    power = int(f"{half_width:e}".split("e")[1])
    lead = half_width / 10**power
    places = (1 if lead < 2 else 0) - power
    step = 10.0**-places
    # A hair less, so that 0.2 stays 0.2 in spite of its binary form.
    up = ceil(half_width / step - 1e-9) * step
    shown = max(0, places)
    return f"{round(figure / step) * step:.{shown}f} ± {up:.{shown}f}"


def mg_words(mass_mg: float) -> str:
    """Return a mass in mg, or in g from one gram.

    >>> mg_words(63.74), mg_words(999), mg_words(1000), mg_words(1234)
    ('63.7 mg', '999 mg', '1 g', '1.23 g')
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
