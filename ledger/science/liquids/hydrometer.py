"""Glass hydrometers and weighing in air: what an instrument shows against what is true.

Guarantees: results follow from the glass growing with temperature and from air bearing part of a
weight; they are not rounded. The pull of the liquid's surface on the stem is left out.
"""

GLASS_PER_C = 25e-6
"""Cubical expansion of the soda-lime glass of hydrometers, a °C (OIML R 22, Table VIII)."""
AIR_KG_PER_M3 = 1.2
"""Density of air by convention (OIML R 33)."""
WEIGHTS_KG_PER_M3 = 8000.0
"""Density of weights by convention (OIML R 33)."""


def true_density(shown_kg_per_m3: float, temp_c: float, base_c: float = 20.0) -> float:
    """Return the density in kg/m³ of a liquid in which a glass hydrometer floats.

    Args:
        shown_kg_per_m3: The density at which it floats equally deep at its base temperature.
        temp_c: Temperature of liquid and glass.
        base_c: Temperature for which the hydrometer is made.
    """
    return shown_kg_per_m3 / _growth(temp_c, base_c)


def shown_density(true_kg_per_m3: float, temp_c: float, base_c: float = 20.0) -> float:
    """Return the density in kg/m³ that a glass hydrometer shows in a liquid; see `true_density`."""
    return true_kg_per_m3 * _growth(temp_c, base_c)


def _growth(temp_c: float, base_c: float) -> float:
    return 1 + GLASS_PER_C * (temp_c - base_c)


def weight_in_air(true_kg_per_m3: float) -> float:
    """Return the kg that 1 m³ of a liquid seems to weigh on a scale in air.

    >>> round(weight_in_air(998.2), 2)
    997.15
    """
    return (true_kg_per_m3 - AIR_KG_PER_M3) / (1 - AIR_KG_PER_M3 / WEIGHTS_KG_PER_M3)


def specific_gravity(liquid_kg_per_m3: float, water_kg_per_m3: float) -> float:
    """Return the specific gravity of a liquid in vacuum: its density over that of water."""
    return liquid_kg_per_m3 / water_kg_per_m3


def specific_gravity_in_air(liquid_kg_per_m3: float, water_kg_per_m3: float) -> float:
    """Return the specific gravity of a liquid by weighing in air, given true densities."""
    return weight_in_air(liquid_kg_per_m3) / weight_in_air(water_kg_per_m3)
