"""How long records are kept, by the house's own rule and no other."""

from datetime import date

import pytest

from ledger.domain.entries import House
from reports.words.masters import house as module
from reports.words.masters.house import keeping_of, kept_until
from tests.kept.said import check_said

NO_RULE = "as long as the book, which drops nothing; no rule of the house is in it"


@pytest.mark.parametrize(
    ("months", "last", "told"),
    [
        (12, date(2027, 6, 30), "until 2028-06-30 at least, 12 months beyond 2027-06-30; the book "
         "drops nothing"),
        (1, date(2027, 1, 31), "until 2027-02-28 at least, 1 month beyond 2027-01-31; the book "
         "drops nothing"),
        (None, date(2027, 6, 30), NO_RULE),
        (12, None, NO_RULE),
    ],
)  # fmt: skip
def test_a_record_is_kept_so_long_beyond_its_last_date(
    months: int | None, last: date | None, told: str
) -> None:
    assert kept_until(House("Quayside", "EUR", keep_months=months), last) == told


def test_the_rule_is_told_in_months() -> None:
    assert keeping_of(House("Quayside", "EUR", keep_months=24)) == (
        "24 months beyond the last date on them"
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
