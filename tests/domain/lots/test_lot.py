"""A lot as lists tell it: its name, its status, what it was filled from, and its place in order."""

from datetime import UTC, date, datetime
from typing import Any

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from ledger.domain.entries.choices import Grade, LotType, ProductKind, Verdict
from ledger.domain.lots.lot import Lot, Stand, Status, by_date, filled_from, name_of, status_of


def a_lot(seq: int, **changes: Any) -> Lot:
    cells: dict[str, Any] = {
        "code": f"L-{seq}",
        "lot_type": LotType.MADE,
        "measure": Measure.UL,
        "opened_at": When(datetime(2026, 3, 2, 9, 0, tzinfo=UTC), 60),
        "name": "Orange syrup",
        "status": Status.MAKING,
        "on_hand": 0,
    }
    return Lot(seq, **(cells | changes))


@pytest.mark.parametrize(
    ("lot_type", "what", "size", "is_struck", "told"),
    [
        (LotType.RECEIVED, "Orange oil", "", False, "Orange oil"),
        (LotType.MADE, "Orange syrup", "", False, "Orange syrup"),
        (LotType.PACKED, "Orange syrup", "250mL", False, "Orange syrup, 250 mL"),
        (LotType.PACKED, "", "250mL", False, "bottled, 250 mL"),
        (LotType.RINSE, "", "", False, "Rinse liquor"),
        (LotType.RINSE, "", "", True, "Struck lot"),
        (LotType.PACKED, "", "", True, "Struck lot"),
    ],
)
def test_a_lot_is_named_by_what_it_is(
    lot_type: LotType, what: str, size: str, is_struck: bool, told: str
) -> None:
    assert name_of(lot_type, what, size, is_struck=is_struck) == told


@pytest.mark.parametrize(
    ("lot_type", "is_struck", "is_finished", "verdict", "status"),
    [
        (LotType.RECEIVED, False, False, None, Status.IN_STOCK),
        (LotType.RINSE, False, False, None, Status.IN_STOCK),
        (LotType.PACKED, False, False, None, Status.PACKED),
        (LotType.MADE, False, False, None, Status.MAKING),
        (LotType.MADE, False, True, None, Status.FINISHED),
        (LotType.MADE, False, True, Verdict.RELEASE, Status.RELEASED),
        (LotType.MADE, True, True, Verdict.RELEASE, Status.STRUCK),
    ],
)
def test_a_strike_goes_before_a_verdict_and_a_verdict_before_how_far_it_is(
    lot_type: LotType, is_struck: bool, is_finished: bool, verdict: Verdict | None, status: Status
) -> None:
    assert status_of(lot_type, Stand(verdict, is_finished), is_struck=is_struck) is status


@pytest.mark.parametrize("verdict", [None, *Verdict])
def test_what_goes_in_ends_a_release_and_the_making_and_no_other_verdict(
    verdict: Verdict | None,
) -> None:
    after = Stand(verdict, is_finished=True).opened_again()
    assert after == Stand(None if verdict is Verdict.RELEASE else verdict)
    assert after.finished().judged(Verdict.RELEASE) == Stand(Verdict.RELEASE, is_finished=True)


def test_bottles_have_the_product_of_their_bulk_and_their_own_look_before_its() -> None:
    bulk = a_lot(7, product_kind=ProductKind.SYRUP, grade=Grade.HAZY)
    filled = filled_from(a_lot(9, lot_type=LotType.PACKED), bulk)
    assert (filled.bulk, filled.product, filled.product_kind, filled.grade) == (
        7, "Orange syrup", ProductKind.SYRUP, Grade.HAZY,
    )  # fmt: skip
    assert filled_from(a_lot(9, grade=Grade.CLEAR), bulk).grade is Grade.CLEAR


def test_the_earliest_date_goes_first_then_what_was_opened_first_then_the_lower_number() -> None:
    early, late = date(2026, 6, 30), date(2027, 1, 1)
    morning, noon = (When(datetime(2026, 3, 2, hour, tzinfo=UTC), 0) for hour in (8, 12))
    in_order = [
        a_lot(5, best_before=early, opened_at=morning),
        a_lot(4, best_before=early, opened_at=noon),
        a_lot(6, best_before=early, opened_at=noon),
        a_lot(1, best_before=late, opened_at=morning),
        a_lot(3, opened_at=None),
        a_lot(2, opened_at=morning),
    ]
    backwards = in_order[::-1]
    assert sorted(backwards, key=by_date) == in_order
