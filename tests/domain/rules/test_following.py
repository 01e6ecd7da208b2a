"""Following: what is outside the formula's limits is said, with the limits, or nothing is."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from ledger.domain.control import Control, Input
from ledger.domain.entries import (
    Add,
    Facts,
    Filter,
    Finish,
    Formula,
    Look,
    MakeUp,
    Material,
    Measurement,
    Rest,
    Start,
)
from ledger.domain.entries.masters import FormulaLine, FormulaStep
from ledger.domain.entries.words import (
    AddedAs,
    Grade,
    LookedAt,
    MaterialKind,
    ProductKind,
    RestFor,
)
from ledger.domain.lots import Status
from ledger.domain.quantity import Measure
from ledger.domain.rules import Finding, following
from ledger.domain.scene import Scene
from tests.domain.builders import at, draft, grams, lot, make, ml, oil, powder, scene, when
from tests.domain.rules.cases import HM, WHY, Case, find, said

SAY_WHY = "Check what was written; if it is so, say why with --because."


def why(rule: str, what: str, todo: str = SAY_WHY) -> list[Finding]:
    return said(WHY, rule, what, todo)


def hm(rule: str, what: str, todo: str = "") -> list[Finding]:
    return said(HM, rule, what, todo)


def follows(formula: Formula, *later: Facts, **changes: Any) -> Scene:
    """Return a scene with a batch of 450 mL that follows a formula."""
    control = Control(formula=formula, **changes)
    return scene(lot("E-1", *later), oil(), powder(), control=control)


def steps(*these: FormulaStep) -> Scene:
    return follows(make(Formula, steps=these))


def begun(day: int = 2, offset_min: int = 0, **changes: Any) -> tuple[Any, Any]:
    formula = make(Formula, valid_from=date(2026, 3, 2))
    happened = when(at(4, day=day), offset_min)
    return draft(make(Start), happened=happened), follows(formula, **changes)


LATER = "Begin the batch then, or say why with --because."
VERSIONS = [
    Case("begun on the first day that it may be used", *begun()),
    Case(
        "begun the day before",
        *begun(day=1),
        why(
            "not valid yet",
            "Version 1 of the formula orange may be used from 2026-03-02; this is 2026-03-01.",
            LATER,
        ),
    ),
    Case(
        "begun the day before by the writer's clock",
        *begun(offset_min=-300),
        why(
            "not valid yet",
            "Version 1 of the formula orange may be used from 2026-03-02; this is 2026-03-01.",
            LATER,
        ),
    ),
    Case(
        "begun by a withdrawn version",
        *begun(is_withdrawn=True),
        why(
            "withdrawn",
            "Version 1 of the formula orange is withdrawn.",
            "Load a newer one: pottle formula load FILE (or say why with --because).",
        ),
    ),
    Case("begun without a formula", draft(make(Start)), scene(control=Control(is_withdrawn=True))),
    Case(
        "withdrawn after the batch was begun",
        draft(make(Finish)),
        follows(make(Formula), is_withdrawn=True),
    ),
    Case(
        "prepared and checked by the same person",
        draft(make(Formula, version=2, prepared_by="AB", checked_by="AB"), None),
        scene(),
        hm(
            "unchecked",
            "AB prepared and checked version 2 of orange: no other person has checked it.",
        ),
    ),
    Case(
        "checked by somebody else",
        draft(make(Formula, prepared_by="AB", checked_by="CD"), None),
    ),
    Case(
        "prepared, and checked by nobody",
        draft(make(Formula, prepared_by="AB"), None),
        scene(),
        hm("unchecked", "AB prepared version 1 of orange: nobody has checked it."),
    ),
    Case("nobody is named", draft(make(Formula), None)),
]

SYRUP = Input("S-1", Measure.UL, Status.RELEASED, formula="base", product_kind=ProductKind.SYRUP)
OIL = Input("O-1", Measure.UL, Status.IN_STOCK, "oil", MaterialKind.OIL)
CARBONATE = Input("C-1", Measure.MG, Status.IN_STOCK, "carb", MaterialKind.CLARIFIER)
GUM = Input("G-1", Measure.MG, Status.IN_STOCK, "gum", MaterialKind.GUM)
INPUTS = (SYRUP, OIL, CARBONATE, GUM)
LINES = (
    FormulaLine("oil", ml(30), tolerance_mpct=2000, overage_mpct=10_000),
    FormulaLine("carb", grams(20)),
)
ORANGE = make(Formula, lines=LINES)
TWO_LINES = (
    FormulaLine("oil", ml(40), tolerance_mpct=2000),
    FormulaLine("oil", ml(20), tolerance_mpct=2000),
)
IN_TWO = make(Formula, lines=TWO_LINES)


def adding(facts: Add, *before: Facts, formula: Formula = ORANGE) -> tuple[Any, Any]:
    return draft(facts), follows(formula, *before, inputs=INPUTS)


def oils(amount: float) -> Add:
    return make(Add, amount=ml(amount))


NOT_CALLED_FOR = why(
    "formula", "G-1 is no material of orange version 1, which calls for oil, carb."
)
CARB = make(Add, source="C-1", amount=grams(20))
DENSE = scene(
    lot(),
    oil(material=make(Material, density_mg_per_l=845_000)),
    control=Control(formula=ORANGE, inputs=INPUTS),
)
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
    Case("less where no tolerance is given", *finishing(oils(33), replace(CARB, amount=grams(1)))),
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

DAYS = FormulaStep("rest", minutes_min=1440, minutes_max=2880, rest_for=RestFor.MACERATE)
COLD = FormulaStep("rest", temp_max_mdegc=5000, rest_for=RestFor.CHILL)
MILD = FormulaStep("rest", temp_min_mdegc=18_000, temp_max_mdegc=22_000, rest_for=RestFor.SETTLE)


def rested(purpose: str, hours: int, temp_mdegc: int | None = None) -> Any:
    ended = at(hours % 24, day=1 + hours // 24)
    return draft(make(Rest, purpose=RestFor(purpose), started_at=at(0, day=1), ended_at=ended,
                      temp_mdegc=temp_mdegc))  # fmt: skip


RESTS = [
    *(
        Case(f"rested for {hours} h", rested("macerate", hours), steps(DAYS))
        for hours in (24, 36, 48)
    ),
    *(
        Case(
            f"rested for {hours} h",
            rested("macerate", hours),
            steps(DAYS),
            why(
                "time",
                f"The rest to macerate took {told}; orange version 1 asks for 1 d to 2 d.",
            ),
        )
        for hours, told in ((23, "23 h"), (49, "2 d 1 h"))
    ),
    Case("a rest that goes on", draft(make(Rest)), steps(DAYS)),
    Case("a rest for something else", rested("settle", 1), steps(DAYS)),
    Case("a rest of a batch that follows nothing", rested("macerate", 1), scene(lot())),
    Case("chilled as cold as asked", rested("chill", 1, 5000), steps(COLD)),
    Case(
        "chilled too warm",
        rested("chill", 1, 5001),
        steps(COLD),
        why(
            "temperature",
            "The rest to chill was at 5.001 °C; orange version 1 asks for at most 5 °C.",
        ),
    ),
    Case(
        "chilled at nobody knows what",
        rested("chill", 1),
        steps(COLD),
        hm("temperature", "The rest to chill has no temperature; "
           "orange version 1 asks for at most 5 °C."),
    ),
    *(Case(f"settled at {temp}", rested("settle", 1, temp), steps(MILD))
      for temp in (18_000, 22_000)),
    *(
        Case(
            f"settled at {told}",
            rested("settle", 1, temp),
            steps(MILD),
            why(
                "temperature",
                f"The rest to settle was at {told}; orange version 1 asks for 18 °C to 22 °C.",
            ),
        )
        for temp, told in ((17_500, "17.5 °C"), (23_000, "23 °C"))
    ),
    Case(
        "too short and too warm, at once",
        rested("macerate", 1, 30_000),
        steps(replace(DAYS, temp_max_mdegc=25_000)),
        why("time", "The rest to macerate took 1 h; orange version 1 asks for 1 d to 2 d.")
        + why(
            "temperature",
            "The rest to macerate was at 30 °C; orange version 1 asks for at most 25 °C.",
        ),
    ),
    Case(
        "of two steps that fit, the one it keeps",
        rested("macerate", 1),
        steps(DAYS, replace(DAYS, minutes_min=60, minutes_max=120)),
    ),
    Case(
        "of two steps, the one that is only remarked on",
        rested("chill", 1),
        steps(replace(COLD, minutes_min=120), COLD),
        hm("temperature", "The rest to chill has no temperature; "
           "orange version 1 asks for at most 5 °C."),
    ),
]  # fmt: skip

FINE = FormulaStep("filter", pore_max_nm=2500)
LAID = FormulaStep("filter", precoat_min=grams(5))
QUICK = FormulaStep("filter", minutes_max=30, temp_max_mdegc=5000)
UNKNOWN = FormulaStep("filter", pore_max_nm=2500, temp_max_mdegc=5000)


def passed(**changes: Any) -> Any:
    return draft(make(Filter, **changes))


PASSES = [
    Case("as fine as asked", passed(pore_low_nm=2500), steps(FINE)),
    Case("as fine as asked at its coarsest", passed(pore_low_nm=1000, pore_high_nm=2500),
         steps(FINE)),
    Case(
        "coarser",
        passed(pore_low_nm=2501),
        steps(FINE),
        why("pores", "Pass 1 ran through 2.501 µm; orange version 1 asks for at most 2.5 µm."),
    ),
    Case(
        "coarser at its coarsest",
        passed(pass_no=2, pore_low_nm=2000, pore_high_nm=3000),
        steps(FINE),
        why("pores", "Pass 2 ran through 3 µm; orange version 1 asks for at most 2.5 µm."),
    ),
    Case(
        "of a pore size that nobody knows",
        passed(),
        steps(FINE),
        hm("pores", "Pass 1 has no pore size; orange version 1 asks for at most 2.5 µm."),
    ),
    Case(
        "the second of two passes is held to the finer step if it keeps it",
        passed(pass_no=2, pore_low_nm=2500),
        steps(replace(FINE, pore_max_nm=1000), FINE),
    ),
    Case("a precoat as asked", passed(precoat=grams(5)), steps(LAID)),
    Case(
        "too thin a precoat",
        passed(precoat=grams(4.9)),
        steps(LAID),
        why(
            "precoat",
            "Pass 1 had a precoat of 4.9 g; orange version 1 asks for at least 5 g.",
        ),
    ),
    Case(
        "no precoat",
        passed(),
        steps(LAID),
        why("precoat", "Pass 1 had no precoat; orange version 1 asks for at least 5 g."),
    ),
    Case("a later pass needs no precoat", passed(pass_no=2), steps(LAID)),
    Case(
        "two remarks weigh less than a reason",
        passed(minutes=31),
        steps(FormulaStep("filter", minutes_max=30), UNKNOWN),
        hm("pores", "Pass 1 has no pore size; orange version 1 asks for at most 2.5 µm.")
        + hm("temperature", "Pass 1 has no temperature; orange version 1 asks for at most 5 °C."),
    ),
    Case("in time and cold", passed(minutes=30, temp_mdegc=5000), steps(QUICK)),
    Case(
        "slow and warm",
        passed(minutes=31, temp_mdegc=6000),
        steps(QUICK),
        why("time", "Pass 1 took 31 min; orange version 1 asks for at most 30 min.")
        + why("temperature", "Pass 1 was at 6 °C; orange version 1 asks for at most 5 °C."),
    ),
]  # fmt: skip

SLOWLY = FormulaStep("add", minutes_min=20, temp_max_mdegc=25_000)


def at_most_20(verb: str) -> Scene:
    return steps(FormulaStep(verb, temp_max_mdegc=20_000))


TEMPERED = (("makeup", MakeUp), ("finish", Finish), ("measure", Measurement))
ACTS = [
    Case("added slowly and cool", draft(make(Add, minutes=20, temp_mdegc=25_000)), steps(SLOWLY)),
    Case(
        "added fast and warm",
        draft(make(Add, minutes=19, temp_mdegc=26_000)),
        steps(SLOWLY),
        why("time", "The adding took 19 min; orange version 1 asks for at least 20 min.")
        + why(
            "temperature", "The adding was at 26 °C; orange version 1 asks for at most 25 °C."
        ),
    ),
    Case("nobody timed the adding", draft(make(Add, temp_mdegc=25_000)), steps(SLOWLY)),
    *(
        Case(f"{verb} as asked", draft(make(act, temp_mdegc=20_000)), at_most_20(verb))
        for verb, act in TEMPERED
    ),
    *(
        Case(
            f"{verb} too warm",
            draft(make(act, temp_mdegc=21_000)),
            at_most_20(verb),
            why(
                "temperature",
                f"The step {verb} was at 21 °C; orange version 1 asks for at most 20 °C.",
            ),
        )
        for verb, act in TEMPERED
    ),
    Case(
        "looked at cold, as asked",
        draft(Look(Grade.BRIGHT, LookedAt.NEAT, temp_mdegc=4000)),
        steps(FormulaStep("look", temp_max_mdegc=4000)),
    ),
    Case(
        "looked at too warm: the look is kept",
        draft(Look(Grade.BRIGHT, LookedAt.NEAT, temp_mdegc=20_000)),
        steps(FormulaStep("look", temp_max_mdegc=4000)),
        hm(
            "look",
            "The look was at 20 °C; orange version 1 asks for at most 4 °C.",
            "Look again as the formula asks; this look is kept.",
        ),
    ),
    Case(
        "looked at otherwise than the step asks",
        draft(Look(Grade.BRIGHT, LookedAt.NEAT, temp_mdegc=20_000)),
        steps(FormulaStep("look", temp_max_mdegc=4000, looked_at=LookedAt.IN_SYRUP)),
    ),
]  # fmt: skip

CASES = [*VERSIONS, *ADDITIONS, *ENDS, *RESTS, *PASSES, *ACTS]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_what_is_outside_the_formulas_limits_is_told(case: Case) -> None:
    assert find(following.RULES, case) == list(case.found)
