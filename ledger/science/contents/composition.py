"""What a liquid contains: ethanol, water, sucrose, oils and the rest, by mass; and its volume.

Guarantees: masses add, volumes never do. The volume of a mixture is reckoned at 20 °C from OIML
R 22 for ethanol and water, from ICUMSA SPS-4 for what sucrose adds to its water, and from each
oil's density; each is exact where the others are absent. Results are floats and not rounded. What
is not known stays a volume of unknown liquid, named by its lot. Refuses: to guess a mass.
"""

from collections.abc import Mapping
from typing import NamedTuple

from msgspec import Struct, field
from msgspec.structs import replace

from ledger.science.liquids import oiml_r22, sps4
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3

AT_C = 20.0
"""The temperature in °C at which volumes are reckoned."""
WATER_KG_PER_M3 = oiml_r22.density(0, AT_C)
"""Density of water at 20 °C by OIML R 22."""
SUGARED_WATER_KG_PER_M3 = sps4.density(0, AT_C)
"""Density of water at 20 °C by ICUMSA SPS-4, as the base of its syrups."""
STRONGEST_SYRUP = 0.75
"""Mass fraction of sucrose in its water up to which SPS-4 is asked; beyond it sugar is taken to
fill what it fills there, as it does while it is not yet dissolved (common practice, no source)."""
OIL, REST = "oil", "rest"
"""Sorts of part: an essential oil, and any other dissolved thing."""


class PartKey(NamedTuple):
    """Which part of a liquid, besides ethanol, water and sucrose."""

    sort: str
    """`OIL` or `REST`."""
    material: str
    """Code of the material."""


class Part(NamedTuple):
    """How much of a part."""

    mass_mg: float
    """Its mass in mg."""
    volume_ul: float
    """What it fills, in µL; nought for a solid whose density is not known."""
    dissolved_in_mg: float = 0.0
    """Mass in mg of the alcohol and water it was bought in, which are counted as such."""

    @property
    def bought_mg(self) -> float:
        """Mass in mg of it as it was bought, of which its constituents are a share."""
        return self.mass_mg + self.dissolved_in_mg


class Contents(Struct, frozen=True):
    """What a liquid contains."""

    volume_ul: float = 0.0
    """Its volume at 20 °C in µL: as measured last, and reckoned on from there."""
    ethanol_mg: float = 0.0
    """Mass of ethanol in mg."""
    water_mg: float = 0.0
    """Mass of water in mg."""
    sucrose_mg: float = 0.0
    """Mass of sucrose in mg."""
    parts: Mapping[PartKey, Part] = field(default_factory=dict)
    """Oils and other dissolved things."""
    unknown_ul: Mapping[str, float] = field(default_factory=dict)
    """Volumes in µL of liquids of which a fact is missing, by the lot's code."""
    notes: frozenset[str] = frozenset()
    """What was assumed, a sentence each."""

    @property
    def mass_mg(self) -> float:
        """All the mass that is known, in mg."""
        parts = sum(part.mass_mg for part in self.parts.values())
        return self.ethanol_mg + self.water_mg + self.sucrose_mg + parts

    @property
    def abv(self) -> float:
        """% vol at 20 °C: pure ethanol in the whole volume."""
        # By 1 where there is nothing, so that its strength is nought.
        return 100 * self.ethanol_mg / (ETHANOL_KG_PER_M3 / 1000) / (self.volume_ul or 1)

    @property
    def sugar_g_per_l(self) -> float:
        """Sucrose in g/L."""
        return 1000 * self.sucrose_mg / (self.volume_ul or 1)

    @property
    def sugar_percent_mass(self) -> float:
        """Sucrose in % of the mass; of sugar and water alone this is the °Brix."""
        return 100 * self.sucrose_mg / (self.mass_mg or 1)

    @property
    def base_syrup_percent_mass(self) -> float:
        """Sucrose in % of the mass without the alcohol and the oils: the °Brix of its base syrup.

        Liquid of which nothing is known counts as water.
        """
        oils = sum(part.mass_mg for part in self.oils().values())
        unknown = sum(self.unknown_ul.values()) * WATER_KG_PER_M3 / 1000
        base = self.mass_mg - self.ethanol_mg - oils + unknown
        return 100 * self.sucrose_mg / (base or 1)

    def oils(self) -> dict[str, Part]:
        """Return the oils by their material's code."""
        return {key.material: part for key, part in self.parts.items() if key.sort == OIL}


def add(one: Contents, other: Contents) -> Contents:
    """Return the mixture of two liquids.

    Its volume is what both had, less what they shrink by: the difference between the volumes
    reckoned for the two and for the mixture. A solid has the volume that is reckoned for it.

    >>> half = Contents(100.0, water_mg=99.82)
    >>> round(add(half, half).volume_ul, 1)
    200.0
    """
    mixed = Contents(
        ethanol_mg=one.ethanol_mg + other.ethanol_mg,
        water_mg=one.water_mg + other.water_mg,
        sucrose_mg=one.sucrose_mg + other.sucrose_mg,
        parts=_parts_added(one.parts, other.parts),
        unknown_ul=_volumes_added(one.unknown_ul, other.unknown_ul),
        notes=one.notes | other.notes,
    )
    apart = [(part.volume_ul, reckoned_volume_ul(part)) for part in (one, other)]
    # A measured volume counts before a reckoned one, so that a bottle is as strong as its bulk.
    had = sum(measured_ul or reckoned_ul for measured_ul, reckoned_ul in apart)
    shrunk = sum(reckoned_ul for _, reckoned_ul in apart) - reckoned_volume_ul(mixed)
    return replace(mixed, volume_ul=had - shrunk)


def _parts_added(one: Mapping[PartKey, Part], other: Mapping[PartKey, Part]) -> dict[PartKey, Part]:
    added = dict(one)
    for key, part in other.items():
        was = added.get(key, Part(0.0, 0.0))
        added[key] = Part(
            was.mass_mg + part.mass_mg,
            was.volume_ul + part.volume_ul,
            was.dissolved_in_mg + part.dissolved_in_mg,
        )
    return added


def _volumes_added(one: Mapping[str, float], other: Mapping[str, float]) -> dict[str, float]:
    added = dict(one)
    for lot, volume in other.items():
        added[lot] = added.get(lot, 0.0) + volume
    return added


def scaled(contents: Contents, factor: float) -> Contents:
    """Return a share of a liquid, every part of it alike.

    >>> scaled(Contents(100.0, ethanol_mg=50.0), 0.1).ethanol_mg
    5.0
    """
    return Contents(
        volume_ul=contents.volume_ul * factor,
        ethanol_mg=contents.ethanol_mg * factor,
        water_mg=contents.water_mg * factor,
        sucrose_mg=contents.sucrose_mg * factor,
        parts={
            key: Part(part.mass_mg * factor, part.volume_ul * factor, part.dissolved_in_mg * factor)
            for key, part in contents.parts.items()
        },
        unknown_ul={lot: volume * factor for lot, volume in contents.unknown_ul.items()},
        notes=contents.notes,
    )


def drawn(contents: Contents, volume_ul: float) -> Contents:
    """Return so much of a liquid, at most all of it."""
    if contents.volume_ul <= 0:
        return Contents(notes=contents.notes)
    return scaled(contents, min(1.0, volume_ul / contents.volume_ul))


def measured(contents: Contents, volume_ul: float, *, is_loss: bool) -> Contents:
    """Return a liquid whose volume was measured.

    Args:
        contents: What was there.
        volume_ul: The volume measured.
        is_loss: Whether what is missing was lost, and took its share of everything; else the
            volume alone is another, as when a liquid is made up to a mark.
    """
    if is_loss and volume_ul < contents.volume_ul:
        return scaled(contents, volume_ul / contents.volume_ul)
    return replace(contents, volume_ul=float(volume_ul))


def reckoned_volume_ul(contents: Contents) -> float:
    """Return the volume that the parts of a liquid fill together at 20 °C, in µL.

    Ethanol and water by OIML R 22; sucrose fills what SPS-4 says it adds to the water that is
    there. That the two effects add up where ethanol, water and sucrose meet is an assumption.
    """
    parts = sum(part.volume_ul for part in contents.parts.values())
    return (
        _spirit_ul(contents.ethanol_mg, contents.water_mg)
        + _sucrose_ul(contents.sucrose_mg, contents.water_mg)
        + parts
        + sum(contents.unknown_ul.values())
    )


def _spirit_ul(ethanol_mg: float, water_mg: float) -> float:
    mass = ethanol_mg + water_mg
    if mass <= 0:
        return 0.0
    return 1000 * mass / oiml_r22.density(ethanol_mg / mass, AT_C)


def _sucrose_ul(sucrose_mg: float, water_mg: float) -> float:
    if sucrose_mg <= 0:
        return 0.0
    least_water = sucrose_mg * (1 - STRONGEST_SYRUP) / STRONGEST_SYRUP
    water_mg = max(water_mg, least_water)
    mass = sucrose_mg + water_mg
    syrup = 1000 * mass / sps4.density(sucrose_mg / mass, AT_C)
    return syrup - 1000 * water_mg / SUGARED_WATER_KG_PER_M3
