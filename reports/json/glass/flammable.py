"""What an essence is as a flammable liquid, for machines."""

from ledger.science.liquids.flammable import DEFER
from ledger.science.liquids.flash import OVER_C
from ledger.service.glass.card import ServingCard
from reports.json.kit.answer import Answer, Figure, rounded


class FlammableTold(Answer, frozen=True):
    """What a liquid is as a flammable one, by its ethanol and water alone."""

    flash_point_c: Figure
    """Flash point that was reckoned, in °C, closed cup."""
    may_be_lower_by_c: Figure
    """By how much a published one may lie below it; the class is told by that lower end."""
    category: int
    """Category of flammable liquids of GHS and CLP: 2 or 3."""
    hazard_statement: str
    """Code of its hazard statement."""
    signal_word: str
    """Its signal word."""
    is_carried_as_dangerous: bool
    """Whether the rules for the carriage of dangerous goods count, by its strength."""
    un_number: str
    """UN number and proper shipping name."""
    packing_group: str
    """Packing group of its carriage, class 3."""
    limited_quantity_l: Figure
    """Largest bottle of limited quantities by ADR, in litres."""
    limited_quantity_us_l: Figure
    """The same in the United States."""
    decides: str
    """Whose word counts."""


def flammable_told(card: ServingCard) -> FlammableTold | None:
    """Return what an essence is as a flammable liquid; None where it has no class."""
    found = card.flammable
    if found is None:
        return None
    return FlammableTold(
        flash_point_c=rounded(found.flash_c, 1),
        may_be_lower_by_c=rounded(OVER_C, 1),
        category=found.category,
        hazard_statement=found.statement,
        signal_word=found.signal,
        is_carried_as_dangerous=found.is_carried,
        un_number=found.un_number,
        packing_group=found.packing_group,
        limited_quantity_l=rounded(found.limited_inner_l, 1),
        limited_quantity_us_l=rounded(found.limited_us_l, 1),
        decides=DEFER,
    )
