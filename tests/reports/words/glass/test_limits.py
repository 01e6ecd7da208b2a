"""Limits beside the figures of a card."""

import pytest
from msgspec.structs import replace

from ledger.service.glass.card import ServingCard
from ledger.service.glass.serving import serving
from reports.json.glass.serving import serving_plain
from reports.words.glass.limits import limit_table
from tests.keeper import Keeper
from tests.path import receive_all, walk_main_path


def test_a_daily_limit_of_nothing_at_all_is_told_as_passed_without_a_share(
    sqlite_keeper: Keeper,
) -> None:
    keeper, lots = sqlite_keeper, walk_main_path(sqlite_keeper)
    keeper.do(
        "limit",
        code="no-limonene",
        substance="limonene",
        value="0",
        unit="mg/kg body weight",
        basis="a-day",
        place="here",
        citation="a rule of the house",
    )
    found = serving(keeper.book, lots.packed)
    assert limit_table(found).rows[:2] == (
        ("limonene: 0 mg a day, adult of 60 kg", "PAST", "1"),
        ("limonene: 0 mg a day, child of 20 kg", "PAST", "1"),
    )
    ceilings = serving_plain(found)["concerns"][0]["ceilings"]
    assert [(item["percent"], item["passed"]) for item in ceilings] == [(None, True)] * 2


def markers_of(card: ServingCard) -> list[tuple[str, str]]:
    rows = (row for row in limit_table(card).rows if "alcohol" in row[0] or "sugar" in row[0])
    return [(row[0], row[1]) for row in rows]


YARDSTICK = "yardstick for food syrups unfit for beverage use, strength and sugar together"


def test_a_yardstick_of_strength_and_sugar_is_told_whole(sqlite_keeper: Keeper) -> None:
    """The syrup of the main path holds 611 g of sugar in a litre."""
    lots = walk_main_path(sqlite_keeper)
    assert markers_of(serving(sqlite_keeper.book, lots.packed)) == [
        (
            "US, alcohol in the bottle from 0.5 % vol: treated as an alcoholic beverage unless "
            "unfit for beverage use",
            "0.69 % vol REACHED",
        ),
        (f"US, alcohol in the bottle at most 12 % vol: {YARDSTICK}", "0.69 % vol"),
        (f"US, sugar in the bottle from 60 g/100mL: {YARDSTICK}", "61.1 g/100mL REACHED"),
    ]


@pytest.mark.parametrize(
    ("water", "told"), [("2.43L", "61.1 g/100mL REACHED"), ("2.52L", "59.7 g/100mL"), ("4L", None)]
)
def test_the_yardstick_stays_on_a_card_that_just_misses_it(
    sqlite_keeper: Keeper, water: str, told: str | None
) -> None:
    """By ICUMSA SPS-4 2.4 kg of sugar and 2.52 L of water are 59.7 g in 100 mL."""
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Orange syrup", kind="syrup", target="4L")
    sqlite_keeper.do("add", lot=code, source=lots.sugar, amount="2.4kg")
    sqlite_keeper.do("add", lot=code, source=lots.water, amount=water)
    found = dict(markers_of(serving(sqlite_keeper.book, code)))
    assert found.get(f"US, sugar in the bottle from 60 g/100mL: {YARDSTICK}") == told


def test_a_limit_for_words_is_told_where_the_label_claims_them(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    card = serving(sqlite_keeper.book, lots.packed)
    words = "UK, alcohol in the bottle at most 0.5 % vol: the words de-alcoholised"
    assert words not in [row for row, _ in markers_of(card)]
    claimed = replace(card, claim="uk-de-alcoholised")
    assert (words, "0.69 % vol PAST") in markers_of(claimed)


def test_a_limit_of_the_maker_on_alcohol_is_told_where_it_is_passed(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    told = {"substance": "alcohol", "unit": "% vol", "place": "here", "citation": "our own rule"}
    sqlite_keeper.do("limit", code="weak", value="0.6", basis="as-sold", **told)
    sqlite_keeper.do("limit", code="weaker", value="0.2", basis="as-served", **told)
    found = markers_of(serving(sqlite_keeper.book, lots.packed))
    assert ("here, alcohol in the bottle at most 0.6 % vol", "0.69 % vol PAST") in found
    assert not [row for row, _ in found if "0.2 % vol" in row]
