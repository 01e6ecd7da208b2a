"""What an essence is as a flammable liquid, for machines."""

from ledger.service.glass.serving import serving
from reports.json.glass.flammable import flammable_told
from tests.keeper import Keeper
from tests.path import Lots


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
