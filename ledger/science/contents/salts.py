"""Salts of preservative acids, counted as the acid, which is what most limits speak of.

Guarantees: a salt counts as much acid as its formula holds, and the acid itself as it is. Refuses:
salts it does not know, which stay what they are; water of crystals, so a salt that is not dry is
counted as too much rather than too little.

References:
    Atomic weights: IUPAC Commission on Isotopic Abundances and Atomic Weights, abridged standard
    atomic weights 2021 (from memory).
"""

from collections.abc import Mapping
from typing import NamedTuple

H, C, O, NA, K, CA = 1.008, 12.011, 15.999, 22.990, 39.098, 40.078  # noqa: E741
"""Abridged standard atomic weights, in g/mol."""
BENZOIC, SORBIC = "benzoic acid", "sorbic acid"
"""The acids, as limits call them."""


class Salt(NamedTuple):
    """A salt of a preservative acid."""

    name: str
    """Its common name."""
    acid: str
    """Name of its acid."""
    g_per_mol: float
    """Its molar mass."""
    acid_g_per_mol: float
    """Molar mass of the acid in one mole of it."""

    @property
    def factor(self) -> float:
        """How much acid counts for one part of it by weight."""
        return self.acid_g_per_mol / self.g_per_mol


_ACIDS = {BENZOIC: 7 * C + 6 * H + 2 * O, SORBIC: 6 * C + 8 * H + 2 * O}
_METALS = (("sodium", NA, 1), ("potassium", K, 1), ("calcium", CA, 2))
"""Each metal, its weight, and how many acids an atom of it takes the hydrogen of."""


def _salt(metal: tuple[str, float, int], ending: str, acid: str) -> Salt:
    name, weight, acids = metal
    held = acids * _ACIDS[acid]
    return Salt(f"{name} {ending}", acid, held + weight - acids * H, held)


SALTS = {
    salt.name: salt
    for ending, acid in (("benzoate", BENZOIC), ("sorbate", SORBIC))
    for salt in (_salt(metal, ending, acid) for metal in _METALS)
}
"""The salts by name."""


def with_acids(masses: Mapping[str, float]) -> dict[str, float]:
    """Return the masses of substances with those of the acids that their salts count as.

    >>> {name: round(mg, 1) for name, mg in with_acids({"sodium benzoate": 100.0}).items()}
    {'sodium benzoate': 100.0, 'benzoic acid': 84.7}
    """
    counted = dict(masses)
    for name, mass in masses.items():
        if salt := SALTS.get(name):
            counted[salt.acid] = counted.get(salt.acid, 0.0) + mass * salt.factor
    return counted


def salts_of(acid: str, masses: Mapping[str, float]) -> tuple[tuple[Salt, float], ...]:
    """Return the salts among some masses that count as an acid, each with its mass."""
    return tuple(
        (SALTS[name], mass)
        for name, mass in sorted(masses.items())
        if name in SALTS and SALTS[name].acid == acid
    )
