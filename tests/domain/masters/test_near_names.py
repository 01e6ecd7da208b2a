"""Names that are nearly the same are found without comparing each with each."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.masters.near_names import NearNames, _is_slip
from ledger.domain.masters.parties import plain

ALIKE = st.lists(st.text("abB é7", max_size=9), max_size=30)
"""Names of few letters, so that many are near each other."""


def _compared_with_each(name: str, known: list[str]) -> tuple[str, ...]:
    """Return the names near one as the rule says it: by comparing it with each."""
    return tuple(sorted(other for other in set(known) - {name} if _is_near(name, other)))


def _is_near(one: str, other: str) -> bool:
    a, b = plain(one), plain(other)
    return bool(a) if a == b else min(len(a), len(b)) >= 5 and _is_slip(a, b)


@given(name=st.text("abB é7", max_size=9), known=ALIKE)
def test_the_names_found_are_those_that_comparing_with_each_finds(
    name: str, known: list[str]
) -> None:
    assert NearNames(known).of(name) == _compared_with_each(name, known)


@given(letters=st.text("abcdefgh", min_size=6, max_size=24), data=st.data())
def test_no_slip_of_a_letter_is_missed_wherever_it_is(letters: str, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(letters) - 2))
    slips = {
        letters[:at] + "x" + letters[at + 1 :],
        letters[:at] + letters[at + 1 :],
        letters[:at] + "x" + letters[at:],
        letters[:at] + letters[at + 1] + letters[at] + letters[at + 2 :],
    } - {letters}
    assert NearNames(slips).of(letters) == tuple(sorted(slips))


@pytest.mark.parametrize(
    ("one", "other", "is_near"),
    [
        ("Café Blue Kettle", "Cafe blue kettle", True),
        ("Cafe Blue Ketle", "Café Blue Kettle", True),
        ("Café Bleu Kettle", "Café Blue Kettle", True),
        ("Café Blue Kettles", "Café Blue Kettle", True),
        ("Stall 7", "Stall 8", False),
        ("Stall 7", "Stall 17", False),
        ("Stall A7", "Stall B7", True),
        ("Stall 7a", "Stall 7b", True),
        ("Harbour Inn", "Habrour Inn", True),
        ("Harbour Inn", "Habrour Imm", False),
        ("Harbour Inn", "Hamnour Inn", False),
        ("Bar", "Car", False),
        ("Quay Bar", "Quay Inn", False),
        ("“”", "‘’", False),
        ("北京茶馆", "北京茶館", False),
    ],
)
def test_names_that_differ_by_accents_case_or_a_letter_are_near(
    one: str, other: str, *, is_near: bool
) -> None:
    """Numbers tell two places apart, and so does a letter of a short name."""
    assert NearNames([other]).of(one) == ((other,) if is_near else ())


@given(one=st.text(max_size=12), other=st.text(max_size=12))
def test_two_names_are_near_each_other_or_not_whichever_is_asked_of(one: str, other: str) -> None:
    assert bool(NearNames([other]).of(one)) is bool(NearNames([one]).of(other))
    assert NearNames([one]).of(one) == ()


def test_a_name_that_is_added_is_found_by_the_next() -> None:
    known = NearNames()
    assert known.of("Quay Bar") == ()
    known.add("Quay Bar")
    assert known.of("Quay Baar") == ("Quay Bar",)
