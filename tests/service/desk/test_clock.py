"""The day is that of the house."""

from datetime import UTC, date, datetime

from ledger.service.desk.clock import house_of, today
from ledger.service.masters.material import materials
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
