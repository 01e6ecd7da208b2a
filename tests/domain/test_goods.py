"""The balance of a recall: what was made stands somewhere, or is unexplained."""

from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries.words import Place
from ledger.domain.goods import Balance, balance_of, summed

AMOUNTS = st.integers(0, 10**9)
balances = st.builds(
    balance_of,
    made=AMOUNTS,
    on_hand=st.integers(-(10**6), 10**9),
    used=AMOUNTS,
    returned=AMOUNTS,
    gone=st.dictionaries(st.sampled_from(Place), AMOUNTS),
)


@given(made=AMOUNTS, on_hand=AMOUNTS, used=AMOUNTS, returned=AMOUNTS, out=st.data())
def test_what_was_made_and_came_back_is_what_is_here_went_out_and_is_unexplained(
    made: int, on_hand: int, used: int, returned: int, out: st.DataObject
) -> None:
    inward = (Place.SUPPLIER, Place.FILLING, Place.RETURNED)
    ways: list[Place] = [place for place in Place if place not in inward]
    gone: dict[Place, int] = {place: out.draw(AMOUNTS) for place in ways}
    found = balance_of(made=made, on_hand=on_hand, used=used, returned=returned, gone=gone)
    assert made + returned == on_hand + used + sum(gone.values()) + found.unexplained


@given(parts=st.lists(balances, max_size=5))
def test_a_surplus_of_one_lot_does_not_make_good_what_another_lacks(parts: list[Balance]) -> None:
    whole = summed(parts)
    assert whole.unexplained == sum(part.unexplained for part in parts)
    assert whole.astray == sum(abs(part.unexplained) for part in parts)
    assert whole.astray >= abs(whole.unexplained)


@given(parts=st.lists(balances, min_size=1, max_size=5))
def test_the_share_is_all_only_when_nothing_is_astray(parts: list[Balance]) -> None:
    whole = summed(parts)
    assert (whole.accounted_percent == 100) is (whole.astray == 0)
    assert 0 <= whole.accounted_percent <= 100
    if whole.made:
        exact = Fraction(100 * max(whole.made - whole.astray, 0), whole.made)
        assert 0 <= exact - Fraction(whole.accounted_percent) < Fraction(1, 10)


def test_bottles_of_a_stall_day() -> None:
    """15 filled; 6 sold, 3 out to a stall of which 1 came back, 1 kept, 1 broken, 4 counted."""
    found = balance_of(
        made=15,
        on_hand=4,
        returned=1,
        gone={Place.SALE: 6, Place.ON_RETURN: 3, Place.RETAINED: 1, Place.BREAKAGE: 1},
    )
    assert (found.sent, found.kept_back, found.broken, found.unexplained) == (8, 1, 1, 1)
    assert found.accounted_percent == Decimal("93.3")
