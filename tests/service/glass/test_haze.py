"""What is foretold of a syrup is its essence's dose; a band that says nothing is none."""

import re
from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Foretold
from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import Range
from ledger.science.haze.narrowed import Narrowed
from ledger.science.haze.strength import Band
from ledger.service.glass import haze
from ledger.service.glass.foretell import facts_of, foretell_lot
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
