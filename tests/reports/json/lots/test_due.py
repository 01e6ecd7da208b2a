"""What is due, for machines."""

from ledger.service.lots.due import Waits, due
from reports.json.lots.due import DueRow, due_rows
from tests.keeper import Keeper
from tests.path import Lots


def test_a_rest_without_a_time_has_none_and_says_what_to_do(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("rest", lot=lots.syrup, purpose="settle")
    keeper.clock.forward(hours=3)
    assert [row for row in due_rows(due(keeper.book)) if row.waits is Waits.REST] == [
        DueRow(
            waits=Waits.REST,
            code="OS-002-M",
            name="Orange syrup",
            says="rest to settle, 3 h so far",
            due=None,
            minutes=None,
            next="pottle rest OS-002-M --end",
        )
    ]
