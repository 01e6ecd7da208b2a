"""How much of a lot there is: its density, its amount in its own measure, what it can hold."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.amounts.quantity import MOST, Measure, Quantity
from ledger.domain.entries import (
    Material,
    Measurement,
    Receipt,
)
from ledger.domain.entries.choices import (
    Measured,
)
from ledger.domain.lots.state import (
    LotState,
    density_mg_per_l,
    in_measure_of,
    is_liquid,
    most_it_can_hold_ul,
)
from tests.domain.builders import (
    grams,
    lot,
    make,
    ml,
    oil,
    packed,
    pieces,
    powder,
)


def density(micro: int) -> Measurement:
    return Measurement(Measured.DENSITY, micro, "g/mL", "as written")


KNOWN = make(Material, density_mg_per_l=840_000)
RECEIVED = make(Receipt, density_mg_per_l=845_000)
DENSITIES: list[tuple[str, LotState, int | None]] = [
    ("nobody knows", oil(), None),
    ("as its material's", oil(material=KNOWN), 840_000),
    ("as received", oil(material=KNOWN, opening=RECEIVED), 845_000),
    (
        "as measured last",
        lot("O-1", density(850_000), density(851_000), kind="received", opening=RECEIVED),
        851_000,
    ),
    ("other readings do not count", lot("E-1", make(Measurement), density(850_000)), 850_000),
    (
        "as it is replayed, before all that was measured",
        replace(
            lot("O-1", density(850_000), kind="received", opening=RECEIVED),
            reckoned_mg_per_l=860_000,
        ),
        860_000,
    ),
    ("a reading of sugar is no density", lot("E-1", make(Measurement)), None),
]


@pytest.mark.parametrize(
    ("state", "mg_per_l"), [row[1:] for row in DENSITIES], ids=[row[0] for row in DENSITIES]
)
def test_the_density_is_the_best_that_is_known(state: LotState, mg_per_l: int | None) -> None:
    assert density_mg_per_l(state) == mg_per_l


HEAVY = powder(material=make(Material, density_mg_per_l=1_600_000))
EXCHANGED: list[tuple[str, LotState, Quantity, int | None]] = [
    ("a volume of a liquid", oil(), ml(30), 30_000),
    ("a weight of a solid", powder(), grams(15), 15_000),
    ("a number of bottles", packed(), pieces(3), 3_000_000),
    ("a weight of a liquid", oil(material=KNOWN), grams(25.2), 30_000),
    ("a volume of a solid", HEAVY, ml(10), 16_000),
    ("a weight of a liquid of unknown density", oil(), grams(25.2), None),
    ("a volume of a solid of unknown density", powder(), ml(10), None),
    ("pieces of a liquid", oil(material=KNOWN), pieces(3), None),
    ("a volume of bottles", packed(material=KNOWN), ml(30), None),
]


@pytest.mark.parametrize(
    ("state", "amount", "own"), [row[1:] for row in EXCHANGED], ids=[row[0] for row in EXCHANGED]
)
def test_an_amount_is_counted_in_the_lots_own_measure(
    state: LotState, amount: Quantity, own: int | None
) -> None:
    assert in_measure_of(state, amount) == own


@given(amount=st.integers(1, MOST), mg_per_l=st.integers(10_000, 23_000_000))
def test_volume_and_weight_are_exchanged_to_the_nearest_unit(amount: int, mg_per_l: int) -> None:
    known = make(Material, density_mg_per_l=mg_per_l)
    volume = in_measure_of(oil(material=known), Quantity(amount, Measure.MG, ""))
    weight = in_measure_of(powder(material=known), Quantity(amount, Measure.UL, ""))
    assert volume is not None
    assert weight is not None
    assert abs(volume - Fraction(amount * 10**6, mg_per_l)) <= Fraction(1, 2)
    assert abs(weight - Fraction(amount * mg_per_l, 10**6)) <= Fraction(1, 2)


def test_dissolved_solids_add_at_most_their_weight_in_water() -> None:
    state = lot(on_hand=9, on_hand_then=2_400_000, solids_mg=2_400_000)
    assert most_it_can_hold_ul(state) == 4_800_000
    assert most_it_can_hold_ul(lot(on_hand=450_000)) == 450_000


def test_what_is_weighed_and_known_to_fill_a_volume_is_a_liquid_too() -> None:
    assert [is_liquid(state) for state in (oil(), powder(), packed())] == [True, False, False]
    assert is_liquid(replace(powder(), reckoned_mg_per_l=1_300_000))
