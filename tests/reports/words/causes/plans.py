"""Planned trials and what comes of them, made of figures."""

from fractions import Fraction

from msgspec.structs import replace

from ledger.domain.entries import Plan
from ledger.domain.entries.trials import Evening, TwoLevels
from ledger.science.statistics.randomisation import TriedJar, tried
from ledger.service.causes.layout import Planned, lay_out
from ledger.service.causes.outcome import JarState, Outcome, TriedOne
from tests.planned import PLAN
from tests.reports.words.examples import entry

NAMES = {"SOO-001-3": "Sweet orange oil", "SOO-002-1": "Sweet orange oil"}
THREE = replace(
    PLAN,
    factors=(*PLAN.factors, TwoLevels("chill", "4 °C", "none"), TwoLevels("powder", "old", "new")),
    evenings=(Evening(8), Evening(8)),
)


def planned(plan: Plan, *earlier: Plan) -> Planned:
    before = tuple(entry(item, place + 20, lot=None) for place, item in enumerate(earlier))
    return Planned(entry(plan, 41, lot=None), lay_out(plan), before, is_struck=False)  # type: ignore[arg-type]


def outcome(found: Planned, lost: dict[int, tuple[JarState, str]] | None = None) -> Outcome:
    """Return what comes of jars of which those with the first suspect fail."""
    ends = lost or {}
    jars = tuple(
        TriedOne(jar, *ends[jar.number], None)
        if jar.number in ends
        else TriedOne(jar, JarState.KEPT, "", Fraction(jar.row[0]))
        for jar in found.jars
    )
    judged = [TriedJar(one.planned.evening, one.planned.row, one.score) for one in jars]
    return Outcome(found, jars, tried(judged, len(found.plan.factors), found.level))
