"""Limits, for machines."""

from datetime import date

from msgspec.structs import replace

from ledger.domain.entries import Limit
from ledger.domain.masters.limits import listed_on
from reports.json.masters.limits import limit_plain
from tests.domain.builders import make


def test_a_limit_says_whether_it_holds_and_what_is_to_come() -> None:
    now = replace(make(Limit), value_micro=1_000_000)
    later = replace(now, value_micro=2_000_000, since=date(2026, 6, 1))
    listed = listed_on((now, later), date(2026, 3, 2))
    told = limit_plain(listed)
    assert (told["code"], told["value_micro"], told["holds"]) == ("safrole", 1_000_000, "in force")
    assert told["to_come"]["since"] == "2026-06-01"
