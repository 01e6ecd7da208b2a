"""How days and times of many tables are read, in every order, is kept whole."""

from collections.abc import Iterator

from ledger.domain.tables.days import DayOrder, plain_day
from ledger.errors import LedgerError
from tests.kept.golden import check_golden

DAYS = (
    *("1.2.2026", "01/02/26", "2026-02-01", "26-02-01", "1-2-026", "13.1.2026", "1/13/2026"),
    *("31.12.99", "29.2.2026", "29.2.2028", "100.2.2026", "1.2.1", "2026.2.100", "99.99.99"),
    *("1 février 2026", "März 1, 2026", "1. Mai 26", "26 mayo 27", "1 de junio de 2026"),
    *("32 May 2026", "May 32, 2026", "1 lot 2026", "May 2026", "1 M 2026", "4 July 26"),
    *("1.2.2026 9:15", "1.2.2026, 14.30 Uhr", "1.2.2026T00:00:00", "1.2.2026 9h", "1.2.2026 noon"),
    *("2026-02-01 24:00", "2026-02-01 09:15", "1 May 2026 10:05", "May 1, 2026"),
    *("46056", "46056.5", "123", "1234567", "soon", "", " 2026-02-01 ", "٣.٣.٢٠٢٦"),
)


def test_every_way_to_write_a_day_is_read_as_it_was_or_refused() -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    check_golden("days.txt", "".join(f"{line}\n" for line in _told()))


def _told() -> Iterator[str]:
    for text in DAYS:
        yield repr(text)
        for order in (None, *DayOrder):
            try:
                yield f"  {order}: {plain_day(text, order)}"
            except LedgerError as error:
                yield from (f"  {order}: {what} {todo}" for what, todo in error.problems)
