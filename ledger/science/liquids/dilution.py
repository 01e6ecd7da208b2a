"""Diluting spirit with water: how much of each, what they shrink by, checked back.

Guarantees: ethanol is conserved; strengths and volumes are at 20 °C unless said; amounts are
rounded to be measurable, and the check starts from the rounded amounts. Refuses: strengths that
cannot be, a dilution upwards or to the same strength, temperatures outside OIML R 22.
"""

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.errors import RefusedError
from ledger.science.liquids.alcohol import abv_from_mass_percent, density, mass_percent_from_abv
from ledger.science.liquids.alcoholmeter import indicated_from_true
from ledger.science.ranges import figure


class Warmed(Struct, frozen=True):
    """The volumes of a dilution at another temperature than 20 °C."""

    temp_c: float
    """Temperature of both liquids when they are measured."""
    stock_ul: int
    """Spirit, measured at that temperature."""
    water_ul: int
    """Water, measured at that temperature."""
    final_ul: int
    """What they make, at that temperature."""
    shown_abv: float | None
    """% vol that a glass alcoholmeter for 20 °C shows in it there, not rounded; None: off its
    scale."""


class Dilution(Struct, frozen=True):
    """How spirit and water make a wanted strength.

    Amounts in µL at 20 °C and in mg, rounded half to even to `step`.
    """

    stock_abv: float
    """% vol of the spirit at 20 °C, as given."""
    target_abv: float
    """% vol wanted at 20 °C, as given."""
    final_ul: int
    """What it makes."""
    final_mg: int
    """What it weighs."""
    stock_ul: int
    """Spirit to take."""
    stock_mg: int
    """The same by weight."""
    water_ul: int
    """Water to add."""
    water_mg: int
    """The same by weight."""
    contraction_ul: int
    """By how much the rounded volumes put in exceed what they make.

    Below zero, to about 2 parts in 1000, when weak spirit is diluted: that grows.
    """
    step: int
    """What amounts are rounded to, in µL and in mg: see `step_of`."""
    check_abv: float
    """% vol at 20 °C that the rounded volumes mix to, not rounded."""
    check_ul: int
    """Volume that the rounded volumes mix to, rounded to 1 µL."""
    warmed: Warmed | None
    """The volumes at the temperature asked for, if one was."""


def dilute(
    stock_abv: float, target_abv: float, final: Quantity, temp_c: float | None = None
) -> Dilution:
    """Return how much spirit and water make an amount of a wanted strength.

    Args:
        stock_abv: % vol of the spirit at 20 °C.
        target_abv: % vol wanted at 20 °C, above 0.
        final: How much is wanted: a volume at 20 °C, or a mass.
        temp_c: Temperature of the liquids when they are measured, -20 to 40 °C, if not 20.

    Raises:
        RefusedError: See the module.

    References:
        OIML R 22:1975 for all densities.

    >>> from ledger.domain.amounts.quantity import parse_quantity
    >>> found = dilute(96.3, 90, parse_quantity("1 L"))
    >>> found.stock_ul, found.water_ul, found.contraction_ul
    (934600, 75900, 10500)
    """
    strong, wanted = mass_percent_from_abv(stock_abv), mass_percent_from_abv(target_abv)
    _refuse_upwards(stock_abv, target_abv)
    final_ul = _volume(final, density(wanted))
    final_mg = final_ul * density(wanted) / 1000
    # Only the pure ethanol of the volume wanted comes from the spirit, and all of it does.
    stock_ul = final_ul * target_abv / stock_abv
    stock_mg = stock_ul * density(strong) / 1000
    water_mg = final_mg - stock_mg
    water_ul = water_mg * 1000 / density(0)
    step = step_of(final_ul, min(stock_ul, water_ul))
    parts = [round_to(part, step) for part in (stock_ul, water_ul, final_ul)]
    check_abv, check_ul = mixed(stock_abv, parts[0], parts[1])
    return Dilution(
        stock_abv=stock_abv,
        target_abv=target_abv,
        final_ul=parts[2],
        final_mg=round_to(final_mg, step),
        stock_ul=parts[0],
        stock_mg=round_to(stock_mg, step),
        water_ul=parts[1],
        water_mg=round_to(water_mg, step),
        contraction_ul=parts[0] + parts[1] - parts[2],
        step=step,
        check_abv=check_abv,
        check_ul=round(check_ul),
        warmed=_warmed(
            temp_c, target_abv, (strong, 0.0, wanted), (stock_mg, water_mg, final_mg), step
        ),
    )


def mixed(stock_abv: float, stock_ul: float, water_ul: float) -> tuple[float, float]:
    """Return the % vol and the µL, both at 20 °C and not rounded, of spirit and water mixed.

    Raises:
        RefusedError: The strength is not 0 to 100 % vol.
    """
    strong = mass_percent_from_abv(stock_abv)
    stock_mg, water_mg = stock_ul * density(strong) / 1000, water_ul * density(0) / 1000
    mixture = strong * stock_mg / (stock_mg + water_mg)
    return abv_from_mass_percent(mixture), (stock_mg + water_mg) * 1000 / density(mixture)


def check_amount(final: Quantity) -> Quantity:
    """Return an amount when it is one of liquid.

    Raises:
        RefusedError: It is a number of things.
    """
    if final.measure is Measure.UEACH:
        raise RefusedError(
            f"{final.written} is a number of things, and a dilution makes a volume or a mass.",
            "Say how much, such as 1 L or 500 g.",
        )
    return final


def step_of(whole: float, least_part: float) -> int:
    """Return to what amounts are rounded: a power of ten, at least 1.

    It gives the whole at least five figures and the least part at least three.

    Raises:
        RefusedError: The least part is below 1 µL.

    >>> step_of(1_000_000, 75_900), step_of(1_000_000, 3_300), step_of(999_999, 300_000)
    (100, 10, 10)
    """
    if least_part < 1:
        raise RefusedError(
            "One of the two liquids would be less than 1 µL, which cannot be measured.",
            "Ask for a larger amount, or dilute in two steps.",
        )
    figures = min(len(str(int(whole))) - 5, len(str(int(least_part))) - 3)
    return int(10 ** max(0, figures))


def round_to(amount: float, step: int) -> int:
    """Return an amount rounded half to even to a whole number of steps."""
    return round(amount / step) * step


def _volume(final: Quantity, density_kg_per_m3: float) -> float:
    if check_amount(final).measure is Measure.UL:
        return final.amount
    return final.amount * 1000 / density_kg_per_m3


def _refuse_upwards(stock_abv: float, target_abv: float) -> None:
    stock, target = figure(stock_abv, 3), figure(target_abv, 3)
    if target_abv > stock_abv:
        raise RefusedError(
            f"Water makes spirit weaker, so {stock} % vol cannot be diluted to {target} % vol.",
            "Give the spirit first and the strength you want second, or use a stronger spirit.",
        )
    if target_abv == stock_abv:
        raise RefusedError(
            f"The spirit is {stock} % vol already, so there is nothing to dilute.",
            "Give a lower strength.",
        )
    if target_abv == 0:
        raise RefusedError(
            "Spirit cannot be diluted to 0 % vol; that would be water alone.",
            "Give the strength you want, above 0.",
        )


def _warmed(
    temp_c: float | None,
    target_abv: float,
    mass_percents: tuple[float, float, float],
    masses_mg: tuple[float, float, float],
    step: int,
) -> Warmed | None:
    if temp_c is None:
        return None
    stock_ul, water_ul, final_ul = (
        round_to(mass * 1000 / density(percent, temp_c), step)
        for percent, mass in zip(mass_percents, masses_mg, strict=True)
    )
    return Warmed(temp_c, stock_ul, water_ul, final_ul, _shown_abv(target_abv, temp_c))


def _shown_abv(abv: float, temp_c: float) -> float | None:
    """Return what an alcoholmeter shows in a spirit at a temperature; None: off its scale."""
    try:
        return indicated_from_true(abv, temp_c)
    except RefusedError:
        return None
