"""The cost of a lot of a book that was really kept."""

from fractions import Fraction

import pytest

from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import Bottle, Start
from ledger.domain.entries.choices import ProductKind
from ledger.domain.lots.state import LotState
from ledger.errors import RefusedError
from ledger.science.contents.cost import NANO, Cost
from ledger.service.glass.cost import (
    _lost,
    _per_bottle,
    _per_glass,
    _per_ml,
    _price,
    cost,
    read_margin,
)
from tests.domain.builders import lot, make
from tests.keeper import Keeper
from tests.path import walk_main_path
from tests.service.glass.vanilla import problems


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


def test_a_second_draw_takes_its_share_of_what_was_added_since(sqlite_keeper: Keeper) -> None:
    """By hand: 100 mL at 10.00 a litre cost 1.00, and half of it 0.50.

    With 50 mL at 30.00 a litre in its place the jar is worth 2.00, and half of that is 1.00.
    """
    cheap, dear = (
        sqlite_keeper.do("receive", material="spirit", amount="1L", cost=price).code
        for price in ("10.00", "30.00")
    )
    jar, first, second = (
        sqlite_keeper.opens("start", product=name, kind="essence", target="100mL")
        for name in ("Jar", "First", "Second")
    )
    sqlite_keeper.do("add", lot=jar, source=cheap, amount="100mL")
    sqlite_keeper.do("add", lot=first, source=jar, amount="50mL")
    sqlite_keeper.do("add", lot=jar, source=dear, amount="50mL")
    sqlite_keeper.do("add", lot=second, source=jar, amount="50mL")
    found = {code: cost(sqlite_keeper.book, code) for code in (jar, first, second)}
    assert {code: card.total_minor for code, card in found.items()} == {
        jar: 200, first: 50, second: 100,
    }  # fmt: skip
    lines = {line.lot: (line.drawn, line.minor) for line in found[second].lines}
    assert lines == {cheap: (25_000, 25), dear: (25_000, 75)}
    assert [line.lot for line in found[first].lines] == [cheap]


def test_a_price_is_of_a_volume_or_of_a_bottle_of_it_and_of_a_weight_there_is_none() -> None:
    """By hand: 400 hundredths in 250 mL are 1.6 a mL; in 10 bottles of 25 mL they are 40 each."""
    jar, sack = lot(), lot(measure=Measure.MG)
    size = parse_quantity("25mL")
    packed = lot(kind="packed", measure=Measure.UEACH, opening=make(Bottle, size=size))
    four = Cost(250_000, 1_000_000, {"SOO-001-3": 300 * NANO, "labour": 100 * NANO})
    bottled = Cost(10 * 10**6, 10 * 10**6, four.money)
    nothing = Cost(0, 10, four.money)
    assert [_per_ml(*told) for told in ((jar, four), (packed, bottled), (sack, four))] == [
        Fraction(16, 10), Fraction(16, 10), None,
    ]  # fmt: skip
    assert [_per_bottle(*told) for told in ((packed, bottled), (jar, four))] == [40, None]
    assert (_per_ml(jar, nothing), _per_bottle(packed, nothing)) == (None, None)


def test_a_glass_has_a_price_where_it_is_poured_as_it_is() -> None:
    """By hand: of 240 mL 30 mL are syrup at 16 a mL, and an eighth."""

    def of(kind: str) -> LotState:
        return lot(opening=make(Start, product_kind=ProductKind(kind)))

    per_ml = Fraction(16, 10)
    told = [_per_glass(of(kind), per_ml, 240_000, 7) for kind in ("syrup", "base-syrup", "essence")]
    assert told == [48, 48, None]
    assert _per_glass(of("syrup"), None, 240_000, 7) is None
    assert _per_glass(lot(kind="received"), per_ml, 240_000, 7) is None


def test_what_was_lost_is_the_share_that_is_there_no_more() -> None:
    told = [(250, 1000), (1000, 1000), (1001, 1000), (0, 0), (0, 1), (999, 1000)]
    assert [_lost(Cost(there, went_in)) for there, went_in in told] == [
        Fraction(3, 4), None, None, None, 1, Fraction(1, 1000),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("told", "margin"), [(None, None), ("", None), ("0", 0), ("60 %", 60_000), ("99.999", 99_999)]
)
def test_a_margin_is_a_share_of_the_price(told: str | None, margin: int | None) -> None:
    assert read_margin(told) == margin


def test_a_price_leaves_the_margin_and_without_a_wish_or_a_cost_there_is_none() -> None:
    assert _price(Fraction(40), 60_000) == 100
    assert _price(Fraction(40), 0) == 40
    assert (_price(None, 60_000), _price(Fraction(40), None)) == (None, None)
