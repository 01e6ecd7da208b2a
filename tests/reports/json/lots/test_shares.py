"""How much of one lot is in another, for machines."""

from ledger.service.lots.shares import traced
from reports.json.lots.shares import share_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_share_is_whole_numbers_and_a_concentration(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    """30.769 mL of oil in 470.769 mL of essence are 6.54 %."""
    assert share_plain(traced(keeper.book, lots.oil).ahead[lots.essence]) == {
        "carried": "30769",
        "carried_unit": "uL",
        "whole": "470769",
        "whole_unit": "uL",
        "concentration": "6.54",
        "concentration_unit": "%",
        "all_measured": True,
    }
