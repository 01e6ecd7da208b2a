"""A day is read in the order that is told, and where two readings exist it is not guessed."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.tables.days import DayOrder, plain_day
from ledger.errors import InputError

FORMS = {DayOrder.DMY: "%d.%m.%Y", DayOrder.MDY: "%m/%d/%Y", DayOrder.YMD: "%y-%m-%d"}


@given(st.dates(date(2000, 1, 1), date(2099, 12, 31)), st.sampled_from(DayOrder))
def test_a_day_written_in_an_order_is_read_in_that_order(day: date, order: DayOrder) -> None:
    assert plain_day(day.strftime(FORMS[order]), order) == day.isoformat()
    assert plain_day(day.isoformat(), order) == day.isoformat()


@given(st.dates(date(2000, 1, 1), date(2099, 12, 31)))
def test_without_an_order_a_day_is_read_only_where_there_is_one_reading(day: date) -> None:
    text = day.strftime("%d/%m/%Y")
    if day.day > 12 or day.day == day.month:
        assert plain_day(text, None) == day.isoformat()
    else:
        with pytest.raises(InputError, match="could be"):
            plain_day(text, None)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("30.02.2026", '"30.02.2026" is no day of the calendar.'),
        ("45012", '"45012" is a number, where a day was expected.'),
        ("01/02/03", '"01/02/03" could be 2003-02-01 or 2003-01-02 or 2001-02-03.'),
    ],
)
def test_what_is_no_one_day_is_told(text: str, what: str) -> None:
    with pytest.raises(InputError) as caught:
        plain_day(text, None)
    assert caught.value.what == what
