"""Density of ethanol and water: the general formula of OIML R 22 with all its terms.

Guarantees: the formula as printed, no range kept and nothing rounded.

References:
    OIML R 22:1975, International alcoholometric tables, general formula and coefficients; the
    same in Council Directive 76/766/EEC, Annex. The coefficients are those of two public
    transcriptions that agree; in the third of the second group of `C` two others differ beyond
    the thirteenth figure, which moves no density by as much as 2e-9 kg/m³.
"""

from functools import lru_cache

from ledger.science.roots import polynomial

A = (
    998.20123,
    -192.9769495,
    389.1238958,
    -1668.103923,
    13522.15441,
    -88292.78388,
    306287.4042,
    -613838.1234,
    747017.2998,
    -547846.1354,
    223446.0334,
    -39032.85426,
)
"""Powers of the mass fraction, from the zeroth, at 20 °C; kg/m³."""

B = (
    -0.20618513,
    -0.0052682542,
    3.6130013e-05,
    -3.8957702e-07,
    7.169354e-09,
    -9.9739231e-11,
)
"""Powers of the temperature above 20 °C, from the first: water; kg/m³."""

C: tuple[tuple[float, ...], ...] = (
    (
        0.1693443461530087,
        -10.46914743455169,
        71.96353469546523,
        -704.7478054272792,
        3924.090430035045,
        -12101.64659068747,
        22486.46550400788,
        -26055.62982188164,
        18523.73922069467,
        -7420.201433430137,
        1285.617841998974,
    ),
    (
        -0.0119301300505701,
        0.2517399633803461,
        -2.170575700536993,
        13.53034988843029,
        -50.29988758547014,
        109.635566657757,
        -142.2753946421155,
        108.043594285623,
        -44.14153236817392,
        7.442971530188783,
    ),
    (
        -0.0006802995733503803,
        0.01876837790289664,
        -0.2002561813734156,
        1.02299296671922,
        -2.895696483903638,
        4.810060584300675,
        -4.672147440794683,
        2.458043105903461,
        -0.5411227621436812,
    ),
    (
        4.075376675622027e-06,
        -8.76305857347111e-06,
        6.515031360099368e-06,
        -1.51578483698721e-06,
    ),
    (
        -2.788074354782409e-08,
        1.345612883493354e-08,
    ),
)
"""Powers of the mass fraction, from the first, for each power of the temperature."""


@lru_cache(maxsize=4096)  # a lot is replayed at every act, through the same mixtures
def density(mass_fraction: float, temp_c: float) -> float:
    """Return the density of ethanol and water in kg/m³, not rounded.

    Args:
        mass_fraction: Mass of ethanol in the mass of the whole, 0 to 1.
        temp_c: Temperature in °C; the formula is stated for -20 to 40.

    >>> round(density(0.88, -10.0), 2)
    848.57
    """
    above = temp_c - 20
    mixed = tuple(mass_fraction * polynomial(row, mass_fraction) for row in C)
    water = above * polynomial(B, above)
    return polynomial(A, mass_fraction) + water + above * polynomial(mixed, above)
