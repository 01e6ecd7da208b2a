"""The steps of a lot and of what it is made of, for sums."""

from ledger.domain.lots.steps import Act, Bought
from ledger.store.read import walk
from ledger.store.read.steps import spent_on, steps_of
from tests.store.read.numbers import Walked, number


def test_steps_come_in_the_order_in_which_they_happened(walked: Walked) -> None:
    """26 g of oil at 0.845 g/mL are 30.769 mL; the corrected entry keeps its place."""
    keeper, lots = walked
    with keeper.reading() as connection:
        found = steps_of(connection, walk.back(connection, number(connection, lots.essence)))
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
        found = steps_of(connection, walk.back(connection, number(connection, lots.syrup)))
    (drawn,) = [step for step in found.steps[lots.syrup] if step.source == lots.essence]
    assert found.steps[lots.essence][drawn.draw].act is Act.OUT


def test_what_was_spent_on_a_lot_and_stays_in_none_is_told_once(walked: Walked) -> None:
    """Rinses to waste; what went into it, or was rinsed into a lot of its own, is not."""
    keeper, lots = walked
    rinse = {"lot": lots.essence, "volume_in": "20mL", "volume_out": "15mL", "because": "to see"}
    for source, went_to in ((lots.water, "waste"), (lots.water, "waste"), (lots.spirit, "apart")):
        keeper.do("rinse", source=source, went_to=went_to, **rinse)
    struck = keeper.do("rinse", source=lots.spirit, went_to="waste", **rinse)
    keeper.do("strike", entry=str(struck.seq), because="another jar")
    with keeper.reading() as connection:
        essence, water, syrup = (
            number(connection, code) for code in (lots.essence, lots.water, lots.syrup)
        )
        assert spent_on(connection, [essence, syrup]) == [water]
        assert spent_on(connection, [syrup]) == spent_on(connection, []) == []
