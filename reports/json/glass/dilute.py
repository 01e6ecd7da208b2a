"""A dilution, for machines: amounts are decimal strings of mL at 20 °C and of g."""

from ledger.science.liquids.alcohol import us_proof_from_abv
from ledger.science.liquids.dilution import Dilution, Warmed
from reports.json.kit.answer import Answer, Figure, rounded
from reports.kit.amounts import decimal_amount
from reports.words.glass.dilute import CAUTION


class WarmedTold(Answer, frozen=True):
    """The volumes of a dilution at another temperature than 20 °C."""

    temp_c: Figure
    """Temperature of both liquids when they are measured."""
    stock_ml: Figure
    """Spirit, measured at that temperature."""
    water_ml: Figure
    """Water, measured at that temperature."""
    final_ml: Figure
    """What they make, at that temperature."""
    shown_abv: Figure | None
    """% vol that a glass alcoholmeter for 20 °C shows in it there; null: off its scale."""


class DiluteAnswer(Answer, frozen=True):
    """How spirit and water make a wanted strength."""

    stock_abv: Figure
    """% vol of the spirit at 20 °C, as given."""
    target_abv: Figure
    """% vol wanted at 20 °C, as given."""
    stock_us_proof: Figure
    """The first in US proof."""
    target_us_proof: Figure
    """The second in US proof."""
    volumes_at_c: Figure
    """Temperature of the volumes."""
    stock_ml: Figure
    """Spirit to take."""
    water_ml: Figure
    """Water to add."""
    final_ml: Figure
    """What it makes."""
    contraction_ml: Figure
    """By how much the volumes put in exceed what they make; below nothing where weak spirit
    grows on dilution."""
    stock_g: Figure
    """Spirit to take, by weight."""
    water_g: Figure
    """Water to add, by weight."""
    final_g: Figure
    """What it weighs."""
    rounded_to_ml: Figure
    """What amounts are rounded to."""
    check_abv: Figure
    """% vol at 20 °C that the rounded volumes mix to."""
    check_ml: Figure
    """Volume that the rounded volumes mix to."""
    at_temperature: WarmedTold | None
    """The volumes at the temperature asked for, if one was."""
    source: str
    """Where the densities come from."""
    cautions: tuple[str, ...]
    """What to mind, a sentence each."""


def dilute_answer(found: Dilution) -> DiluteAnswer:
    """Return a dilution."""
    return DiluteAnswer(
        stock_abv=rounded(found.stock_abv, 3),
        target_abv=rounded(found.target_abv, 3),
        stock_us_proof=rounded(us_proof_from_abv(found.stock_abv), 1),
        target_us_proof=rounded(us_proof_from_abv(found.target_abv), 1),
        volumes_at_c="20",
        stock_ml=decimal_amount(found.stock_ul),
        water_ml=decimal_amount(found.water_ul),
        final_ml=decimal_amount(found.final_ul),
        contraction_ml=decimal_amount(found.contraction_ul),
        stock_g=decimal_amount(found.stock_mg),
        water_g=decimal_amount(found.water_mg),
        final_g=decimal_amount(found.final_mg),
        rounded_to_ml=decimal_amount(found.step),
        check_abv=rounded(found.check_abv, 3),
        check_ml=decimal_amount(found.check_ul),
        at_temperature=_warmed(found.warmed) if found.warmed else None,
        source="OIML R 22:1975",
        cautions=(CAUTION,),
    )


def _warmed(warmed: Warmed) -> WarmedTold:
    return WarmedTold(
        temp_c=rounded(warmed.temp_c, 3),
        stock_ml=decimal_amount(warmed.stock_ul),
        water_ml=decimal_amount(warmed.water_ul),
        final_ml=decimal_amount(warmed.final_ul),
        shown_abv=None if warmed.shown_abv is None else rounded(warmed.shown_abv, 2),
    )
