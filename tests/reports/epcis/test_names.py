"""What things are called for others."""

import pytest

from ledger.errors import RefusedError
from ledger.service.recall.story import story_of
from reports.epcis import names as module
from reports.epcis.names import Names, names_of
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import Lots


def names(keeper: Keeper) -> Names:
    story = story_of(keeper.book)
    lots = {act[-1].lot.code: act[-1].lot for act in story.acts}
    return names_of(story.house, lots.values(), story.numbers)


def test_a_house_without_an_address_cannot_name_its_lots(walked: tuple[Keeper, Lots]) -> None:
    with pytest.raises(RefusedError) as raised:
        names(walked[0])
    assert raised.value.problems == (
        (
            "The house has no address on the web, below which its lots could be named for others.",
            "Say which with: pottle house --web URL",
        ),
    )


def test_a_lot_is_named_by_its_article_or_below_the_house(walked: tuple[Keeper, Lots]) -> None:
    """What was bought is not named by a number of the house, whatever it is called."""
    keeper, lots = walked
    keeper.do(
        "house",
        web="https://example.com/lots",
        gln="9521234000006",
        gtin="Orange essence=9521234543213; Sweet orange oil=9521234543206",
    )
    keeper.do("party", name="Quay Bar", gln="9521234000013")
    found = names(keeper)
    told = {act[-1].lot.code: act[-1].lot for act in story_of(keeper.book).acts}
    assert found.lot(told[lots.essence]) == "https://id.gs1.org/01/09521234543213/10/OE-001-5"
    assert found.lot(told[lots.syrup]) == "https://example.com/lots/OS-002-M/"
    assert found.lot(told[lots.oil]) == "https://example.com/lots/SOO-001-3/"
    assert (found.here, found.maker) == (
        "https://id.gs1.org/414/9521234000006",
        "https://id.gs1.org/417/9521234000006",
    )
    assert found.party("Quay Bar") == "https://id.gs1.org/417/9521234000013"
    assert found.party("A/B?") == "https://example.com/lots/party/A%2FB%3F"


def test_a_case_is_named_by_its_number_of_gs1_or_below_the_house(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    keeper.do("house", web="https://example.com/lots")
    found = names(keeper)
    assert found.case(7, None) == "https://example.com/lots/case/7"
    assert found.case(111, "4012345") == "https://id.gs1.org/00/040123450000001112"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
