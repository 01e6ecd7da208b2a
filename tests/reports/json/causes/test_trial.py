"""A planned trial for machines: what was drawn, and what came of it."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.domain.entries import Plan
from ledger.science.statistics.randomisation import Shown, Tried
from ledger.service.causes.layout import Planned
from ledger.service.causes.outcome import JarState, Outcome
from ledger.service.desk.book import Recorded
from reports.json.causes.trial import jars_answer, plan_answer, plan_told, trial_answer
from tests.kept.filled import bare, filled
from tests.planned import PLAN
from tests.reports.json.kept import check
from tests.reports.words.causes.plans import THREE, outcome, planned

CHANGED = {2: (JarState.CHANGED, "chill was set to none")}


def test_the_answer_for_machines_names_the_cause_and_what_became_of_every_jar() -> None:
    told = plan_told(outcome(planned(THREE), CHANGED))
    assert told.cause_levels == ("SOO-002-1",)
    assert [item.verdict for item in told.tried] == [Shown.CAUSE, Shown.NONE, Shown.NONE]
    assert {jar.score for jar in told.jars} == {"0", "1", None}


def test_every_field_of_a_plan_and_of_its_outcome_is_the_kept_one() -> None:
    """A chance of nought is told as nought."""
    found = planned(THREE)
    second = planned(replace(PLAN, level_mpct=2500), PLAN)
    done = Recorded(found.entry)
    begun = [Recorded(found.entry, jar.code) for jar in found.jars[:2]]
    every = outcome(found, CHANGED)
    never = tuple(
        Tried(Shown.LEAD, Fraction(p), Fraction(p), Fraction(1, 70)) for p in (0, Fraction(1, 3), 1)
    )
    check(
        "trial",
        trial_answer(second, None),
        plan_answer(done, found, "pottle start --from-plan", "sheet.pdf"),
        jars_answer(begun, found, "pottle look"),
        plan_told(every),
        plan_told(replace(every, tried=never)),
    )


def test_every_part_of_a_plan_and_of_its_outcome_stands_under_its_own_key() -> None:
    done = filled(Recorded[Plan], draws_on=(), others=())
    plans, outcomes = (filled(Planned), bare(Planned)), (filled(Outcome), bare(Outcome))
    check(
        "trial_filled",
        *(trial_answer(found, "sheet.pdf") for found in plans),
        plan_answer(done, plans[0], "next", "sheet.pdf"),
        *map(plan_told, outcomes),
    )
