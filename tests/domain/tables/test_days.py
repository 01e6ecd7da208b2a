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
    ("text", "what", "todo"),
    [
        (
            "30.02.2026",
            '"30.02.2026" is no day of the calendar.',
            "Write it as the calendar has it: 2026-02-03.",
        ),
        (
            "45012",
            '"45012" is a number, where a day was expected.',
            "Format the cells of the column as dates in the spreadsheet, and save it again.",
        ),
        (
            "01/02/03",
            '"01/02/03" could be 2003-02-01 or 2003-01-02 or 2001-02-03.',
            "Say which with --dates dmy or --dates mdy or --dates ymd.",
        ),
    ],
)
def test_what_is_no_one_day_is_told(text: str, what: str, todo: str) -> None:
    with pytest.raises(InputError) as caught:
        plain_day(text, None)
    assert caught.value.problems == ((what, todo),)


@pytest.mark.parametrize(
    "text",
    [
        *(
            "3. Februar 2026",
            "03-févr-2026",
            "3 Feb 2026",
            "February 3, 2026",
            "3 de febrero de 2026",
        ),
        *("3 febbraio 2026", "03.Feb.2026", "3 février 2026 00:00:00"),
    ],
)
def test_a_month_may_be_named(text: str) -> None:
    assert plain_day(text, None) == "2026-02-03"
    assert plain_day(text, DayOrder.DMY) == "2026-02-03"


def test_a_named_month_does_not_tell_a_year_of_two_digits_from_a_day() -> None:
    with pytest.raises(InputError) as caught:
        plain_day("03-Feb-26", None)
    assert caught.value.problems == (
        (
            '"03-Feb-26" could be 2026-02-03 or 2003-02-26.',
            "Say which with --dates dmy or --dates ymd.",
        ),
    )
    assert plain_day("03-Feb-26", DayOrder.DMY) == "2026-02-03"
    with pytest.raises(InputError) as raised:
        plain_day("30-Feb-2026", None)
    assert raised.value.problems == (
        (
            '"30-Feb-2026" is no day of the calendar.',
            "Write it as the calendar has it: 2026-02-03.",
        ),
    )
