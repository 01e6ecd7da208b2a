"""Figures have the doubt that their inputs bring, found by the card's own sums."""

import numpy
import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.doubts import doubts
from ledger.science.contents.composition import OIL, Contents, Part, PartKey
from ledger.science.contents.received import ReceivedLot
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


def test_each_input_is_off_by_what_it_was_measured_with_and_an_oil_by_its_papers_too() -> None:
    """By hand: 3, 4, 5 and 5, 12, 13; half of it all, since two standard errors are told."""
    told = {"cylinder": 3, "scale": 4, "density": 4, "certificate": 12, "lot-volume": 1}
    names = ("poured-oil", "weighed-oil", "acid", "glycerol")
    lot = replace(SYRUP, parts={PartKey(OIL, name): Part(1.0, 1.0) for name in names})
    oil, other, volume, weight = MaterialKind.OIL, MaterialKind.OTHER, Measure.UL, Measure.MG
    kinds = ((oil, volume), (oil, weight), (other, weight), (other, volume))
    received = {
        name: ReceivedLot(name, name, name, *kind) for name, kind in zip(names, kinds, strict=True)
    }
    spirits = {
        f"{abv}": ReceivedLot(f"{abv}", "spirit", "", MaterialKind.ETHANOL, volume, abv)
        for abv in (96.0, 40.0)
    }
    found = inputs_of(lot, received | spirits, {**told, "label-strength": 1.6})
    assert {name: item.standard for name, item in found.items()} == pytest.approx(
        {
            VOLUME: 0.005,
            ETHANOL: 0.025,
            SUGAR: 0.02,
            DOSE: 0.015,
            "poured-oil": 0.065,
            "weighed-oil": (0.04**2 + 0.12**2) ** 0.5 / 2,
            "acid": 0.02,
            "glycerol": 0.025,
        }
    )
