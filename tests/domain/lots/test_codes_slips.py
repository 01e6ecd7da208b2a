"""The slips that a check character catches, and those that it cannot."""

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stdnum.iso7064 import mod_37_36

from ledger.domain.lots.codes import check_character, check_code, make_code

ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
STEMS = st.text(ALPHABET, min_size=1, max_size=8)
CODES = st.builds(make_code, STEMS, st.integers(1, 1200) | st.integers(1, 10**9 - 1))


@given(CODES)
def test_every_slip_in_one_character_is_caught(code: str) -> None:
    for place, right in enumerate(code):
        for wrong in ALPHABET if right != "-" else "":
            if wrong != right:
                slipped = code[:place] + wrong + code[place + 1 :]
                assert check_code(slipped) is not None


def follow_each_other(one: str, other: str) -> bool:
    return (ALPHABET.index(one) - ALPHABET.index(other)) % 36 in {1, 35}


def swapped(code: str) -> list[tuple[str, str, str]]:
    """Every swap of neighbours in a code, a dash between them staying where it is."""
    places = [place for place, character in enumerate(code) if character != "-"]
    swaps = []
    for left, right in pairwise(places):
        characters = list(code)
        characters[left], characters[right] = code[right], code[left]
        swaps.append((code[left], code[right], "".join(characters)))
    return swaps


@given(CODES)
def test_every_swap_of_neighbours_that_do_not_follow_each_other_is_caught(code: str) -> None:
    for one, other, slipped in swapped(code):
        if one != other and not follow_each_other(one, other):
            assert check_code(slipped) is not None


def test_a_swap_of_two_that_follow_each_other_passes_at_one_remainder_in_36() -> None:
    """A single leading character leaves each of the 36 remainders in turn."""
    missed = [
        (one, other)
        for first, one, other in product(ALPHABET, repeat=3)
        if one < other
        and check_character(first + one + other) == check_character(first + other + one)
    ]
    neighbours = {tuple(sorted(pair)) for pair in zip(ALPHABET, ALPHABET[1:] + "0", strict=True)}
    assert len(missed) == 36
    assert set(missed) == neighbours


def test_a_swap_that_passes_can_be_shown_so_no_more_is_promised() -> None:
    passed = [
        slipped
        for number in range(1, 1000)
        for one, other, slipped in swapped(make_code("OIL", number))
        if one != other and check_code(slipped) is None
    ]
    assert passed


@pytest.mark.parametrize(
    ("code", "start", "got"),
    [
        ("OIL-007-Q", "OIL-007", "Q"),
        ("OIL-0O7-1", "OIL-0O7", "1"),
        ("0IL-007-1", "0IL-007", "1"),
        ("OIL-070-1", "OIL-070", "1"),
        ("ABCDEFG8-999999999-0", "ABCDEFG8-999999999", "0"),
    ],
    ids=["check character", "letter for digit", "digit for letter", "swap", "the longest"],
)
def test_a_wrong_code_is_told_with_the_character_expected(code: str, start: str, got: str) -> None:
    expected = mod_37_36.calc_check_digit(start.replace("-", ""))
    assert check_code(code) == (
        f"The lot code {code} ends in {got}, but {start} calls for {expected}, "
        "so at least one character is wrong: read the code again."
    )
