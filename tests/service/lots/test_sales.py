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


def test_every_way_to_a_customer_and_back_is_told_by_when_it_happened(
    walked: tuple[Keeper, Lots],
) -> None:
    """A tasting goes to nobody in particular, and what was kept back to nobody."""
    keeper, lots = walked
    send = {"lot": lots.packed, "amount": "1"}
    keeper.do("send", **send, moved_as="on-return", party="Inn", document="DN-7")
    early = keeper.do(
        "send", **send, moved_as="sample", party="Fair", at="2026-03-05 10:00", because="late"
    )
    for way in ("tasting", "retained", "destroyed"):
        keeper.do("send", **send, moved_as=way, because="seen to")
    keeper.do("send", **send, moved_as="returned", party="Inn", document="RN-1")
    keeper.do("send", lot=lots.essence, amount="20mL", moved_as="sample", party="Inn")
    told = sales(keeper.book, Period())
    assert [(sold.party, str(sold.moved_as), sold.amount, sold.document) for sold in told] == [
        ("Bridge Street Stall", "sale", 6_000_000, None),
        ("Fair", "sample", 1_000_000, None),
        ("Inn", "on-return", 1_000_000, "DN-7"),
        ("Inn", "returned", 1_000_000, "RN-1"),
        ("Inn", "sample", 20_000, None),
    ]
    assert [sold.is_back for sold in told] == [False, False, False, True, False]
    assert [sold.bottle_ul for sold in told] == [250_000] * 4 + [None]
    assert (told[1].entry, told[1].on) == (early.seq, date(2026, 3, 5))
    assert sales(keeper.book, Period(), "Inn") == told[2:]
    fifth = Period(date(2026, 3, 5), date(2026, 3, 5))
    assert sales(keeper.book, fifth) == told[1:2]
    assert sales(keeper.book, Period(last=date(2026, 3, 4))) == told[:1]


def test_a_period_without_an_end_is_open_on_that_side_and_may_be_one_day() -> None:
    assert read_period(None, None) == Period(date.min, date.max)
    assert read_period("2026-03-01", None) == Period(date(2026, 3, 1), date.max)
    assert read_period(None, "2026-03-01") == Period(date.min, date(2026, 3, 1))
    assert read_period("2026-03-01", "2026-03-01") == Period(date(2026, 3, 1), date(2026, 3, 1))
    with pytest.raises(InputError) as caught:
        read_period("2026-03-02", "2026-03-01")
    assert caught.value.problems == (
        (
            "The period would end on 2026-03-01, before it begins on 2026-03-02.",
            "Give --from the earlier day.",
        ),
    )
