"""What is foretold of a syrup is its essence's dose; a band that says nothing is none."""

import pytest

from ledger.service.glass import haze
from ledger.service.glass.foretell import foretell_lot
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
    assert gap.what.startswith(
        "By which strength it is clear cannot be foretold: the band would be "
    )
    assert head(found)[-1] == "By which strength it is clear cannot be foretold."
    assert told.ntu.glass
