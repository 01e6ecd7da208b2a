"""What the judge says of many small years is kept whole: verdict, lead, counts and chances."""

from collections.abc import Iterator

from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Cause, Judgement, Suspect
from tests.benchmarks.innocent import observed
from tests.benchmarks.worlds import World, play
from tests.kept.golden import check_golden
from tests.science.statistics.judged import in_turn

YEARS = (
    World(12, rate=0.2, oils=3, is_bad=True),
    World(12, rate=0.3),
    World(16, rate=0.15, oils=4, is_bad=True),
    World(16, rate=0.25, shared=0.6),
    World(20, rate=0.25, drift="up", shared=0.5),
)
"""Small enough that all is said of some: shown, a lead, not separable, nothing, too few."""


def test_all_that_the_judge_says_of_small_years_is_kept() -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    check_golden("judged.txt", "".join(f"{line}\n" for line in _told()))


def _told() -> Iterator[str]:
    for number, year in enumerate(YEARS, 1):
        for seed in range(12):
            yield f"year {number}, seed {seed}"
            yield from _lines(judge(observed(play(year, seed))))
    for bad, clear in (("A", ""), ("AB", ""), ("AW", "W"), ("A", "B"), ("AB", "B")):
        for each in (1, 2, 3, 4):
            yield f"{each} with {bad}, others with {clear or 'nothing'}"
            yield from _lines(judge(in_turn(bad, clear, each=each)))


def _lines(found: Judgement) -> Iterator[str]:
    yield (
        f"  {found.verdict.name}: {len(found.failed)} failed, {len(found.clear)} clear, "
        f"{len(found.elsewhere)} elsewhere; {found.tested} tested, {len(found.untested)} not; "
        f"{found.top.failed} of {found.top.units} by {found.top.level}; least {found.least_p}"
    )
    yield from (f"  named {_suspect(one)}" for one in found.named)
    yield from (f"  lead {_suspect(one)}" for one in [found.lead] if one)
    yield from (f"  suspect {_suspect(one)}" for one in found.suspects[:4])


def _suspect(one: Suspect) -> str:
    others = "; ".join(map(_cause, one.not_separable_from)) or "alone"
    return (
        f"{_cause(one.cause)} by {one.level}, failed {one.units.failed_with} with and "
        f"{one.units.failed_without} without, clear {one.units.clear_with} and "
        f"{one.units.clear_without}, p {one.p}, of all {one.p_adjusted}: {others}"
    )


def _cause(one: Cause) -> str:
    return " ".join(filter(None, (one.sort, one.name, one.level)))
