"""The cost of a lot of a book that was really kept."""

import pytest

from ledger.errors import RefusedError
from ledger.service.glass.cost import cost
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
