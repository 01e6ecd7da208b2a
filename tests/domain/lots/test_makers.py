"""Who made a lot, and whether only its makers have checked what they release."""

import pytest

from ledger.domain.entries import Add, Check, Look, Rest
from ledger.domain.lots.makers import is_self_released, makers_of
from tests.domain.builders import entry, lot, make, packed

RESTED = entry(make(Rest), 4, by="CD")
SEEN = entry(make(Look), 5, by="EF")


def test_who_had_a_hand_in_a_lot_or_in_its_bulk_made_it_and_who_looked_did_not() -> None:
    bulk = lot("E-1", make(Add), RESTED, SEEN)
    assert makers_of(bulk) == {"AB", "CD"}
    assert makers_of(packed("P-1", bulk=bulk)) == {"AB", "CD"}


@pytest.mark.parametrize(
    ("checker", "by", "is_own"),
    [(None, "AB", True), ("CD", "AB", True), ("EF", "AB", False), (None, "EF", False)],
)
def test_a_release_by_a_maker_is_her_own_until_somebody_else_has_checked(
    checker: str | None, by: str, is_own: bool
) -> None:
    checks = [entry(make(Check), 9, by=checker)] if checker else []
    assert is_self_released(lot("E-1", RESTED, *checks), by) is is_own
