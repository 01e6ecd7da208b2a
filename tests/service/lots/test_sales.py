"""Sales of a period and of a customer."""

from datetime import date

import pytest

from ledger.domain.entries.choices import MoveAs
from ledger.errors import InputError
from ledger.service.lots.sales import Period, read_period, sales
from tests.keeper import Keeper
from tests.path import Lots


def test_what_went_out_and_came_back_is_told_with_its_bottle(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", moved_as="returned", party="Bridge Street Stall")
    keeper.do("send", lot=lots.packed, amount="1", moved_as="breakage", because="fell")
    *_, sold, back = sales(keeper.book, Period())
    assert (sold.moved_as, sold.bottle_ul, sold.lot.code) == (MoveAs.SALE, 250_000, lots.packed)
    assert (back.is_back, back.amount, back.on) == (True, 1_000_000, date(2026, 3, 9))
    assert sales(keeper.book, Period(first=date(2026, 3, 9))) == (back,)
    assert sales(keeper.book, Period(), "Nobody") == ()


def test_a_sale_that_was_struck_is_none(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    (sold,) = sales(keeper.book, Period())
    keeper.do("strike", entry=str(sold.entry), because="never fetched")
    assert sales(keeper.book, Period()) == ()


def test_all_that_is_wrong_with_a_period_is_told_at_once() -> None:
    with pytest.raises(InputError) as caught:
        read_period("soon", "late")
    assert [what for what, _ in caught.value.problems] == [
        '"soon" is not a date.',
        '"late" is not a date.',
    ]
