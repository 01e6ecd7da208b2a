"""Planned trials, made jar by jar in a test."""

from collections.abc import Callable

from ledger.service.bench.jars import jars
from ledger.service.causes.layout import Planned, PlannedJar, planned
from ledger.service.desk.book import How
from tests.keeper import Keeper
from tests.path import Lots, receive_all
from tests.service.bench.makings import oil_lots

NAME = "cloudy orange"
Grader = Callable[[PlannedJar], str | None]
"""The grade after a week; None for a jar that was lost."""


def plan_oils(keeper: Keeper, **words: str) -> tuple[Lots, Planned]:
    """Plan a trial of two oil lots, the second suspected."""
    lots = receive_all(keeper)
    (suspected,) = oil_lots(keeper, 1)
    told = {"name": NAME, "tries": f"oil={lots.oil}/{suspected}", "product": "Orange essence"}
    keeper.do("plan", **{**told, **words})
    return lots, planned(keeper.book, told["name"])


def make_jars(keeper: Keeper, lots: Lots, found: Planned, grade: Grader) -> None:
    """Make all jars evening by evening, and look at each after a day and after a week."""
    for evening in range(len(found.plan.evenings)):
        jars(keeper.book, How(keeper.by), trial=found.plan.name)
        ours = [jar for jar in found.jars if jar.evening == evening + 1]
        for jar in ours:
            keeper.do("add", lot=jar.code, source=jar.levels[0][1], amount="3mL")
            keeper.do("add", lot=jar.code, source=lots.spirit, amount="45mL")
        keeper.clock.forward(days=1)
        for jar in ours:
            keeper.do("look", lot=jar.code, grade="bright", ntu="1.1")
        keeper.clock.forward(days=6)
        for jar in ours:
            if told := grade(jar):
                keeper.do("look", lot=jar.code, grade=told, ntu="9" if told == "cloudy" else "2")
