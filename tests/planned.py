"""An example of a plan with all of its fields filled in."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Plan
from ledger.domain.entries.choices import Grade, ProductKind
from ledger.domain.entries.trials import Decides, Evening, TrialAge, TwoLevels

PLAN = Plan(
    name="cloudy orange",
    number=1,
    product="Orange essence",
    product_kind=ProductKind.ESSENCE,
    jar=parse_quantity("50mL"),
    decides=Decides.LOOK,
    worst=Grade.CLEAR,
    age=TrialAge.WEEK,
    level_mpct=5000,
    fails_mpct=90_000,
    else_mpct=5000,
    chance_mpct=91_000,
    entries=11,
    root="0a" * 32,
    formula="orange-essence",
    formula_version=1,
    factors=(TwoLevels("oil", "SOO-001-3", "SOO-002-1"),),
    evenings=(Evening(8), Evening(4)),
)
