"""Following: what goes in and what comes out lie within the limits of the formula."""

from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Facts, Finish, Formula, Material, Posting
from ledger.domain.entries.choices import AddedAs, MaterialKind, ProductKind
from ledger.domain.entries.masters import FormulaLine
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.lot import Status
from ledger.domain.rules.formula import lines as following_amounts
from tests.domain.builders import draft, entry, grams, lot, make, ml, oil, scene
from tests.domain.rules.cases import Case, find
from tests.domain.rules.formula.followed import follows, why

SYRUP = Input("S-1", Measure.UL, Status.RELEASED, formula="base", product_kind=ProductKind.SYRUP)
OIL = Input("O-1", Measure.UL, Status.IN_STOCK, "oil", MaterialKind.OIL)
CARBONATE = Input("C-1", Measure.MG, Status.IN_STOCK, "carb", MaterialKind.CLARIFIER)
GUM = Input("G-1", Measure.MG, Status.IN_STOCK, "gum", MaterialKind.GUM)
INPUTS = (SYRUP, OIL, CARBONATE, GUM)
LINES = (
    FormulaLine(ml(30), material="oil", tolerance_mpct=2000, overage_mpct=10_000),
    FormulaLine(grams(20), material="carb"),
)
ORANGE = make(Formula, lines=LINES)
TWO_LINES = (
    FormulaLine(ml(40), material="oil", tolerance_mpct=2000),
    FormulaLine(ml(20), material="oil", tolerance_mpct=2000),
)
IN_TWO = make(Formula, lines=TWO_LINES)
LARGE_LINES = (
    FormulaLine(ml(2000), material="oil", tolerance_mpct=5000),
    FormulaLine(grams(3000), material="carb", tolerance_mpct=5000),
)
LARGE = make(Formula, lines=LARGE_LINES)


def adding(facts: Add, *before: Any, formula: Formula = ORANGE) -> tuple[Any, Any]:
    return draft(facts), follows(formula, *before, inputs=INPUTS)


def oils(amount: float) -> Add:
    return make(Add, amount=ml(amount))


NOT_CALLED_FOR = why("formula", "G-1 is not in orange version 1, which calls for oil, carb.")
SYRUP_LINES = (*LINES, FormulaLine(ml(120), formula="orange-essence", tolerance_mpct=5000))
SYRUPS = make(Formula, code="syrup", lines=SYRUP_LINES)
ESSENCE = Input(
    "E-2",
    Measure.UL,
    Status.RELEASED,
    formula="orange-essence",
    product_kind=ProductKind.ESSENCE,
)
UNNAMED = Input("E-3", Measure.UL, Status.RELEASED, product_kind=ProductKind.ESSENCE)


def dosing(source: str, amount: float, *before: Facts) -> tuple[Any, Any]:
    facts = make(Add, source=source, amount=ml(amount))
    return draft(facts), follows(SYRUPS, *before, inputs=(*INPUTS, ESSENCE, UNNAMED))


CARB = make(Add, source="C-1", amount=grams(20))
# Its density was known when it went in, and is no more.
WEIGHED = replace(
    entry(make(Add, amount=grams(28.44)), 2),
    postings=(Posting("O-1", "E-1", None, 33_660, 33_000),),
)
DENSE = scene(
    lot(),
    oil(material=make(Material, density_mg_per_l=845_000)),
    control=Control(formula=ORANGE, inputs=INPUTS),
)
UNKNOWN = replace(DENSE, sources=())
OVER = "E-1; orange version 1 calls for 33 mL, at most 33.66 mL."
ADDITIONS = [
    Case("as much as the overage and the tolerance allow", *adding(oils(33.66))),
    Case(
        "more than they allow",
        *adding(oils(33.661)),
        why("formula", f"With this 33.661 mL of oil are in {OVER}"),
    ),
    Case("in two goes", *adding(oils(13.66), oils(20))),
    Case(
        "in two goes, more than they allow",
        *adding(oils(14), oils(20)),
        why("formula", f"With this 34 mL of oil are in {OVER}"),
    ),
    Case("weighed, within by its density", draft(make(Add, amount=grams(28.44))), DENSE),
    Case(
        "weighed, over by its density: 33.8 g at 0.845 g/mL are 40 mL",
        draft(make(Add, amount=grams(33.8))),
        DENSE,
        why("formula", f"With this 40 mL of oil are in {OVER}"),
    ),
    Case(
        "what was weighed before, as the volume that it was then",
        *adding(oils(0.001), WEIGHED),
        why("formula", f"With this 33.661 mL of oil are in {OVER}"),
    ),
    Case(
        "what was weighed before, of known density",
        draft(oils(0.01)),
        replace(DENSE, lot=lot("E-1", make(Add, amount=grams(28.44)))),
        why("formula", f"With this 33.667 mL of oil are in {OVER}"),
    ),
    Case("weighed, of a lot that nobody knows", draft(make(Add, amount=grams(99))), UNKNOWN),
    Case("weighed, with a density that nobody knows", *adding(make(Add, amount=grams(99)))),
    Case("no tolerance is given", *adding(make(Add, source="C-1", amount=grams(40)))),
    Case("a material that is not called for", *adding(make(Add, source="G-1")), NOT_CALLED_FOR),
    Case("what is made here is not asked about", *adding(make(Add, source="S-1"))),
    *(
        Case(
            f"what is not called for, added as {added}",
            *adding(make(Add, source="G-1", added_as=added)),
        )
        for added in AddedAs
        if added is not AddedAs.INGREDIENT
    ),
    Case("a material on two lines, up to both", *adding(oils(61.2), formula=IN_TWO)),
    Case(
        "a material on two lines, more than both allow",
        *adding(oils(21.3), oils(40), formula=IN_TWO),
        why(
            "formula",
            "With this 61.3 mL of oil are in E-1; orange version 1 calls for 60 mL, at most "
            "61.2 mL.",
        ),
    ),
    Case("litres, as much as is allowed", *adding(oils(2100), formula=LARGE)),
    Case(
        "litres, more by so little that three decimals would hide it",
        *adding(oils(2100.4), formula=LARGE),
        why(
            "formula",
            "With this 2.1004 L of oil are in E-1; orange version 1 calls for 2 L, at most 2.1 L.",
        ),
    ),
    Case(
        "litres, more than three decimals show",
        *adding(oils(2123.4567), formula=LARGE),
        why(
            "formula",
            "With this 2.123 L of oil are in E-1; orange version 1 calls for 2 L, at most 2.1 L.",
        ),
    ),
    Case(
        "kilograms, more by a milligram",
        *adding(make(Add, source="C-1", amount=grams(3150.001)), formula=LARGE),
        why(
            "formula",
            "With this 3.150001 kg of carb are in E-1; orange version 1 calls for 3 kg, at most "
            "3.15 kg.",
        ),
    ),
    Case("what is made here by the formula that is called for", *dosing("E-2", 126)),
    Case(
        "more of what is made here than is called for",
        *dosing("E-2", 126.1),
        why(
            "formula",
            "With this 126.1 mL of orange-essence are in E-1; syrup version 1 calls for 120 mL, at "
            "most 126 mL.",
        ),
    ),
    Case(
        "what is made here by another formula, when one is called for",
        *dosing("S-1", 120),
        why(
            "formula",
            "S-1 is not in syrup version 1, which calls for oil, carb, orange-essence.",
        ),
    ),
    Case(
        "what is made here by no formula, when one is called for",
        *dosing("E-3", 120),
        why(
            "formula",
            "E-3 is not in syrup version 1, which calls for oil, carb, orange-essence.",
        ),
    ),
    Case("a formula without materials", *adding(oils(99), formula=make(Formula))),
    Case("no formula", draft(oils(99)), scene(lot(), oil())),
]


def finishing(*added: Facts, volume: float = 448, **changes: Any) -> tuple[Any, Any]:
    formula = replace(ORANGE, **changes)
    return draft(make(Finish, volume=ml(volume))), follows(formula, *added, inputs=INPUTS)


MISSING = "Record the addition that is missing: pottle add ... (or say why with --because)."
OUTCOME = "Find out why, and say it with --because."
SHARES = {"lines": (), "yield_min_mpct": 80_000, "yield_max_mpct": 100_000}
ENDS = [
    Case("all is in, at the least that is allowed", *finishing(oils(32.34), CARB)),
    Case(
        "a little short",
        *finishing(oils(32.339), CARB),
        why(
            "formula",
            "Of oil 32.339 mL went into E-1; orange version 1 calls for 33 mL, at least 32.34 mL.",
            MISSING,
        ),
    ),
    Case(
        "short by so little that three decimals of a litre would hide it",
        *finishing(oils(1899.6), replace(CARB, amount=grams(3000)), lines=LARGE_LINES),
        why(
            "formula",
            "Of oil 1.8996 L went into E-1; orange version 1 calls for 2 L, at least 1.9 L.",
            MISSING,
        ),
    ),
    Case("less where no tolerance is given", *finishing(oils(33), replace(CARB, amount=grams(1)))),
    Case(
        "the least of it where no tolerance is given",
        *finishing(oils(33), replace(CARB, amount=grams(0.001))),
    ),
    Case(
        "nothing of two materials",
        *finishing(),
        why(
            "formula",
            "Of oil nothing went into E-1; orange version 1 calls for 33 mL, at least 32.34 mL.",
            MISSING,
        )
        + why(
            "formula",
            "Of carb nothing went into E-1; orange version 1 calls for 20 g.",
            MISSING,
        ),
    ),
    Case(
        "none of what is made here",
        draft(make(Finish)),
        follows(SYRUPS, oils(33), CARB, inputs=(*INPUTS, ESSENCE)),
        why(
            "formula",
            "Of orange-essence nothing went into E-1; syrup version 1 calls for 120 mL, at least "
            "114 mL.",
            MISSING,
        ),
    ),
    Case("a material on two lines, the least of both", *finishing(oils(58.8), lines=TWO_LINES)),
    Case(
        "a material on two lines, told once when it is short",
        *finishing(oils(40), lines=TWO_LINES),
        why(
            "formula",
            "Of oil 40 mL went into E-1; orange version 1 calls for 60 mL, at least 58.8 mL.",
            MISSING,
        ),
    ),
    Case(
        "what was weighed without a density is not compared",
        *finishing(make(Add, amount=grams(1)), CARB),
    ),
    Case("the least yield", *finishing(volume=360, **SHARES)),
    Case("the greatest yield", *finishing(volume=450, **SHARES)),
    Case(
        "less than the least",
        *finishing(volume=337.5, **SHARES),
        why(
            "yield",
            "337.5 mL are 75 % of the 450 mL aimed at; orange version 1 expects 80 % to 100 %.",
            OUTCOME,
        ),
    ),
    Case(
        "less by so little that one decimal would hide it",
        *finishing(volume=359.9, **SHARES),
        why(
            "yield",
            "359.9 mL are 79.978 % of the 450 mL aimed at; orange version 1 expects 80 % to 100 %.",
            OUTCOME,
        ),
    ),
    Case(
        "less by what a thousandth of a per cent would hide",
        *finishing(volume=359.999, **SHARES),
        why(
            "yield",
            "359.999 mL are 79.9998 % of the 450 mL aimed at; orange version 1 expects 80 % to "
            "100 %.",
            OUTCOME,
        ),
    ),
    Case(
        "more than the greatest",
        *finishing(volume=459, **SHARES),
        why(
            "yield",
            "459 mL are 102 % of the 450 mL aimed at; orange version 1 expects 80 % to 100 %.",
            OUTCOME,
        ),
    ),
    Case("finished without a formula", draft(make(Finish, volume=ml(1))), scene(lot())),
    Case(
        "a lot that is not known",
        draft(make(Finish)),
        scene(control=Control(formula=ORANGE, inputs=INPUTS)),
    ),
    Case("no yield is expected", *finishing(volume=1, lines=())),
]


@pytest.mark.parametrize("case", [*ADDITIONS, *ENDS], ids=str)
def test_what_goes_in_and_comes_out_is_what_the_formula_calls_for(case: Case) -> None:
    assert find(following_amounts.RULES, case) == list(case.found)
