"""The day is that of the house."""

from datetime import UTC, date, datetime

from ledger.domain.entries import House
from ledger.service.desk.clock import (
    house_of,
    now_at_home,
    today,
    today_on,
    written_at,
    zone_of,
    zone_on,
)
from ledger.service.masters.material import materials
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.path import Lots

Walked = tuple[Keeper, Lots]


def test_house_materials_and_day_are_the_books(walked: Walked) -> None:
    keeper, _ = walked
    house = house_of(keeper.book)
    assert house is not None
    assert house.time_zone == "Europe/Dublin"
    assert [material.code for material in materials(keeper.book)] == [
        "b250", "carb", "orange-oil", "spirit", "sugar", "water",
    ]  # fmt: skip
    keeper.clock.now = datetime(2026, 7, 1, 23, 30, tzinfo=UTC)
    assert today(keeper.book) == date(2026, 7, 2)


def test_before_there_is_a_house_the_clock_is_that_of_utc() -> None:
    assert [str(zone_of(house)) for house in (None, make(House, time_zone="Asia/Tokyo"))] == [
        *("UTC", "Asia/Tokyo"),
    ]


def test_the_moment_and_the_day_are_those_of_the_house_and_the_last_entry_is_told(
    walked: Walked,
) -> None:
    keeper, _ = walked
    last = keeper.entries()[-1].recorded_at
    assert written_at(keeper.book) == last
    keeper.clock.now = datetime(2026, 7, 1, 22, 59, tzinfo=UTC)
    assert f"{now_at_home(keeper.book):%F %T %z}" == "2026-07-01 23:59:00 +0100"
    with keeper.reading() as connection:
        assert str(zone_on(connection)) == "Europe/Dublin"
        moments = (datetime(2026, 7, 1, 22, 59, tzinfo=UTC), datetime(2026, 7, 1, 23, tzinfo=UTC))
        assert [today_on(connection, now).day for now in moments] == [1, 2]
