"""Contents, serving, cost, limits and the spirit account of a book that was really kept."""

import pytest

from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.account.contents import contents_on
from ledger.service.account.shipped import usual_concerns
from ledger.service.glass.card import ServingCard
from ledger.service.glass.cost import cost
from ledger.service.glass.serving import serving
from ledger.service.glass.spirit import spirit_account
from tests.keeper import Keeper
from tests.path import walk_main_path


def problems(error: LedgerError) -> tuple[tuple[str, str], ...]:
    return error.problems


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


def card(keeper: Keeper, code: str, **words: str) -> ServingCard:
    return serving(keeper.book, code, **words)


def test_a_syrup_is_poured_and_an_essence_dosed_first(keeper: Keeper) -> None:
    lots = walk_main_path(keeper)
    syrup, essence = card(keeper, lots.packed), card(keeper, lots.essence)
    assert [way.said for way in syrup.pourings] == ["as it is"]
    assert syrup.glasses_a_bottle == 8
    assert [way.said for way in essence.pourings] == ["30 mL in 1 L", "30 mL in 1 US gal"]
    assert syrup.pourings[0].glass.abv == pytest.approx(0.0857, abs=0.0005)
    assert essence.pourings[0].syrup_abv == pytest.approx(2.61, abs=0.01)


def test_a_glass_and_a_pour_can_be_asked_for(keeper: Keeper) -> None:
    lots = walk_main_path(keeper)
    asked = card(keeper, lots.packed, glass="12 US fl oz", pour="1:9")
    assert asked.pourings[0].glass.syrup_ul == pytest.approx(35_488, abs=1)
    assert asked.soda_parts == 9


def test_an_oil_without_constituents_is_told_with_what_such_oils_carry(keeper: Keeper) -> None:
    keeper.do("material", code="birch", name="Sweet birch oil", kind="oil", density="1.18")
    lot = keeper.opens("receive", material="birch", amount="100mL")
    batch = keeper.opens("start", product="Birch", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=lot, amount="10mL")
    assert card(keeper, batch).unrecorded == (("birch", ("methyl salicylate",)),)
    assert usual_concerns("Lemon oil") == ()


def test_a_received_lot_has_no_serving_card(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    with pytest.raises(RefusedError) as raised:
        serving(sqlite_keeper.book, lots.oil)
    assert problems(raised.value) == (
        (
            "SOO-001-3 is a received lot, which nobody pours as it is.",
            "Name a lot that was made of it; pottle trace SOO-001-3 --forward shows them.",
        ),
    )


@pytest.mark.parametrize(
    ("words", "what", "todo"),
    [
        ({"glass": "3g"}, '"3g" is not the size of a glass.', "Write a volume, such as 240mL."),
        (
            {"pour": "1:0"},
            '"1:0" is not a way to pour.',
            "Write 1:7 for one part to seven of soda water.",
        ),
        ({"dose": "3g"}, '"3g" is not a dose of essence.', "Write a volume, such as 30mL."),
        ({"child": "900"}, "A body weight of 900 cannot be.", "Write it in kg, from 1 to 300."),
    ],
)
def test_what_cannot_be_poured_is_refused_in_words(
    words: dict[str, str], what: str, todo: str, sqlite_keeper: Keeper
) -> None:
    lots = walk_main_path(sqlite_keeper)
    with pytest.raises((InputError, RefusedError)) as raised:
        serving(sqlite_keeper.book, lots.packed, **words)
    assert problems(raised.value) == ((what, todo),)


def test_a_cost_names_what_has_no_price_and_reckons_the_rest(keeper: Keeper) -> None:
    """By hand: 26 g of oil at 0.845 g/mL are 30.769 mL of 500 mL for 48.00, so 2.95.

    Of the 448 mL of essence that it made 30 mL went into a syrup of 3.8 L, of which 3.75 L were
    filled: 2.95 x 30 / 448 x 3.75 / 3.8 is 0.20.
    """
    lots = walk_main_path(keeper)
    found = cost(keeper.book, lots.packed, hour="20.00", margin="60")
    assert found.total_minor == 20
    assert [line.lot for line in found.lines if line.minor] == ["SOO-001-3"]
    assert len(found.missing) == 5
    assert (
        f"{lots.bottles}, b250, was received without a price, so it counts as nothing here."
        in dict(found.missing)
    )
    assert found.price is not None
    assert found.per_bottle is not None
    assert found.price == pytest.approx(float(found.per_bottle) / 0.4)


def test_a_margin_of_a_hundred_per_cent_is_refused(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    with pytest.raises(RefusedError) as raised:
        cost(sqlite_keeper.book, lots.packed, margin="100")
    assert problems(raised.value) == (
        (
            "A margin of 100 cannot be: it is a share of the price, from 0 to below 100 %.",
            "A price of twice the cost is a margin of 50 %.",
        ),
    )


def test_the_spirit_account_balances_and_tells_what_was_used(keeper: Keeper) -> None:
    walk_main_path(keeper)
    found = spirit_account(keeper.book, "2026-01-01", "2026-12-31").account
    assert found.received == pytest.approx(4.8)
    assert found.used == pytest.approx(0.44 * 0.96)
    assert found.difference == pytest.approx(0, abs=1e-9)
    assert found.sent["sale"] == pytest.approx(0.006854 * 1.5, abs=1e-5)


def with_vanilla(keeper: Keeper) -> str:
    """Return a litre of syrup with 100 mL of an extract of 35 % vol in it."""
    keeper.do("material", code="vanilla", name="Vanilla essence", kind="other")
    extract = keeper.opens("receive", material="vanilla", amount="500mL", abv="35")
    water = keeper.opens("receive", material="water", amount="5L")
    code = keeper.opens("start", product="Vanilla", kind="syrup", target="1L")
    keeper.do("add", lot=code, source=water, amount="900mL")
    keeper.do("add", lot=code, source=extract, amount="100mL")
    return code


def test_the_alcohol_of_an_extract_counts_in_the_strength(keeper: Keeper) -> None:
    """By hand: 35 mL of ethanol in a litre, but for what the two shrink by."""
    code = with_vanilla(keeper)
    assert contents_of(keeper, code) == "3.50 % vol, 0.0 g/L, 0.0 g/L sugar"
    with keeper.reading() as connection:
        assert contents_on(connection, code).missing == ()


def test_the_spirit_account_counts_an_extract_and_balances(keeper: Keeper) -> None:
    with_vanilla(keeper)
    found = spirit_account(keeper.book, "2026-01-01", "2026-12-31").account
    assert found.received == pytest.approx(0.175)
    assert found.used == pytest.approx(0.035)
    assert found.in_spirit == pytest.approx(0.14)
    assert found.in_making == pytest.approx(0.035)
    assert found.lost == pytest.approx(0, abs=1e-9)
    assert found.difference == pytest.approx(0, abs=1e-9)


def test_a_period_that_ends_before_it_begins_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        spirit_account(sqlite_keeper.book, "2026-03-01", "2026-02-01")
    assert problems(raised.value) == (
        (
            "The period would end on 2026-02-01, before it begins on 2026-03-01.",
            "Give --from the earlier day.",
        ),
    )
