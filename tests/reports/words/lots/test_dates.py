"""Dates in words: what is opened never keeps longer than what is not."""

from datetime import date

import pytest
from msgspec.structs import replace

from ledger.domain.lots.dates import Dates
from reports.words.lots import dates as module
from reports.words.lots.dates import date_lines, keeping_words
from tests.kept.said import check_said

OIL = "never later than SOO-001-3, which it is made of"
SOON = Dates(date(2026, 5, 1), OIL, "cool and dark", 180)


@pytest.mark.parametrize(
    ("dates", "words"),
    [
        (
            SOON,
            "Keep cool and dark. Once opened use within 180 days, and by the best-before date.",
        ),
        (
            replace(SOON, storage=None, opened_days=1),
            "Once opened use within 1 day, and by the best-before date.",
        ),
        (
            replace(SOON, best_before=None, set_by=None),
            "Keep cool and dark. Once opened use within 180 days.",
        ),
        (replace(SOON, opened_days=None), "Keep cool and dark."),
        (replace(SOON, storage=None, opened_days=None), None),
    ],
)
def test_a_label_promises_an_opened_bottle_no_longer_than_its_date(
    dates: Dates, words: str | None
) -> None:
    assert keeping_words(dates) == words


def test_a_lot_is_told_its_date_and_the_days_once_opened() -> None:
    assert date_lines(SOON) == [
        f"Best before 2026-05-01, {OIL}.",
        "Once opened use within 180 days, and by the best-before date.",
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
