"""What a glass alcoholmeter shows at a temperature, and the strength that is true.

Guarantees: a reading and its correction are on one scale, % vol at 20 °C or at 60 °F as said;
the glass is soda-lime, 25e-6 a °C. Results are not rounded; an instrument is no better than its
marks. Refuses: temperatures and strengths outside OIML R 22. True of ethanol and water alone: oil
and sugar falsify the reading.

Tables of this kind exist in both directions, so each function says in its name which way it goes.
"""

from ledger.science.liquids.alcohol import (
    Base,
    abv_from_mass_percent,
    density,
    mass_percent_from_abv,
    mass_percent_from_density,
)
from ledger.science.liquids.hydrometer import shown_density, true_density


def true_from_indicated(indicated_abv: float, temp_c: float, base: Base = Base.CELSIUS_20) -> float:
    """Return the true % vol at the base temperature of an alcoholmeter's reading, not rounded.

    Args:
        indicated_abv: The reading in % vol.
        temp_c: Temperature of the liquid when it was read, -20 to 40 °C.
        base: Temperature for which the instrument's scale is made; the answer is for the same.

    Raises:
        RefusedError: Reading or temperature is outside the table, or no mixture reads so there.

    References:
        OIML R 22:1975, Table VIII, by its definition.

    >>> round(true_from_indicated(96, 20), 2)
    96.0
    """
    shown = density(mass_percent_from_abv(indicated_abv, base), base.value)
    true = true_density(shown, temp_c, base.value)
    return abv_from_mass_percent(mass_percent_from_density(true, temp_c), base)


def indicated_from_true(true_abv: float, temp_c: float, base: Base = Base.CELSIUS_20) -> float:
    """Return the % vol that a glass alcoholmeter shows in a liquid of known strength, not rounded.

    Args:
        true_abv: The true % vol at the base temperature.
        temp_c: Temperature of the liquid, -20 to 40 °C.
        base: Temperature for which the instrument's scale is made.

    Raises:
        RefusedError: Strength or temperature is outside the table, or the reading off the scale.
    """
    true = density(mass_percent_from_abv(true_abv, base), temp_c)
    shown = shown_density(true, temp_c, base.value)
    return abv_from_mass_percent(mass_percent_from_density(shown, base.value), base)
