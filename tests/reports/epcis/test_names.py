"""What things are called for others, and what is wrong with a number of GS1."""

import pytest

from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.recall.story import story_of
from reports.epcis.names import Names, names_of
from tests.keeper import Keeper
from tests.path import Lots


def names(keeper: Keeper, *articles: str, gln: str | None = None) -> Names:
    story = story_of(keeper.book)
    lots = {act[-1].lot.code: act[-1].lot for act in story.acts}
    return names_of(story.house, lots.values(), articles, gln)


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
    keeper, lots = walked
    keeper.do("house", web="https://example.com/lots")
    found = names(keeper, f"{lots.essence}=9521234543213", gln="9521234543213")
    told = {act[-1].lot.code: act[-1].lot for act in story_of(keeper.book).acts}
    assert found.lot(told[lots.essence]) == "https://id.gs1.org/01/09521234543213/10/OE-001-5"
    assert found.lot(told[lots.syrup]) == "https://example.com/lots/OS-002-M/"
    assert (found.here, found.maker) == (
        "https://id.gs1.org/414/9521234543213",
        "https://id.gs1.org/417/9521234543213",
    )
    assert found.party("A/B?") == "https://example.com/lots/party/A%2FB%3F"


def test_all_that_is_wrong_with_numbers_is_told_at_once(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    keeper.do("house", web="https://example.com/lots")
    with pytest.raises(LedgerError) as raised:
        names(keeper, "9521234543213", "Cola=9521234543213", "Orange syrup=12", gln="952")
    assert raised.value.problems == (
        (
            "9521234543213 does not say of what it is the number.",
            'Write what it is, =, and its number, as in "Orange syrup, 250 mL=9521234543213".',
        ),
        (
            'There is no lot of "Cola".',
            "Write what it is as this shows it: pottle stock --all",
        ),
        ("12 is no number of an article.", "Give its 8, 12, 13 or 14 digits (GTIN)."),
        ("952 is no number of a place.", "Give its 13 digits (GLN)."),
    )


def test_a_number_is_of_one_article(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    keeper.do("house", web="https://example.com/lots")
    with pytest.raises(InputError) as raised:
        names(keeper, "Orange syrup=9521234543213", "Orange essence=9521234543213")
    assert raised.value.problems == (
        (
            "09521234543213 is given for Orange essence and for Orange syrup.",
            "Each article has a number of its own.",
        ),
    )
