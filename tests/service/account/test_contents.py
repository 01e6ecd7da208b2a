"""What a lot contains: from one replay of what was put in, on both engines."""

from ledger.service.account.contents import contents_on
from tests.keeper import Keeper
from tests.path import walk_main_path
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
            f'Record it: pottle correct {number} --set abv=96% --because "from its papers"',
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
