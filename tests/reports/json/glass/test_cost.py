"""What a lot cost, for machines."""

from ledger.service.glass.cost import cost
from reports.json.glass.cost import plain
from tests.keeper import Keeper
from tests.path import Lots


def test_money_is_text_and_what_was_not_asked_is_none(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    """2.95 of oil in 448 mL, 30 mL of that in 3.8 L, of which 3.75 L were filled: 0.20."""
    told = plain(cost(keeper.book, lots.packed))
    assert (told["total"], told["currency"], told["per_bottle"]) == ("0.20", "EUR", "0.01301")
    assert (told["labour"], told["margin_percent"], told["price"]) == (None, None, None)
    oil = next(line for line in told["lines"] if line["lot"] == lots.oil)
    assert (oil["what"], oil["unit"], oil["cost"]) == ("Sweet orange oil", "uL", "0.20")
    assert len(told["missing"]) == 5
