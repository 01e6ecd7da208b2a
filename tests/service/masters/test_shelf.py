"""The starter shelf: what it says of a density is what is published, and every item can be had."""

import csv
from pathlib import Path

import pytest

from ledger.domain.entries import Material
from ledger.errors import InputError
from ledger.science.liquids.oiml_r22 import density
from ledger.service.account.shipped import read_shipped
from ledger.service.desk.book import How
from ledger.service.masters.shelf import Shelved, chosen, shelve, starter_shelf
from tests.keeper import Keeper

PUBLISHED = Path(__file__).parents[2] / "reference/essential_oil_density.csv"
ROWS = [row for row in read_shipped("shelf.toml")["material"] if "low" in row]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row["code"]))
def test_the_range_of_a_density_stands_in_the_table_of_published_ones(row: dict[str, str]) -> None:
    """tests/reference/essential_oil_density.csv, by the source that the shelf names."""
    with PUBLISHED.open(newline="") as file:
        ranges = [
            (float(known["low"]), float(known["high"]))
            for known in csv.DictReader(file)
            if known["source"].startswith(row["citation"]) and known["how"] == "seen"
        ]
    assert (float(row["low"]), float(row["high"])) in ranges


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row["code"]))
def test_a_density_is_the_middle_of_its_range_times_that_of_water(row: dict[str, str]) -> None:
    """Water by OIML R 22, at the lower temperature of the basis; to 0.001 g/mL."""
    water = density(0.0, float(row["basis"].partition("/")[2])) / 1000
    middle = (float(row["low"]) + float(row["high"])) / 2
    assert float(row["density"]) == pytest.approx(middle * water, abs=0.0006)
    assert row["basis"].startswith(row["density-temp"])


def test_everything_on_the_shelf_is_entered_with_its_caution(sqlite_keeper: Keeper) -> None:
    before = len(sqlite_keeper.entries())
    new = [item for item in starter_shelf() if item.code not in ("orange-oil", "spirit", "sugar")]
    done = shelve(sqlite_keeper.book, How("AB"), [i for i in new if i.code != "water"])
    assert len(sqlite_keeper.entries()) == before + len(done)
    told = [item.entry.facts for item in done]
    cautions = {facts.code: facts.caution for facts in told if isinstance(facts, Material)}
    assert cautions["wintergreen-oil"] == (
        "Nearly pure methyl salicylate: poisons children in teaspoons; keep it locked away."
    )
    assert [item.code for item in new if item.kind == "oil" and not cautions[item.code]] == []


def test_what_is_ticked_is_named_once_and_what_is_none_is_refused() -> None:
    assert [item.code for item in chosen("1-2 orange-oil cap")] == [
        *("orange-oil", "lemon-oil", "cap")
    ]
    assert [item.code for item in chosen("16,cap 2-2 5-4")] == ["cap", "lemon-oil"]
    assert chosen("1-16") == starter_shelf()
    assert chosen("") == ()
    assert chosen("all") == starter_shelf()
    with pytest.raises(InputError) as refused:
        chosen("orang-oil")
    assert refused.value.problems == (
        (
            '"orang-oil" is not on the starter shelf. Did you mean orange-oil or lemon-oil?',
            "Choose from: orange-oil, lemon-oil, lime-oil, grapefruit-oil, peppermint-oil, "
            "ginger-oil, clove-oil, wintergreen-oil, spirit, carbonate, sugar, water, "
            "citric-acid, bottle-30, bottle-250, cap; or all.",
        ),
    )


@pytest.mark.parametrize("word", ["17", "0", "1-100", "-2", "2-", "a-2", "all cap"])
def test_a_number_that_nothing_on_the_shelf_has_is_refused(word: str) -> None:
    with pytest.raises(InputError) as refused:
        chosen(word)
    assert refused.value.what.startswith(f'"{word.split()[0]}" is not on the starter shelf.')


def test_what_the_shelf_does_not_say_of_a_material_is_not_told() -> None:
    item = Shelved("tea", "Tea", "other")
    told = {name: getattr(item, name) for name in Shelved.__struct_fields__}
    assert {name: value for name, value in told.items() if value is not None} == {
        "code": "tea",
        "name": "Tea",
        "kind": "other",
    }
