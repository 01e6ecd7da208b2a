"""Figures have the doubt that their inputs bring, found by the card's own sums."""

import numpy
import pytest
from msgspec.structs import replace

from ledger.domain.masters.doubts import doubts
from ledger.science.contents.composition import Contents
from ledger.science.contents.serving import poured
from ledger.science.doubt.conformity import Verdict
from ledger.service.account.shipped import shipped
from ledger.service.glass.card import Pouring
from ledger.service.glass.doubted import DOSE, ETHANOL, SUGAR, VOLUME, Off, inputs_of, with_doubts
from ledger.service.glass.pours import HeldAgainst, pourings
from ledger.service.glass.serving import serving
from tests.keeper import Keeper
from tests.path import Lots

SYRUP = Contents(1_000_000.0, ethanol_mg=3_900.0, water_mg=520_000.0, sucrose_mg=598_000.0)


def _poured(off: Off) -> tuple[Pouring, ...]:
    against = HeldAgainst({}, shipped(), (("adult", 60),))
    return pourings(off.lot, [("as it is", off.lot)], 240_000, 7, against)


def _markers(way: Pouring) -> dict[str, tuple[float, float, Verdict, str | None]]:
    return {
        item.limit.code: (item.figure, item.doubt, item.verdict, item.by) for item in way.markers
    }


def test_sugar_and_strength_near_a_marker_are_too_close_to_tell() -> None:
    """59.8 of 60 g/100 mL and 0.494 of 0.5 % vol cannot be told with a cylinder and a scale."""
    inputs = inputs_of(SYRUP, {}, doubts(None))
    (way,) = with_doubts(_poured(Off(SYRUP, 1.0)), SYRUP, inputs, _poured)
    told = _markers(way)
    figure, doubt, verdict, by = told["us-food-syrup-sugar"]
    assert (round(figure, 2), verdict, by) == (59.8, Verdict.UNDECIDED, VOLUME)
    # By hand: 59.8 times the root of 1 % squared and 0.5 % squared.
    assert doubt == pytest.approx(59.8 * (0.01**2 + 0.005**2) ** 0.5, rel=1e-3)
    assert told["us-alcoholic-bottle"][2] is Verdict.UNDECIDED
    assert told["uk-low-alcohol"][2] is Verdict.BELOW


def test_the_doubt_is_what_a_monte_carlo_run_over_the_same_sums_finds() -> None:
    """JCGM 101: 4,000 draws of the inputs through the card's own sums."""
    inputs = inputs_of(SYRUP, {}, doubts(None))
    (way,) = with_doubts(_poured(Off(SYRUP, 1.0)), SYRUP, inputs, _poured)
    draws = numpy.random.default_rng(7)
    sizes = {name: draws.normal(1.0, item.standard, 4_000) for name, item in inputs.items()}
    strengths = [
        poured(
            replace(
                SYRUP,
                volume_ul=SYRUP.volume_ul * sizes[VOLUME][place],
                ethanol_mg=SYRUP.ethanol_mg * sizes[ETHANOL][place],
            ),
            240_000,
            7,
        ).abv
        for place in range(4_000)
    ]
    assert _markers(way)["us-alcoholic-glass"][1] == pytest.approx(
        2 * float(numpy.std(strengths)), rel=0.05
    )


def test_an_instrument_that_the_house_knows_better_decides(walked: tuple[Keeper, Lots]) -> None:
    """The same lot is in less doubt with a finer cylinder; the figure stays."""
    keeper, lots = walked
    before = serving(keeper.book, lots.packed).pourings[0].markers[0]
    keeper.do("house", doubt="cylinder=0.1; lot-volume=0.1; label-strength=0.05")
    after = serving(keeper.book, lots.packed).pourings[0].markers[0]
    assert before.figure == after.figure
    assert 0 < after.doubt < before.doubt / 3


def test_a_lot_of_bought_spirit_is_in_doubt_by_its_label(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    made = serving(keeper.book, lots.essence).made
    inputs = inputs_of(made.contents, made.received, doubts(None))
    plain = inputs_of(made.contents, made.received, doubts("label-strength=0"))
    assert inputs[ETHANOL].standard > plain[ETHANOL].standard
    assert {VOLUME, ETHANOL, SUGAR, DOSE} < inputs.keys()
