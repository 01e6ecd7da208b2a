"""Figures beside their limits, for machines."""

from ledger.service.glass.card import Pouring
from ledger.service.glass.serving import serving
from reports.json.glass.held import limits_held
from reports.json.glass.serving import serving_answer
from tests.keeper import Keeper
from tests.kept.filled import filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_every_figure_beside_a_limit_has_its_doubt_and_its_verdict(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    told = {item.limit: item for item in serving_answer(serving(keeper.book, lots.packed)).limits}
    sugar = told["us-food-syrup-sugar"]
    assert (sugar.value, sugar.limit_value, sugar.unit) == ("61.1", "60", "g/100mL")
    assert (sugar.doubt, sugar.verdict) == ("0.68", "above")
    assert sugar.doubted_by == "the volume of the lot"
    assert told["us-alcoholic-bottle"].verdict == "above"
    assert told["us-alcoholic-glass"].verdict == "below"


def test_every_part_of_a_figure_beside_its_limit_stands_under_its_own_key() -> None:
    close, none = filled(Pouring, value_micro=126_000_000, doubt=2.5), filled(Pouring, doubt=0.0)
    check("held_filled", *limits_held(close), *limits_held(none))
