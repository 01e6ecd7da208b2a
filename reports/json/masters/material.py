"""Materials, for machines."""

from ledger.domain.entries import Material
from ledger.domain.entries.choices import HowObtained, MaterialKind
from reports.json.kit.answer import Answer, Figure, scaled_or_none


class MaterialRow(Answer, frozen=True):
    """A thing that is bought and used."""

    material: str
    """Its code."""
    name: str
    """Its name for people."""
    material_kind: MaterialKind
    """What it is to the trade."""
    how: HowObtained | None
    """How it was obtained."""
    density_g_per_ml: Figure | None
    """Its density."""
    abv: Figure | None
    """Its strength in % vol at 20 °C."""
    names: dict[str, str]
    """Its names for ingredient lists in other languages, by the language's code."""


def material_row(item: Material) -> MaterialRow:
    """Return a material."""
    return MaterialRow(
        material=item.code,
        name=item.name,
        material_kind=item.sort,
        how=item.how_obtained,
        density_g_per_ml=scaled_or_none(item.density_mg_per_l, 6),
        abv=scaled_or_none(item.abv_mpct, 3),
        names={told.language: told.name for told in item.names},
    )
