"""What a lot weighs leads from a weight to a volume, for spirit, water and mixtures alike."""

import pytest

from ledger.errors import RefusedError
from ledger.service.account.contents import contents_on
from tests.keeper import Keeper
from tests.service.account.test_volumes import received, there
from tests.service.glass.vanilla import problems


@pytest.fixture
def batch(sqlite_keeper: Keeper) -> str:
    return sqlite_keeper.opens("start", product="Blend", kind="blend", target="4L")


def test_weighed_spirit_makes_up_and_rinses(sqlite_keeper: Keeper, batch: str) -> None:
    """OIML R 22: 100 mL of 96 % spirit are 80.74 g."""
    spirit = received(sqlite_keeper, "spirit", "1kg")
    sqlite_keeper.do("add", lot=batch, source=spirit, amount="400mL")
    sqlite_keeper.do("makeup", lot=batch, volume="500mL", source=spirit)
    sqlite_keeper.do("filter", lot=batch, medium="paper", volume_in="500mL", volume_out="480mL")
    sqlite_keeper.do(
        "rinse", lot=batch, source=spirit, volume_in="30mL", volume_out="28mL", went_to="batch"
    )
    assert there(sqlite_keeper, batch)[0] == 508
    assert there(sqlite_keeper, spirit)[0] == 572  # g: 1000 - 500 * 0.8074 - 30 * 0.8074


def test_sugar_by_weight_is_still_no_liquid_to_rinse_with(
    sqlite_keeper: Keeper, batch: str
) -> None:
    sugar = received(sqlite_keeper, "sugar", "1kg")
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do(
            "rinse", lot=batch, source=sugar, volume_in="30mL", volume_out="28mL", went_to="batch"
        )
    assert problems(refused.value) == (
        (
            f"{sugar} is not counted by volume, so a cake cannot be rinsed with it.",
            "Name the liquid lot it was rinsed with.",
        ),
    )


def test_what_is_made_here_is_drawn_by_weight(sqlite_keeper: Keeper, batch: str) -> None:
    """ICUMSA SPS-4: syrup of 50 °Bx is 1.2296 kg/L at 20 °C."""
    sugar, water = received(sqlite_keeper, "sugar", "5kg"), received(sqlite_keeper, "water", "9kg")
    sqlite_keeper.do("add", lot=batch, source=sugar, amount="1kg")
    sqlite_keeper.do("add", lot=batch, source=water, amount="1kg")
    other = sqlite_keeper.opens("start", product="Other", kind="blend", target="1L")
    added = sqlite_keeper.do("add", lot=other, source=batch, amount="1229.6g")
    assert added.entry.postings[0].taken == pytest.approx(1_000_000, abs=100)


def test_spirit_is_as_strong_as_its_density_says_where_nothing_else_tells(
    sqlite_keeper: Keeper, batch: str
) -> None:
    """OIML R 22: 930.14 kg/m³ at 20 °C is 42.43 % mass, 50 % vol."""
    sqlite_keeper.do("material", code="weak", kind="ethanol", density="0.93014")
    weak = received(sqlite_keeper, "weak", "5kg")
    sqlite_keeper.do("add", lot=batch, source=weak, amount="930.14g")
    with sqlite_keeper.reading() as connection:
        told = contents_on(connection, batch)
    assert told.missing == ()
    assert round(told.contents.abv, 2) == 50.0
    assert there(sqlite_keeper, batch)[0] in (999, 1000)
