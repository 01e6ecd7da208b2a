"""Suspects, for machines: the verdict, every suspect at its own level, and what to try next."""

from msgspec.structs import asdict

from ledger.science.statistics.association import Odds, Pooled
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import (
    Cause,
    Conclusion,
    Counted,
    Level,
    SetApart,
    Sort,
    Suspect,
)
from ledger.service.causes.failed import Sorted
from ledger.service.causes.suspects import Suspicion
from reports.json.kit.answer import Answer, Code, Figure
from reports.words.causes.odds import Lots, cause_words, decimal
from reports.words.causes.steps import next_step, trial_factors
from reports.words.causes.suspects import suspicion_lines


class CauseTold(Answer, frozen=True):
    """One thing that a lot may have had or not: a lot that went in, a setting, or a time."""

    what: str
    """What it is, in words."""
    lot: Code | None
    """Code of the lot, where it is one."""
    setting: str | None
    """Name of the setting, where it is one; `begun` where it is a time."""
    level: str | None
    """Level of the setting, or the days."""


class OddsTold(Answer, frozen=True):
    """An odds ratio with its interval."""

    ratio: Figure | None
    """How many times greater the odds of failing are with the suspect; null: without end."""
    low: Figure | None
    """Lower end of its interval."""
    high: Figure | None
    """Upper end; null: without end."""


class CountsTold(Answer, frozen=True):
    """What failed and what stayed clear, with a suspect and without it."""

    failed_with: int
    """Failed with it."""
    failed_without: int
    """Failed without it."""
    clear_with: int
    """Clear with it."""
    clear_without: int
    """Clear without it."""


class StratumTold(CountsTold, frozen=True):
    """The counts among what is compared with each other."""

    stratum: str
    """What: a product, or a product and the batch of essence in it."""


class LessLikely(CauseTold, frozen=True):
    """What went with a suspect here, but also into other products without harm."""

    clear_elsewhere: int
    """In how many clear batches of other products it was too."""
    p: Figure | None
    """Exact p that batches with it fail as often without the suspect as with it."""


class PooledTold(Answer, frozen=True):
    """What the Mantel-Haenszel method makes of the strata."""

    odds: OddsTold | None
    """The common odds ratio; null when nothing tells of it."""
    p: Figure | None
    """Its p."""
    strata: int
    """How many strata tell anything."""


class SuspectTold(CauseTold, frozen=True):
    """Something that some of the lots had and others had not, with the counts of lots."""

    failed_with: int
    """Lots that failed with it."""
    failed_without: int
    """Lots that failed without it."""
    clear_with: int
    """Clear lots with it."""
    clear_without: int
    """Clear lots without it."""
    counted: Level
    """What is counted once in the test: batches of essence, bases, or runs within a batch."""
    units: CountsTold
    """The counts that the test is of."""
    strata: tuple[StratumTold, ...]
    """The same, stratum by stratum."""
    odds: OddsTold
    """Conditional odds ratio at its level within strata, with its exact interval."""
    p: Figure | None
    """Exact p at its level within strata, one-sided."""
    p_adjusted: Figure | None
    """p allowing for all tested, for drift and for every asking; null: could not stand out."""
    not_separable_from: tuple[CauseTold, ...]
    """What these lots cannot tell it from."""
    less_likely: tuple[LessLikely, ...]
    """What went with it here, but also into other products without harm."""
    mantel_haenszel: PooledTold
    """The same strata pooled."""
    is_named: bool
    """Whether it is shown to be a cause."""


class FailedTold(Answer, frozen=True):
    """A failed lot."""

    code: Code
    """Its code."""
    name: str
    """What it is."""
    why: str
    """Why it counts as failed."""


class LeftOut(Answer, frozen=True):
    """Lots that were not counted."""

    other_kind_codes: tuple[Code, ...]
    """Failed, but of another kind of product."""
    failed_otherwise_codes: tuple[Code, ...]
    """Comparable, but failed in a way not asked for."""
    not_seen: int
    """How many comparable lots nobody looked at or was sent."""
    too_far: int
    """How many clear lots were left out because many nearer in time are there."""


class TopTold(Answer, frozen=True):
    """What is counted at the highest level."""

    counted: Level
    """What: batches of essence, bases or runs."""
    units: int
    """How many there are."""
    failed: int
    """Of how many of them a lot failed."""


class PlanTold(Answer, frozen=True):
    """The trial that would decide."""

    question: str
    """Its name."""
    factors: tuple[str, ...]
    """What to try: codes of lots and names of settings that cannot be told apart."""


class SuspectsAnswer(Answer, frozen=True):
    """What failed lots share that comparable clear ones do not, and how sure that is."""

    failed_codes: tuple[Code, ...]
    """The failed lots."""
    comparable_codes: tuple[Code, ...]
    """Clear lots of the same products."""
    elsewhere_codes: tuple[Code, ...]
    """Clear lots of other products of the kind."""
    failed_lots: tuple[FailedTold, ...]
    """The failed lots, each with why."""
    compared: str
    """What was compared: a product, several, or a kind of product."""
    top: TopTold
    """What is counted at the highest level."""
    suspects: tuple[SuspectTold, ...]
    """All suspects, the strongest first; empty where there are too few lots to tell."""
    verdict: Conclusion
    """Cause shown, a lead, what cannot be told apart, too few to tell, or nothing."""
    named: tuple[CauseTold, ...]
    """What is shown to be a cause."""
    tested: int
    """How many suspects were tested and allowed for."""
    untested: tuple[CauseTold, ...]
    """What could not have stood out with these counts."""
    significance: Figure | None
    """The level kept to: in how many books at most an innocent is ever named."""
    trial: PlanTold | None
    """The trial to make next."""
    tried_in: str | None
    """Name of the last trial planned of what is named or leads; null where none was."""
    left_out: LeftOut
    """Lots that were not counted."""
    sentences: tuple[str, ...]
    """What a maker should know first, a line each."""
    next: str
    """The command that usually comes next."""


def suspects_answer(found: Suspicion) -> SuspectsAnswer:
    """Return what failed lots share; a ratio or an end of its interval without end is null."""
    judgement, lots = found.judgement, found.lots
    is_ranked = judgement.verdict is not Conclusion.TOO_FEW
    factors = trial_factors(found)
    return SuspectsAnswer(
        failed_codes=judgement.failed,
        comparable_codes=judgement.clear,
        elsewhere_codes=judgement.elsewhere,
        failed_lots=tuple(FailedTold(item.code, item.name, item.why) for item in found.failed),
        compared=found.compared,
        top=_top(judgement.top),
        suspects=tuple(_suspect(item, found) for item in judgement.suspects if is_ranked),
        verdict=judgement.verdict,
        named=tuple(_cause(item.cause, lots) for item in judgement.named),
        tested=judgement.tested,
        untested=tuple(_cause(cause, lots) for cause in judgement.untested),
        significance=decimal(judgement.level),
        trial=PlanTold(found.compared, factors) if factors else None,
        tried_in=found.tried_in,
        left_out=_left_out(found.sorted),
        sentences=tuple(suspicion_lines(found)),
        next=next_step(found),
    )


def _suspect(suspect: Suspect, found: Suspicion) -> SuspectTold:
    lots, judgement = found.lots, found.judgement
    return SuspectTold(
        **asdict(_cause(suspect.cause, lots)),
        **asdict(_counts(suspect.table)),
        counted=suspect.level,
        units=_counts(suspect.units),
        strata=tuple(
            StratumTold(**asdict(_counts(table)), stratum=name) for name, table in suspect.strata
        ),
        odds=_odds(suspect.odds(judgement.level)),
        p=decimal(suspect.p),
        p_adjusted=decimal(suspect.p_adjusted),
        not_separable_from=tuple(_cause(item, lots) for item in suspect.not_separable_from),
        less_likely=tuple(_less_likely(item, lots) for item in suspect.set_apart),
        mantel_haenszel=_pooled(suspect.pooled(judgement.level)),
        is_named=suspect in judgement.named,
    )


def _cause(cause: Cause, lots: Lots) -> CauseTold:
    is_lot = cause.sort is Sort.LOT
    return CauseTold(
        what=cause_words(cause, lots),
        lot=cause.name if is_lot else None,
        setting=None if is_lot else cause.name,
        level=None if is_lot else cause.level,
    )


def _less_likely(item: SetApart, lots: Lots) -> LessLikely:
    return LessLikely(
        **asdict(_cause(item.cause, lots)),
        clear_elsewhere=item.clear_elsewhere,
        p=decimal(item.p),
    )


def _counts(table: Table) -> CountsTold:
    return CountsTold(
        table.failed_with, table.failed_without, table.clear_with, table.clear_without
    )


def _top(top: Counted) -> TopTold:
    return TopTold(top.level, top.units, top.failed)


def _pooled(pooled: Pooled) -> PooledTold:
    odds = _odds(pooled.odds) if pooled.odds else None
    return PooledTold(odds, decimal(pooled.p), pooled.strata)


def _odds(odds: Odds) -> OddsTold:
    return OddsTold(decimal(odds.ratio), decimal(odds.low), decimal(odds.high))


def _left_out(out: Sorted) -> LeftOut:
    return LeftOut(
        other_kind_codes=tuple(run.code for run in out.other_stage),
        failed_otherwise_codes=tuple(run.code for run in out.otherwise_failed),
        not_seen=out.not_seen,
        too_far=out.too_far,
    )
