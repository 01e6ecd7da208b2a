"""What is foretold of a syrup is its essence's dose; a band that says nothing is none."""

import re
from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Foretold, Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.forecasts import Carried
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.composition import OIL, Contents, Part, PartKey
from ledger.science.haze.drops import Range
from ledger.science.haze.narrowed import Narrowed
from ledger.science.haze.outlook import SYRUP_BRIX
from ledger.science.haze.strength import Band, oil_of
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3
from ledger.science.liquids.sps4 import density as sugar_density
from ledger.service.account.mixed import Mixed, mixed_of
from ledger.service.account.oils import known_oil, typical
from ledger.service.account.shipped import solubilities
from ledger.service.glass import haze
from ledger.service.glass.doses import USUAL
from ledger.service.glass.foretell import facts_of, foretell_lot
from ledger.service.glass.haze import _dose, _lacking, _mass_percent, _served, _spirit
from reports.json.glass.foretell import foretell_answer
from reports.words.glass.foretell import head
from tests.keeper import Keeper
from tests.path import make_essence, receive_all


def test_the_greatest_dose_of_a_syrup_is_that_of_the_essence_in_it(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    essence = make_essence(keeper, lots)
    syrup = keeper.opens("start", product="Orange syrup", kind="syrup", target="1L")
    keeper.do("add", lot=syrup, source=lots.water, amount="500mL")
    keeper.do("add", lot=syrup, source=lots.sugar, amount="750g")
    assert foretell_lot(keeper.book, syrup, "AB").dose_ml_per_litre is None
    keeper.do("add", lot=syrup, source=essence, amount="30mL")
    of_essence = foretell_lot(keeper.book, essence, "AB").dose_ml_per_litre
    of_syrup = foretell_lot(keeper.book, syrup, "AB").dose_ml_per_litre
    assert of_essence is not None
    # The drinks differ by a trace of spirit, which holds a little more.
    assert of_syrup == pytest.approx(of_essence, rel=0.05)


def test_a_band_too_wide_to_say_anything_cannot_be_foretold(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The bands of today's calibration are 20 to 41 points wide, so the limit is drawn in here."""
    keeper = sqlite_keeper
    essence = make_essence(keeper, receive_all(keeper))
    assert haze.TOO_WIDE == 60
    assert foretell_answer(foretell_lot(keeper.book, essence, "AB"), None).clear_by_abv
    monkeypatch.setattr(haze, "TOO_WIDE", 10.0)
    found = foretell_lot(keeper.book, essence, "AB")
    told = foretell_answer(found, None)
    assert (told.clear_by_abv, told.dissolved_at_made_strength) == (None, None)
    (gap,) = told.missing
    assert re.fullmatch(
        r"By which strength it is clear cannot be foretold: the band would be \d+ points wide\.",
        gap.what,
    )
    assert gap.what_to_do == (
        'Record what is in the oil: pottle material change CODE --constituents "NAME SHARE%"'
    )
    assert head(found)[-1] == "By which strength it is clear cannot be foretold."
    assert told.ntu.glass


def test_what_is_lacking_is_told_with_what_to_do(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    empty = keeper.opens("start", product="Plain", kind="essence", target="1L")
    keeper.do("add", lot=empty, source=lots.water, amount="500mL")
    found = foretell_lot(keeper.book, empty, "AB")
    assert found.gaps == (
        ("There is no oil in it.", "Add it first, or name another."),
        ("There is no spirit in it.", "Add it first, or record its strength."),
    )
    assert (found.kinds, found.clear_by, found.glass) == ((), None, None)
    assert facts_of(found) == Foretold("none")


def test_what_is_kept_of_a_forecast_is_each_figure_in_its_place(sqlite_keeper: Keeper) -> None:
    essence = make_essence(sqlite_keeper, receive_all(sqlite_keeper))
    told = replace(
        foretell_lot(sqlite_keeper.book, essence, "AB"),
        kinds=("orange", "lemon"),
        carried=Carried.YES,
        spirit_abv=80.5,
        clear_by=Band(60.0, 70.0, 80.0),
        neat=Range(1.0, 2.0),
        syrup=Range(3.0, 4.0),
        glass=Range(5.0, 6.0),
        dose_ml_per_litre=Range(7.0, 8.0),
        narrowed=Narrowed(0.5, 1.5, 11, Fraction(9, 10)),
    )
    assert facts_of(told) == Foretold(
        "orange, lemon", Carried.YES, 80_500, 60_000, 70_000, 80_000, 1_000, 2_000, 3_000, 4_000,
        5_000, 6_000, 7_000, 11, 500_000, 1_500_000,
    )  # fmt: skip


def mixed(mass_mg: float, volume_ul: float) -> Mixed:
    return Mixed(oil_of((), solubilities()), mass_mg, volume_ul, (), (), ())


def test_the_strength_of_the_spirit_is_of_what_is_no_oil_and_never_above_a_hundred() -> None:
    """By hand: 78.924 g of ethanol are 100 mL, in 200 mL of which 50 mL are oil two thirds."""
    ethanol = 100_000 * ETHANOL_KG_PER_M3 / 1000
    made = Contents(200_000.0, ethanol_mg=ethanol)
    assert _spirit(made, mixed(40_000, 50_000)) == pytest.approx((0.25, 200 / 3))
    assert _spirit(made, mixed(90_000, 110_000)) == (0.55, 100.0)
    assert _spirit(made, mixed(180_000, 200_000)) == (1.0, 0.0)


def test_the_mass_of_ethanol_is_a_share_of_it_and_the_water() -> None:
    assert _mass_percent(Contents(1.0, ethanol_mg=30.0, water_mg=10.0, sucrose_mg=9.0)) == 75
    assert _mass_percent(Contents(1.0)) == 0


def test_what_is_lacking_is_oil_and_of_what_is_no_syrup_spirit() -> None:
    oil = ("There is no oil in it.", "Add it first, or name another.")
    spirit = ("There is no spirit in it.", "Add it first, or record its strength.")
    told = [
        _lacking(mixed(mass, 1.0), strength, is_syrup)
        for mass in (0, 1)
        for strength in (0, 80)
        for is_syrup in (False, True)
    ]
    assert told == [[oil, spirit], [oil], [oil], [oil], [spirit], [], [], []]


def test_an_essence_is_told_in_the_syrup_that_it_is_dosed_into_and_a_syrup_as_it_is() -> None:
    """By hand: 30 mL of 300 mL with 3 g of oil are 0.3 g in 1.03 L of syrup, an eighth a glass.

    Simple syrup of 60 °Bx weighs 1.287 kg/L at 20 °C (ICUMSA SPS-4) and water 0.998, so a part of
    it to seven of water are 9.33 °Bx.
    """
    made = Contents(300_000.0, ethanol_mg=200_000.0, water_mg=50_000.0)
    syrup, glass = _served(made, mixed(3_000, 3_500), USUAL, 7)
    assert syrup.oil_mg_per_l == pytest.approx(300 / 1.03, rel=1e-3)
    assert glass.oil_mg_per_l == pytest.approx(syrup.oil_mg_per_l / 8)
    assert syrup.brix == SYRUP_BRIX
    heavy, water = sugar_density(0.6, 20.0), sugar_density(0, 20.0)
    assert glass.brix == pytest.approx(60 * heavy / (heavy + 7 * water), rel=1e-9)
    assert glass.brix == pytest.approx(9.33, abs=0.01)
    assert glass.abv == pytest.approx(syrup.abv / 8, rel=1e-3)
    itself, drink = _served(made, mixed(3_000, 3_500), None, 4)
    assert (itself.oil_mg_per_l, itself.brix) == pytest.approx((10_000, 0.0))
    assert (drink.oil_mg_per_l, drink.abv) == pytest.approx((2_000, made.abv / 5))


def test_the_most_of_an_essence_is_told_for_what_a_glass_holds_and_a_litre_at_the_most() -> None:
    """By hand: 1 mg/L in a glass are 8 in syrup, so of 80 mg/L in the essence 1 part to 9."""
    assert _dose(Range(1.0, 5.0), 80.0, 7) == pytest.approx((1000 * 8 / 72, 1000))
    assert _dose(Range(9.0, 10.0), 80.0, 7) == pytest.approx((9000, 1000))
    assert _dose(Range(0.0, 11.0), 80.0, 7) == Range(0.0, 1000.0)


def test_oils_count_as_one_by_their_mass_and_one_of_which_nothing_is_known_is_named(
    sqlite_keeper: Keeper,
) -> None:
    """By hand: of 30 g of orange, 10 of lemon and 60 of bay 30, 10 and 60 % of all."""
    keeper = sqlite_keeper
    keeper.do("material", code="lemon", name="Lemon oil", kind="oil", density="0.85")
    keeper.do("material", code="bay", name="Bay oil", kind="oil", density="0.95")
    parts = {
        PartKey(OIL, code): Part(mass, 2 * mass)
        for code, mass in (("lemon", 10.0), ("orange-oil", 30.0), ("bay", 60.0), ("none", 0.0))
    }
    with keeper.reading() as connection:
        found = mixed_of(connection, Contents(1_000.0, parts=parts))
    orange = known_oil(Material("orange-oil", "Sweet orange oil", MaterialKind.OIL,
        constituents=(Constituent("limonene", 940_000),)))  # fmt: skip
    lemon = typical("lemon")
    assert orange is not None
    told = [
        (share.solute.substance, share.low * weight, share.high * weight)
        for known, weight in ((orange, 0.3), (lemon, 0.1))
        for share in known.oil.shares
    ]
    assert [(s.solute.substance, s.low, s.high) for s in found.oil.shares] == told
    assert (found.mass_mg, found.volume_ul, found.kinds) == (100.0, 200.0, ("orange", "lemon"))
    assert found.rests_on == (orange.rests_on, lemon.rests_on)
    assert [what.partition(" is made of")[0] for what, _ in found.gaps] == [
        *("What Bay oil", "What none"),
    ]


def test_a_band_that_says_nothing_is_told_with_how_wide_it_is() -> None:
    what, _ = haze._says_nothing(Band(10.2, 30.0, 80.9))
    assert what == (
        "By which strength it is clear cannot be foretold: the band would be 71 points wide."
    )
