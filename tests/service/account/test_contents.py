"""What a lot contains: from one replay of what was put in, on both engines."""

from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.service.account.contents import base_syrups, contents_on
from ledger.service.account.replay import received_lot
from ledger.store.read.received import ReceivedRow
from tests.keeper import Keeper
from tests.path import walk_main_path
from tests.service.engines import ON_EACH_ENGINE
from tests.service.glass.vanilla import with_vanilla


def contents_of(keeper: Keeper, code: str) -> str:
    with keeper.reading() as connection:
        found = contents_on(connection, code).contents
    oil = found.oils().get("orange-oil")
    grams = oil.mass_mg / found.volume_ul if oil else 0
    return f"{found.abv:.2f} % vol, {1000 * grams:.1f} g/L, {found.sugar_g_per_l:.1f} g/L sugar"


def test_an_essence_and_its_syrup_contain_what_went_in(keeper: Keeper) -> None:
    """By hand: 26 g of oil are 30.77 mL; 420 mL of 96 % in 450.77 mL are 89.45 % vol.

    430 mL of that stay, and 20 mL of 96 % make it up to 450 mL: 89.74 % vol. The syrup is 50 % mass
    sugar but for the essence; 3.93 L are reckoned, 3.8 L measured, so 130 mL of it were lost.
    """
    lots = walk_main_path(keeper)
    assert contents_of(keeper, lots.essence) == "89.74 % vol, 55.1 g/L, 0.0 g/L sugar"
    assert contents_of(keeper, lots.syrup) == "0.69 % vol, 0.4 g/L, 611.0 g/L sugar"
    assert contents_of(keeper, lots.packed) == contents_of(keeper, lots.syrup)


@ON_EACH_ENGINE
def test_a_correction_of_an_addition_changes_the_contents(keeper: Keeper) -> None:
    lots = walk_main_path(keeper)
    before = contents_of(keeper, lots.essence)
    corrected = (
        entry for entry in keeper.entries() if entry.kind == "add" and entry.draft.corrects
    )
    addition = max(entry.seq for entry in corrected)
    keeper.do("correct", entry=str(addition), changes="amount=20g", because="misread again")
    assert contents_of(keeper, lots.essence) != before


def test_a_missing_strength_is_named_with_how_to_record_it(keeper: Keeper) -> None:
    keeper.do("material", code="vodka", kind="ethanol")
    lot = keeper.opens("receive", material="vodka", amount="1L")
    batch = keeper.opens("start", product="Test", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=lot, amount="100mL")
    with keeper.reading() as connection:
        found = contents_on(connection, batch)
    number = keeper.entries()[-3].seq
    assert found.missing == (
        (
            f"The strength of {lot}, vodka, is not in the book; what it brings is not known.",
            f'Record it: pottle correct {number} --set abv=FIGURE% --because "from its papers"',
        ),
    )
    assert found.contents.volume_ul == 100_000


def test_a_measured_strength_comes_before_the_stated_one(keeper: Keeper) -> None:
    """An alcoholmeter that shows 97.0 at 25 °C stands in 95.98 % vol at 20 °C (OIML R 22)."""
    lots = walk_main_path(keeper)
    keeper.do("measure", lot=lots.spirit, what="abv", reading="97.0", temp="25")
    with keeper.reading() as connection:
        found = contents_on(connection, lots.essence)
    assert f"{lots.spirit}, Neutral spirit: 95.98 % vol, read 97 at 25 °C." in found.assumed


def test_the_alcohol_of_an_extract_counts_in_the_strength(keeper: Keeper) -> None:
    """By hand: 35 mL of ethanol in a litre, but for what the two shrink by."""
    code = with_vanilla(keeper)
    assert contents_of(keeper, code) == "3.50 % vol, 0.0 g/L, 0.0 g/L sugar"
    with keeper.reading() as connection:
        assert contents_on(connection, code).missing == ()


ROW = ReceivedRow(
    number=1, code="SP-1", measure=Measure.UL, entry=1, material="spirit", name="Spirit",
    sort=MaterialKind.ETHANOL, abv_mpct=None, material_abv_mpct=None, read_abv_micro=None,
    read_abv_temp_mdegc=None, density_mg_per_l=None, material_density_mg_per_l=None,
    material_density_temp_mdegc=None, read_density_mg_per_l=None, read_density_temp_mdegc=None,
)  # fmt: skip
"""A lot of spirit of which nothing is known."""


@pytest.mark.parametrize(
    ("known", "abv", "said"),
    [
        ({}, None, ""),
        ({"material_abv_mpct": 95_000}, 95.0, "by its material"),
        ({"material_abv_mpct": 95_000, "abv_mpct": 96_000}, 96.0, "by its papers"),
        ({"abv_mpct": 0}, 0.0, "by its papers"),
        (
            {"abv_mpct": 96_000, "read_abv_micro": 95_500_000},
            95.5,
            "as read, its temperature not recorded",
        ),
        (
            {"read_abv_micro": 95_500_000, "read_abv_temp_mdegc": 20_000},
            95.5,
            "read 95.5 at 20 °C",
        ),
        (
            {"read_abv_micro": 95_500_000, "read_abv_temp_mdegc": 45_500},
            95.5,
            "as read; 45.5 °C is outside the table",
        ),
        ({"density_mg_per_l": 930_140}, 50.0, "by its density, by its papers"),
        (
            {"density_mg_per_l": 1, "read_density_mg_per_l": 930_140},
            50.0,
            "by its density, as read",
        ),
        ({"density_mg_per_l": 500_000}, None, "by its density, by its papers"),
        ({"density_mg_per_l": 930_140, "sort": MaterialKind.ACID}, None, ""),
    ],
)
def test_the_best_known_strength_of_a_received_lot_says_where_it_is_from(
    known: dict[str, Any], abv: float | None, said: str
) -> None:
    """OIML R 22: spirit of 50 % vol weighs 930.14 kg/m³ at 20 °C, and the table ends at 40 °C."""
    found = received_lot(replace(ROW, **known))
    assert (found.abv and round(found.abv, 2), found.abv_from) == (abv, said)


@pytest.mark.parametrize(
    ("known", "kg_per_m3", "said"),
    [
        ({}, None, ""),
        ({"material_density_mg_per_l": 845_000}, 845.0, "by its material"),
        (
            {"material_density_mg_per_l": 845_000, "density_mg_per_l": 846_000},
            846.0,
            "by its papers",
        ),
        ({"density_mg_per_l": 846_000, "read_density_mg_per_l": 847_000}, 847.0, "as read"),
    ],
)
def test_the_best_known_density_of_a_received_lot_says_where_it_is_from(
    known: dict[str, Any], kg_per_m3: float | None, said: str
) -> None:
    found = received_lot(replace(ROW, sort=MaterialKind.OIL, **known))
    assert (found.density_kg_per_m3, found.density_from) == (kg_per_m3, said)


def test_the_base_syrup_in_lots_is_told_where_there_is_sugar(sqlite_keeper: Keeper) -> None:
    """By hand: 2.4 kg of sugar in 2.3957 kg of water and 1.4 g that its essence brings."""
    lots = walk_main_path(sqlite_keeper)
    numbers = {e.draft.opens.code: e.stands_for for e in sqlite_keeper.entries() if e.draft.opens}
    made = (lots.oil, lots.spirit, lots.carb, lots.sugar, lots.water, lots.essence, lots.syrup)
    with sqlite_keeper.reading() as connection:
        told = base_syrups(connection, [numbers[code] for code in made])
    assert told == {lots.syrup: 50_030}
