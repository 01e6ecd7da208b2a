"""Limits, for machines."""

from datetime import date

from msgspec.structs import replace

from ledger.domain.entries import Limit
from ledger.domain.masters.limits import ListedLimit, listed_on
from reports.json.masters.limits import limit_answer
from tests.domain.builders import make
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check
from tests.reports.words.examples_of_masters import MASTERS


def test_a_limit_says_whether_it_holds_and_what_is_to_come() -> None:
    now = replace(make(Limit), value_micro=1_000_000)
    later = replace(now, value_micro=2_000_000, since=date(2026, 6, 1))
    listed = listed_on((now, later), date(2026, 3, 2))
    told = limit_answer(listed)
    assert (told.limit, told.value, told.holds) == ("safrole", "1", "in force")
    assert told.to_come is not None
    assert (told.to_come.value, told.to_come.since) == ("2", date(2026, 6, 1))


def test_every_field_of_a_limit_is_the_kept_one() -> None:
    (facts,) = (facts for facts, _ in MASTERS if isinstance(facts, Limit))
    later = replace(facts, value_micro=1_234_567, since=date(2030, 1, 1), until=None, says=None)
    check("limit", limit_answer(listed_on((facts, later), date(2026, 3, 2))))


def test_every_part_of_a_limit_stands_under_its_own_key() -> None:
    answers = (limit_answer(each(ListedLimit)) for each in (filled, bare))
    check("limit_filled", *answers)
