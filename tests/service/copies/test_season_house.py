"""Whose book a season is: its house.toml is read whole, or all that is wrong is told."""

from pathlib import Path

import pytest

from ledger.service.copies.season_house import Story, read_house, story_problems
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


HOUSE = """
currency = "EUR"
time_zone = "Moon/Sea"
colour = "red"
address = " "

[story]
cloudy = "oil"
record = 7
ending = "good"
"""


def test_all_that_is_wrong_with_a_house_and_its_story_is_told_at_once(tmp_path: Path) -> None:
    (tmp_path / "house.toml").write_text(HOUSE, encoding="utf-8")
    house, story, problems = read_house(tmp_path)
    assert (house, story) == (None, None)
    told = dict(problems)
    assert list(told) == [
        "house.toml does not say the name.",
        'house.toml has "colour", which a season does not know.',
        "house.toml has no text for address.",
        "house.toml does not say the labels.",
        "house.toml does not say the culprit.",
        "house.toml has no text for record.",
        'house.toml has "ending", which a season does not know.',
        'house.toml has "Moon/Sea", which is no time zone.',
    ]
    assert told["house.toml does not say the name."] == 'Write it as: name = "..."'
    assert told["house.toml has no text for record."] == 'Write it as: record = "..."'
    assert told['house.toml has "ending", which a season does not know.'] == (
        "Here it knows: cloudy, record, labels, culprit, trial."
    )
    assert told['house.toml has "Moon/Sea", which is no time zone.'] == (
        "Write one such as Europe/Dublin."
    )


def test_a_house_without_a_story_lacks_all_of_it_and_one_without_a_zone_has_the_usual(
    tmp_path: Path,
) -> None:
    head, _, story = GOOD["house.toml"].partition("[story]")
    (tmp_path / "house.toml").write_text(f"story = 3\n{head}", encoding="utf-8")
    assert [what for what, _ in read_house(tmp_path)[2]] == [
        f"house.toml does not say the {name}." for name in ("cloudy", "record", "labels", "culprit")
    ]
    bare = "".join(line for line in head.splitlines(keepends=True) if "time_zone" not in line)
    (tmp_path / "house.toml").write_text(f"{bare}[story]{story}", encoding="utf-8")
    assert read_house(tmp_path)[2] == []


def test_what_a_story_tells_of_is_the_nickname_of_a_row() -> None:
    told = Story("a", "b", "c", "d", "e")
    assert list(story_problems(told, {"a", "c", "d", None})) == [
        (
            f'house.toml has "{name}" as {field}, which no row gives as its nickname.',
            "Put right the nickname.",
        )
        for name, field in (("b", "record"), ("e", "trial"))
    ]
    assert list(story_problems(Story("a", "a", "a", "a"), {"a"})) == []
    assert list(story_problems(None, set())) == []
