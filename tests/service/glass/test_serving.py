"""What a glass of a lot delivers, from a book that was really kept."""

import pytest

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import Bottle, Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.errors import InputError, RefusedError
from ledger.science.contents.composition import OIL, Contents, Part, PartKey
from ledger.science.contents.serving import Glass
from ledger.science.liquids.flammable import flammable
from ledger.service.account.shipped import usual_concerns
from ledger.service.glass.card import ServingCard
from ledger.service.glass.doses import USUAL
from ledger.service.glass.serving import _a_bottle, _flammable, _swig, _there, serving
from ledger.service.glass.serving import card as usual_card
from tests.domain.builders import lot, make, struck
from tests.keeper import Keeper
from tests.path import walk_main_path
from tests.service.glass.vanilla import problems


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
    birch = keeper.opens("receive", material="birch", amount="100mL")
    batch = keeper.opens("start", product="Birch", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=birch, amount="10mL")
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


def test_bodies_weigh_from_one_to_three_hundred_kilograms(sqlite_walked: Keeper) -> None:
    book, code = sqlite_walked.book, "OS-002-M"
    found = serving(book, code, adult="300", child="1")
    assert [weight for _, weight in found.bodies] == [300, 1]
    for weight in ("0", "301"):
        with pytest.raises(RefusedError) as raised:
            serving(book, code, adult=weight)
        what = f"A body weight of {weight} cannot be."
        assert problems(raised.value) == ((what, "Write it in kg, from 1 to 300."),)


def test_a_lot_of_no_spirit_and_no_water_is_no_flammable_liquid() -> None:
    """By hand: of 90 mg of ethanol and 10 mg of water nine tenths of the mass are ethanol."""
    strong = Contents(100.0, ethanol_mg=90.0, water_mg=10.0)
    assert _flammable(strong) == flammable(0.9, strong.abv)
    assert _flammable(strong) is not None
    assert _flammable(Contents(100.0, water_mg=100.0)) is None
    assert _flammable(Contents(100.0, sucrose_mg=100.0)) is None


SIZE = parse_quantity("250mL")
GLASS = Glass(30_000.0, 210_000.0, Contents())


def test_glasses_are_told_of_a_bottle_and_of_all_that_is_there_and_none_is_begun() -> None:
    """By hand: 250 mL are 8 glasses of 30 mL and a third; 3 such bottles are 25."""
    packed = lot(
        kind="packed",
        measure=Measure.UEACH,
        on_hand=3_000_000,
        opening=make(Bottle, size=SIZE),
    )
    jar = lot(on_hand=449_999)
    assert [_a_bottle(each, GLASS) for each in (packed, jar)] == [8, None]
    assert [_there(each, GLASS, None) for each in (packed, jar)] == [25, 14]
    assert _there(lot(on_hand=-30_000), GLASS, None) == 0


def test_an_essence_counts_as_the_syrup_that_it_would_flavour() -> None:
    """By hand: 450 mL are 15 doses of 30 mL, each of 1.03 L of syrup: 515 glasses."""
    assert _there(lot(on_hand=450_000), GLASS, USUAL) == 515


def test_a_teaspoon_of_an_essence_has_its_share_of_what_is_of_concern() -> None:
    """By hand: 5 mL of 100 mL with 2 g of an oil of which half is safrole have 50 mg."""
    oil = Material("o", "O", MaterialKind.OIL, constituents=(Constituent("safrole", 500_000),))
    made = Contents(100_000.0, ethanol_mg=70_000.0, parts={PartKey(OIL, "o"): Part(2_000.0, 2.0)})
    assert _swig(made, {"o": oil}) == {"safrole": pytest.approx(50.0)}
    assert _swig(Contents(), {"o": oil}) == {}


def test_bottles_whose_filling_was_struck_are_no_glasses() -> None:
    gone = struck(lot(kind="packed", measure=Measure.UEACH, opening=make(Bottle, size=SIZE)))
    assert (_a_bottle(gone, GLASS), _there(gone, GLASS, None)) == (None, 0)


def test_a_card_is_told_of_what_is_made_here_and_has_each_mass_in_a_glass(
    sqlite_walked: Keeper,
) -> None:
    assert usual_card(sqlite_walked.book, "SOO-001-3") is None
    found = usual_card(sqlite_walked.book, "OS-002-M")
    assert found is not None
    assert found.glass_ul == 240_000
    assert found == serving(sqlite_walked.book, "OS-002-M")
    for way in found.pourings:
        told = [(item.concern.substance, item.concern.mg_per_glass) for item in way.concerns]
        assert [*way.masses_mg.items()] == told
