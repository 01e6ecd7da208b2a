"""The balance of a recall: what was made stands somewhere, or is unexplained."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries.choices import MoveAs, Place
from ledger.domain.lots.balance import Balance, balance_of, still_out, summed

AMOUNTS = st.integers(0, 10**9)
TO_PEOPLE = (MoveAs.SALE, MoveAs.SAMPLE, MoveAs.TASTING, MoveAs.ON_RETURN)
OTHERWISE = (Place.RETAINED, Place.BREAKAGE, Place.DESTROYED, Place.WASTE)
MOVES = st.lists(
    st.tuples(
        st.sampled_from(("Bar", "Inn", None)),
        st.sampled_from((*TO_PEOPLE, MoveAs.RETURNED)),
        st.integers(0, 20) | AMOUNTS,
    ),
    max_size=8,
)
balances = st.builds(
    balance_of,
    made=AMOUNTS,
    on_hand=st.integers(-(10**6), 10**9),
    used=AMOUNTS,
    moves=MOVES,
    gone=st.dictionaries(st.sampled_from(OTHERWISE), AMOUNTS),
)


@given(
    made=AMOUNTS,
    on_hand=AMOUNTS,
    used=AMOUNTS,
    moves=MOVES,
    gone=st.dictionaries(st.sampled_from(OTHERWISE), AMOUNTS),
)
def test_what_was_made_and_came_back_is_what_is_here_went_out_and_is_unexplained(
    made: int,
    on_hand: int,
    used: int,
    moves: list[tuple[str | None, MoveAs, int]],
    gone: dict[Place, int],
) -> None:
    found = balance_of(made=made, on_hand=on_hand, used=used, moves=moves, gone=gone)
    out = sum(amount for _, way, amount in moves if way in TO_PEOPLE)
    back = sum(amount for _, way, amount in moves if way is MoveAs.RETURNED)
    assert found.returned == back
    assert found.sent + found.samples + found.unnamed == max(out - back, 0)
    there = on_hand + used + max(out - back, 0) + sum(gone.values())
    assert made == there + found.unexplained


@given(found=balances)
def test_only_what_is_unexplained_is_ever_below_zero(found: Balance) -> None:
    figures = {name: getattr(found, name) for name in Balance.__struct_fields__}
    assert {name: amount for name, amount in figures.items() if amount < 0} == {}


@given(moves=MOVES)
def test_what_one_party_sent_back_is_first_of_what_they_were_sent(
    moves: list[tuple[str | None, MoveAs, int]],
) -> None:
    """With no more back from the bar than it got, what went to others is out whole."""
    others = [move for move in moves if move[0] != "Bar" and move[1] is not MoveAs.RETURNED]
    theirs = still_out([*others, ("Bar", MoveAs.SAMPLE, 9), ("Bar", MoveAs.RETURNED, 9)])
    assert theirs == still_out(others)


@pytest.mark.parametrize(
    ("moves", "sent", "samples"),
    [
        ([("Bar", MoveAs.SAMPLE, 3), ("Bar", MoveAs.RETURNED, 2)], 0, 1),
        ([("Bar", MoveAs.TASTING, 3), (None, MoveAs.RETURNED, 3)], 0, 0),
        ([("Bar", MoveAs.SALE, 2), ("Inn", MoveAs.SAMPLE, 3), ("Inn", MoveAs.RETURNED, 3)], 2, 0),
        ([("Bar", MoveAs.SALE, 2), ("Inn", MoveAs.SAMPLE, 3), ("Inn", MoveAs.RETURNED, 4)], 1, 0),
        ([("Bar", MoveAs.SALE, 2), ("Bar", MoveAs.SAMPLE, 3), ("Bar", MoveAs.RETURNED, 3)], 0, 2),
        ([("Bar", MoveAs.SALE, 2), ("Bar", MoveAs.RETURNED, 5)], 0, 0),
    ],
)
def test_samples_that_come_back_are_no_longer_samples_and_never_take_from_what_was_sold(
    moves: list[tuple[str | None, MoveAs, int]], sent: int, samples: int
) -> None:
    found = balance_of(made=9, on_hand=9, moves=moves)
    assert (found.sent, found.samples) == (sent, samples)


def test_more_drawn_than_was_there_is_unexplained_and_not_below_zero_on_hand() -> None:
    found = balance_of(made=15, on_hand=-3, moves=[("Bar", MoveAs.SALE, 18)])
    assert (found.on_hand, found.unexplained) == (0, -3)
    assert found.accounted_percent == Decimal("80.0")


@given(parts=st.lists(balances, max_size=5))
def test_a_surplus_of_one_lot_does_not_make_good_what_another_lacks(parts: list[Balance]) -> None:
    whole = summed(parts)
    assert whole.unexplained == sum(part.unexplained for part in parts)
    assert whole.astray == sum(abs(part.unexplained) for part in parts)
    assert whole.astray >= abs(whole.unexplained)


@given(parts=st.lists(balances, min_size=1, max_size=5))
def test_the_share_is_all_only_when_nothing_is_astray(parts: list[Balance]) -> None:
    whole = summed(parts)
    assert (whole.accounted_percent == 100) is (whole.astray + whole.unnamed == 0)
    assert 0 <= whole.accounted_percent <= 100
    if whole.made:
        exact = Fraction(100 * max(whole.made - whole.astray - whole.unnamed, 0), whole.made)
        assert 0 <= exact - Fraction(whole.accounted_percent) < Fraction(1, 10)


def test_bottles_of_a_stall_day() -> None:
    """15 filled; 6 sold, 3 out to a stall of which 1 came back, 1 kept, 1 broken, 4 counted."""
    found = balance_of(
        made=15,
        on_hand=4,
        moves=[
            ("Bar", MoveAs.SALE, 6),
            ("Stall", MoveAs.ON_RETURN, 3),
            ("Stall", MoveAs.RETURNED, 1),
        ],
        gone={Place.RETAINED: 1, Place.BREAKAGE: 1},
    )
    assert (found.sent, found.kept_back, found.broken, found.unexplained) == (8, 1, 1, 1)
    assert found.accounted_percent == Decimal("93.3")


def test_what_went_to_a_market_is_no_sale_to_somebody_and_is_not_accounted_for() -> None:
    """Of 10: 4 to a bar, 3 at a market of which 1 came back, 1 to nobody; a tasting is drunk."""
    found = balance_of(
        made=10,
        on_hand=2,
        moves=[
            ("Bar", MoveAs.SALE, 4),
            ("market", MoveAs.SALE, 3),
            ("market", MoveAs.RETURNED, 1),
            (None, MoveAs.SAMPLE, 1),
            (None, MoveAs.TASTING, 1),
        ],
    )
    assert (found.sent, found.samples, found.unnamed, found.unexplained) == (4, 1, 3, 0)
    assert found.accounted_percent == Decimal("70.0")


def test_each_part_of_a_balance_stands_under_its_name_in_the_order_in_which_it_is_shown() -> None:
    found = balance_of(
        made=1000,
        on_hand=1,
        used=2,
        moves=[
            ("Bar", MoveAs.SALE, 40),
            ("Inn", MoveAs.ON_RETURN, 8),
            ("Inn", MoveAs.RETURNED, 3),
            ("Inn", MoveAs.SAMPLE, 5),
            ("Inn", MoveAs.TASTING, 1),
            ("market", MoveAs.SALE, 7),
        ],
        gone={
            Place.RETAINED: 11,
            Place.BREAKAGE: 13,
            Place.DESTROYED: 17,
            Place.WASTE: 19,
        },
    )
    assert list(found.parts().items()) == [
        ("made", 1000),
        ("on_hand", 1),
        ("used", 2),
        ("sent", 45),
        ("returned", 3),
        ("samples", 6),
        ("unnamed", 7),
        ("kept_back", 11),
        ("broken", 13),
        ("destroyed", 17),
        ("wasted", 19),
        ("unexplained", 879),
    ]
    both = summed([found, found, balance_of(made=1, on_hand=2)])
    assert (both.made, both.on_hand, both.astray, both.unexplained) == (2001, 4, 1759, 1757)
