"""The steps of a lot and of what it is made of, for sums."""

from ledger.domain.lots.steps import Act, Bought
from ledger.store.read.steps import steps_behind
from tests.store.read.numbers import Walked, number


def test_steps_come_in_the_order_in_which_they_happened(walked: Walked) -> None:
    """26 g of oil at 0.845 g/mL are 30.769 mL; the corrected entry keeps its place."""
    keeper, lots = walked
    with keeper.reading() as connection:
        found = steps_behind(connection, number(connection, lots.essence))
    told = [(step.act, step.amount, step.source) for step in found.steps[lots.essence]]
    assert told == [
        (Act.INTO, 30_769, lots.oil),
        (Act.INTO, 0, lots.carb),
        (Act.INTO, 420_000, lots.spirit),
        (Act.LEVEL, 430_000, None),
        (Act.INTO, 20_000, lots.spirit),
        (Act.LEVEL, 450_000, None),
        (Act.LEVEL, 448_000, None),
        (Act.OUT, 30_000, None),
    ]
    assert found.bought[lots.oil] == Bought(500_000, 4800)
    assert found.bought.keys() == {lots.oil, lots.carb, lots.spirit}


def test_a_draw_knows_its_place_among_the_steps_of_its_source(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        found = steps_behind(connection, number(connection, lots.syrup))
    (drawn,) = [step for step in found.steps[lots.syrup] if step.source == lots.essence]
    assert found.steps[lots.essence][drawn.draw].act is Act.OUT
