"""Whose book a season is: its house.toml is read whole, or all that is wrong is told."""

from pathlib import Path

import pytest

from tests.service.copies.season_folder import GOOD, folder_with, problems_of


def test_a_folder_without_a_house_is_no_season(tmp_path: Path) -> None:
    problem = (
        f"There is no house.toml in the folder {tmp_path.name}.",
        "Name the folder of a season, which has one.",
    )
    assert problems_of(tmp_path) == (problem,)


def test_a_house_that_is_no_toml_is_told(tmp_path: Path) -> None:
    what = problems_of(folder_with(tmp_path, house_toml="name = "))[0][0]
    assert what.startswith("house.toml cannot be read as TOML: ")


@pytest.mark.parametrize("zone", ["[]", "{}", "3"])
def test_a_zone_that_is_no_text_is_told(zone: str, tmp_path: Path) -> None:
    house = GOOD["house.toml"].replace('"Europe/Dublin"', zone)
    assert problems_of(folder_with(tmp_path, house_toml=house)) == (
        ("house.toml has no text for time_zone.", 'Write it as: time_zone = "..."'),
    )


def test_lists_too_deep_in_a_house_are_told(tmp_path: Path) -> None:
    house = f"name = {'[' * 2000}"
    assert problems_of(folder_with(tmp_path, house_toml=house))[0] == (
        "house.toml cannot be read as TOML: a number is too long, or lists stand too deep in one "
        "another.",
        "Save it again as TOML in UTF-8.",
    )
