"""Limits beside the figures of a card."""

from ledger.service.serving import serving
from reports.build.limit_table import limit_table
from reports.build.serving_plain import serving_plain
from tests.keeper import Keeper
from tests.path import walk_main_path


def test_a_daily_limit_of_nothing_at_all_is_told_as_passed_without_a_share(
    sqlite_keeper: Keeper,
) -> None:
    keeper, lots = sqlite_keeper, walk_main_path(sqlite_keeper)
    keeper.do(
        "limit",
        code="no-limonene",
        substance="limonene",
        value="0",
        unit="mg/kg body weight",
        basis="a-day",
        place="here",
        citation="a rule of the house",
    )
    found = serving(keeper.book, lots.packed)
    assert limit_table(found).rows[:2] == (
        ("limonene: 0 mg a day, adult of 60 kg", "PAST", "1"),
        ("limonene: 0 mg a day, child of 20 kg", "PAST", "1"),
    )
    ceilings = serving_plain(found)["concerns"][0]["ceilings"]
    assert [(item["percent"], item["passed"]) for item in ceilings] == [(None, True)] * 2
