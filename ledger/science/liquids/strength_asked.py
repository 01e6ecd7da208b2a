"""Answering what is asked of a spirit: its strength in every measure, and what an amount holds.

Guarantees: strengths and volumes are at 20 °C, US proof and proof gallons at 60 °F; an amount in
grams or pounds is what a scale shows in air; all that is wrong is told at once. Results are floats
and not rounded. True of ethanol and water alone. Refuses: a temperature without a volume.

References:
    27 CFR 19.1: a proof gallon is a US gallon at 60 °F with half its volume of ethanol, 1.8927 L,
    which at 20 °C are 1.9018 L by OIML R 22 and 1.9020 L by the gravity that is named there.
    27 CFR 30.64: examples by weight in air, which come out to 1 in 8000.
"""

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together
from ledger.science.liquids.alcohol import (
    ETHANOL_KG_PER_M3,
    Base,
    check_temperature,
    density,
    mass_percent_from_abv,
    us_proof_from_abv,
)
from ledger.science.liquids.hydrometer import (
    specific_gravity,
    specific_gravity_in_air,
    weight_in_air,
)
from ledger.science.liquids.strengths import parse_strength, parse_temperature, read_amount

US_GALLON_UL = 3_785_411.784
"""A US gallon, 231 cubic inches."""


class AmountAnswer(Struct, frozen=True):
    """What an amount of a spirit comes to."""

    written: str
    """As it was written."""
    volume_ul: float
    """Its volume at 20 °C."""
    pure_alcohol_ul: float
    """Pure alcohol in it, at 20 °C."""
    proof_gallons: float
    """US proof gallons."""
    scale_mg: float
    """What a scale shows of it in air."""
    temp_c: float | None = None
    """Temperature at which its volume was measured, when it was told."""


class StrengthAnswer(Struct, frozen=True):
    """A strength in every measure."""

    abv: float
    """% vol at 20 °C."""
    mass_percent: float
    """% w/w."""
    ethanol_g_per_l: float
    """Ethanol in a litre at 20 °C."""
    us_proof: float
    """US proof, at 60 °F."""
    density_g_per_l: float
    """Density at 20 °C, in vacuum."""
    gravity: float
    """Specific gravity 20/20 °C in vacuum."""
    gravity_in_air: float
    """Specific gravity 20/20 °C by weighing in air."""
    amount: AmountAnswer | None = None
    """What an amount of it comes to, when one was asked for."""


def strength_asked(
    strength: str, amount: str | None = None, temp: str | None = None
) -> StrengthAnswer:
    """Return a strength, and an amount of it, that some texts ask for.

    Args:
        strength: The strength, as `parse_strength` reads it.
        amount: How much, a volume or what a scale shows.
        temp: Temperature at which the volume was measured; 20 °C when not told.

    Raises:
        InputError: One or more cannot be read.
        RefusedError: One or more cannot be true.

    >>> found = strength_asked("50%", "2L")
    >>> round(found.us_proof, 2), round(found.gravity, 4), found.amount.pure_alcohol_ul
    (99.88, 0.9318, 1000000.0)
    """
    errors: list[LedgerError] = []
    abv = attempt(errors, lambda: parse_strength(strength), 0.0)
    much = attempt(errors, lambda: _amount(amount), None)
    temp_c = attempt(
        errors, lambda: check_temperature(parse_temperature(temp)) if temp else None, None
    )
    if (temp and amount is None) or (much and much.measure is Measure.MG and temp):
        errors.append(
            InputError(
                "A temperature counts for a volume only.",
                "Give a volume with it, such as 1L, or leave --temp away.",
            )
        )
    if errors:
        raise together(errors)
    percent = mass_percent_from_abv(abv)
    own, water = density(percent), density(0.0)
    return StrengthAnswer(
        abv=abv,
        mass_percent=percent,
        ethanol_g_per_l=abv / 100 * ETHANOL_KG_PER_M3,
        us_proof=us_proof_from_abv(abv),
        density_g_per_l=own,
        gravity=specific_gravity(own, water),
        gravity_in_air=specific_gravity_in_air(own, water),
        amount=_answer(abv, percent, much, temp_c) if much else None,
    )


def _answer(abv: float, percent: float, much: Quantity, temp_c: float | None) -> AmountAnswer:
    own = density(percent)
    if much.measure is Measure.MG:
        # kg/m³ are mg/mL, which is µg/µL.
        volume_ul = much.amount * 1000 / weight_in_air(own)
    else:
        volume_ul = much.amount * density(percent, 20.0 if temp_c is None else temp_c) / own
    at_60_f = volume_ul * own / density(percent, Base.FAHRENHEIT_60.value)
    return AmountAnswer(
        written=much.written,
        volume_ul=volume_ul,
        pure_alcohol_ul=volume_ul * abv / 100,
        proof_gallons=at_60_f / US_GALLON_UL * us_proof_from_abv(abv) / 100,
        scale_mg=volume_ul * weight_in_air(own) / 1000,
        temp_c=temp_c,
    )


def _amount(text: str | None) -> Quantity | None:
    if text is None:
        return None
    amount = read_amount(text)
    if amount.measure is Measure.UEACH:
        raise RefusedError(
            f"{amount.written} is a number of things, and spirit is measured or weighed.",
            "Say how much, such as 1 L or 500 g.",
        )
    return amount
