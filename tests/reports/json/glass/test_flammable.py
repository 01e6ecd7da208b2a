"""What an essence is as a flammable liquid, for machines."""

from msgspec.structs import replace

from ledger.science.liquids.flammable import flammable
from ledger.service.glass.serving import serving
from reports.json.glass.flammable import flammable_told
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.json.kept import check

STRENGTHS = ((0.162, 20.0), (0.3, 36.2), (0.86, 89.73))
"""Weak, middling and strong: mass and volume shares."""


def test_an_essence_tells_its_class_and_carriage_and_a_syrup_none(
    walked: tuple[Keeper, Lots],
) -> None:
    """Of 89.7 % vol, category 2; bounds as in flash.csv."""
    keeper, lots = walked
    told = flammable_told(serving(keeper.book, lots.essence))
    assert told is not None
    assert (told.category, told.hazard_statement, told.signal_word) == (2, "H225", "Danger")
    assert (told.packing_group, told.is_carried_as_dangerous) == ("II", True)
    assert (told.limited_quantity_l, told.limited_quantity_us_l) == ("5", "1")
    assert 13 < float(told.flash_point_c) < 17
    assert told.un_number.startswith("UN 1197")
    assert flammable_told(serving(keeper.book, lots.packed)) is None


def test_every_figure_of_an_essence_as_a_liquid_that_burns_is_the_kept_one(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    card = serving(keeper.book, lots.essence)
    told = [flammable_told(replace(card, flammable=flammable(m, v))) for m, v in STRENGTHS]
    check("flammable", *(each for each in told if each is not None))
