"""A strength of spirit, for machines: figures are decimal strings."""

from ledger.domain.amounts.quantity import tidy
from ledger.science.liquids.strength_asked import AmountAnswer, StrengthAnswer
from reports.json.kit.answer import Answer, Figure, rounded


class AmountTold(Answer, frozen=True):
    """What an amount of a spirit comes to."""

    written: str
    """As it was written."""
    measured_at_c: Figure | None
    """Temperature at which its volume was measured; null when none was told."""
    volume_l: Figure
    """Its volume at 20 °C, in litres."""
    pure_alcohol_l: Figure
    """Litres of pure alcohol in it, at 20 °C."""
    proof_gallons: Figure
    """US proof gallons, at 60 °F."""
    scale_g: Figure
    """What a scale shows of it in air, in grams."""


class StrengthTold(Answer, frozen=True):
    """A strength in every measure, true of ethanol and water alone."""

    abv: Figure
    """% vol at 20 °C."""
    mass_percent: Figure
    """% w/w."""
    ethanol_g_per_l: Figure
    """Ethanol in a litre at 20 °C, in grams."""
    us_proof: Figure
    """US proof, at 60 °F."""
    density_g_per_l: Figure
    """Density at 20 °C."""
    specific_gravity: Figure
    """Specific gravity 20/20 °C in vacuum."""
    specific_gravity_in_air: Figure
    """Specific gravity 20/20 °C by weighing in air."""
    amount: AmountTold | None
    """What an amount of it comes to; null when none was asked for."""
    source: str
    """Where the densities come from."""


def strength_told(found: StrengthAnswer) -> StrengthTold:
    """Return a strength."""
    return StrengthTold(
        abv=rounded(found.abv, 3),
        mass_percent=rounded(found.mass_percent, 3),
        ethanol_g_per_l=rounded(found.ethanol_g_per_l, 2),
        us_proof=rounded(found.us_proof, 2),
        density_g_per_l=rounded(found.density_g_per_l, 2),
        specific_gravity=f"{found.gravity:.5f}",
        specific_gravity_in_air=f"{found.gravity_in_air:.5f}",
        amount=_amount(found.amount) if found.amount else None,
        source="OIML R 22:1975",
    )


def _amount(of: AmountAnswer) -> AmountTold:
    return AmountTold(
        written=tidy(of.written),
        measured_at_c=None if of.temp_c is None else rounded(of.temp_c, 2),
        volume_l=rounded(of.volume_ul / 1e6, 6),
        pure_alcohol_l=rounded(of.pure_alcohol_ul / 1e6, 6),
        proof_gallons=rounded(of.proof_gallons, 6),
        scale_g=rounded(of.scale_mg / 1000, 3),
    )
