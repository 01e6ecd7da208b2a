"""Nutrition of a liquid: energy, carbohydrate, sugars, salt and the rest, for 100 mL of it.

Guarantees: energy is summed from the factors of Regulation (EU) 1169/2011, Annex XIV, in kJ and in
kcal each by its own; the same sums serve the United States, whose 4, 9 and 4 kcal/g of 21 CFR
101.9(c)(1)(i)(B), from memory, agree with them. Results are floats and not rounded. What nothing
is known of is named and counts as nothing. A gum counts as fibre, an acid as an
organic one unless it is called phosphoric. Refuses: to guess more than that from what a material
is.

References:
    Regulation (EU) No 1169/2011, Annex I (salt is sodium times 2.5), Annex XIV (factors), Annex XV.
"""

from collections.abc import Mapping

from msgspec import Struct

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.nutrients import NUTRIENTS, nutrients
from ledger.science.contents.composition import Contents, Part
from ledger.science.contents.salts import BENZOIC, NA, SALTS, SORBIC

SALT_PER_SODIUM = 2.5
"""Salt is sodium times this (Regulation (EU) 1169/2011, Annex I, 11)."""
KJ_PER_G = {
    "fat": 37.0,
    "carbohydrate": 17.0,
    "polyols": 10.0,
    "fibre": 8.0,
    "protein": 17.0,
    "alcohol": 29.0,
    "organic-acid": 13.0,
}
"""Energy in kJ/g (Annex XIV); polyols, part of the carbohydrate, are taken out of it first."""
KCAL_PER_G = {
    "fat": 9.0,
    "carbohydrate": 4.0,
    "polyols": 2.4,
    "fibre": 2.0,
    "protein": 4.0,
    "alcohol": 7.0,
    "organic-acid": 3.0,
}
"""Energy in kcal/g (Annex XIV)."""
NO_NUTRIENTS = frozenset({MaterialKind.WATER, MaterialKind.OIL, MaterialKind.CLARIFIER})
"""Kinds of which nothing is counted: an essential oil is no fat by Annex I, 2, whose fats are
lipids, and a glass holds milligrams of it (common practice, no source)."""


class Nutrition(Struct, frozen=True):
    """The nutrition of 100 mL, each in g."""

    fat: float = 0.0
    """Fat."""
    saturates: float = 0.0
    """Of which saturates."""
    carbohydrate: float = 0.0
    """Carbohydrate, polyols among it, fibre not."""
    sugars: float = 0.0
    """Of which sugars."""
    polyols: float = 0.0
    """Of which polyols."""
    fibre: float = 0.0
    """Fibre."""
    protein: float = 0.0
    """Protein."""
    alcohol: float = 0.0
    """Ethanol."""
    organic_acid: float = 0.0
    """Organic acids."""
    sodium: float = 0.0
    """Sodium."""
    unknown: tuple[str, ...] = ()
    """Codes of materials, or lots, of which nothing is known, so that they count as nothing."""

    @property
    def salt(self) -> float:
        """Salt in g."""
        return SALT_PER_SODIUM * self.sodium

    @property
    def kj(self) -> float:
        """Energy in kJ."""
        return self._energy(KJ_PER_G)

    @property
    def kcal(self) -> float:
        """Energy in kcal."""
        return self._energy(KCAL_PER_G)

    def _energy(self, factors: Mapping[str, float]) -> float:
        grams: dict[str, float] = {name: getattr(self, name.replace("-", "_")) for name in factors}
        grams["carbohydrate"] -= self.polyols
        return sum((factors[name] * gram for name, gram in grams.items()), 0.0)


def nutrition(contents: Contents, materials: Mapping[str, Material]) -> Nutrition:
    """Return the nutrition of 100 mL of a liquid.

    Args:
        contents: The liquid.
        materials: The materials in it, by code.

    >>> ten = nutrition(Contents(1e6, sucrose_mg=100_000), {})
    >>> round(ten.kj), round(ten.kcal), round(ten.sugars)
    (170, 40, 10)
    """
    if contents.volume_ul <= 0:
        return Nutrition()
    # mg in so many µL are g in 100 mL by this.
    per_100_ml = 100 / contents.volume_ul
    grams = dict.fromkeys((*NUTRIENTS, "alcohol"), 0.0)
    grams["carbohydrate"] = grams["sugars"] = contents.sucrose_mg * per_100_ml
    grams["alcohol"] = contents.ethanol_mg * per_100_ml
    unknown = list(contents.unknown_ul)
    for key, part in sorted(contents.parts.items()):
        held = held_by(materials.get(key.material))
        if held is None:
            unknown.append(key.material)
            continue
        for name, share in held.items():
            grams[name] += share * _counted_mg(part, materials[key.material]) * per_100_ml
    fields = {name.replace("-", "_"): gram for name, gram in grams.items()}
    return Nutrition(**fields, unknown=tuple(dict.fromkeys(unknown)))


def times(of: Nutrition, factor: float) -> Nutrition:
    """Return the nutrition of so many times as much.

    >>> times(Nutrition(sugars=10.0), 2.4).sugars
    24.0
    """
    grams = {name: getattr(of, name) * factor for name in of.__struct_fields__ if name != "unknown"}
    return Nutrition(**grams, unknown=of.unknown)


def _counted_mg(part: Part, material: Material) -> float:
    # A share of the material as it was bought, where it is told; else of what is dissolved alone.
    return part.bought_mg if material.nutrition else part.mass_mg


def held_by(material: Material | None) -> Mapping[str, float] | None:
    """Return what a gram of a material holds of each nutrient, in g; None where it is not known."""
    if material is None:
        return None
    if material.nutrition:
        return nutrients(material.nutrition)
    if material.sort in NO_NUTRIENTS:
        return {}
    if material.sort is MaterialKind.ACID:
        return {} if _is_phosphoric(material) else {"organic-acid": 1.0}
    if material.sort is MaterialKind.GUM:
        return {"fibre": 1.0}
    if material.sort is MaterialKind.PRESERVATIVE:
        return _of_salts(material)
    return None


def _is_phosphoric(material: Material) -> bool:
    names = f"{material.code} {material.name} {material.ingredient_name or ''}".lower()
    return "phosphoric" in names


def _of_salts(material: Material) -> Mapping[str, float] | None:
    """Return the sodium and the organic acid of a preservative whose salts are recorded."""
    held = {"sodium": 0.0, "organic-acid": 0.0}
    known = False
    for item in material.constituents:
        share, salt = item.fraction_ppm / 1e6, SALTS.get(item.substance)
        if salt:
            known = True
            held["organic-acid"] += share * salt.factor
            if salt.name.startswith("sodium"):
                held["sodium"] += share * NA / salt.g_per_mol
        elif item.substance in {BENZOIC, SORBIC}:
            known = True
            held["organic-acid"] += share
    return held if known else None
