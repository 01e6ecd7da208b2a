"""What a lot cost, for machines."""

from ledger.service.glass.cost import CostCard, cost
from reports.json.glass.cost import cost_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_money_is_text_and_what_was_not_asked_is_none(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    """2.95 of oil in 448 mL, 30 mL of that in 3.8 L, of which 3.75 L were filled: 0.20."""
    told = cost_answer(cost(keeper.book, lots.packed))
    assert (told.total, told.currency, told.per_bottle) == ("0.20", "EUR", "0.01301")
    assert (told.labour, told.margin_percent, told.price) == (None, None, None)
    oil = next(line for line in told.lines if line.code == lots.oil)
    assert (oil.what, oil.amount.unit, oil.cost) == ("Sweet orange oil", "mL", "0.20")
    assert len(told.missing) == 5


def test_every_figure_of_the_costs_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    asked = {"glass": "200mL", "pour": "1:5", "hour": "20.00", "margin": "60%"}
    answers = (
        cost_answer(cost(keeper.book, lots.essence)),
        cost_answer(cost(keeper.book, lots.packed, **asked)),
        cost_answer(cost(keeper.book, lots.oil)),
    )
    check("cost", *answers)


def test_every_part_of_a_cost_stands_under_its_own_key_and_what_there_is_none_of_is_null() -> None:
    """Duty, work and lines are each another sum."""
    full, none = filled(CostCard, digits=2), bare(CostCard, digits=2)
    check("cost_filled", cost_answer(full), cost_answer(none))
