"""Following: each act keeps the limits of the formula's step for it, or they are said."""

from datetime import timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Add, Filter, Finish, Formula, Look, MakeUp, Measurement, Rest
from ledger.domain.entries.choices import Grade, LookedAt, RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.formula import acts as following_steps
from tests.domain.builders import at, draft, grams, lot, make, scene
from tests.domain.rules.cases import Case, find
from tests.domain.rules.formula.followed import follows, hm, why


def steps(*these: FormulaStep) -> Scene:
    return follows(make(Formula, steps=these))


DAYS = FormulaStep("rest", minutes_min=1440, minutes_max=2880, rest_for=RestFor.MACERATE)
COLD = FormulaStep("rest", temp_max_mdegc=5000, rest_for=RestFor.CHILL)
MILD = FormulaStep("rest", temp_min_mdegc=18_000, temp_max_mdegc=22_000, rest_for=RestFor.SETTLE)


def rested(purpose: str, hours: int, temp_mdegc: int | None = None, seconds: int = 0) -> Any:
    ended = at(hours % 24, day=1 + hours // 24) + timedelta(seconds=seconds)
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
    *(
        Case(
            f"rested for {told}",
            rested("macerate", hours, seconds=seconds),
            steps(DAYS),
            why(
                "time",
                f"The rest to macerate took {told}; orange version 1 asks for 1 d to 2 d.",
            ),
        )
        for hours, seconds, told in (
            (24, -1, "23 h 59 min 59 s"), (48, 20, "2 d 20 s"), (23, 20, "23 h"),
        )
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
    Case(
        "of two steps that are only remarked on, the one with fewer remarks",
        passed(),
        steps(UNKNOWN, FINE),
        hm("pores", "Pass 1 has no pore size; orange version 1 asks for at most 2.5 µm."),
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


@pytest.mark.parametrize("case", [*RESTS, *PASSES, *ACTS], ids=str)
def test_an_act_outside_the_limits_of_its_step_is_told(case: Case) -> None:
    assert find(following_steps.RULES, case) == list(case.found)
