"""Suspects for machines: counts as whole numbers, p and odds as decimals in text.

Refuses: floats, and suspects where there is too little evidence.
"""

from msgspec.structs import asdict

from ledger.science.statistics.association import Odds, Pooled, fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import (
    Cause,
    Conclusion,
    Crossing,
    SetApart,
    Sort,
    Suspect,
)
from ledger.service.causes.failed import Sorted
from ledger.service.causes.suspects import Suspicion
from reports.json.kit.answer import Answer, Code, Figure
from reports.words.causes.odds import Lots, cause_words, decimal
from reports.words.causes.suspects import next_step, suspicion_lines


class CauseTold(Answer, frozen=True):
    """One thing that a lot may have had or not: a lot that went in, or a setting."""

    what: str
    """What it is, in words."""
    lot: Code | None
    """Code of the lot, where it is one."""
    setting: str | None
    """Name of the setting, where it is one."""
    level: str | None
    """Level of the setting."""
    absent: bool
    """Whether it is its absence that is suspected."""


class OddsTold(Answer, frozen=True):
    """An odds ratio with its interval."""

    ratio: Figure | None
    """How many times greater the odds of failing are with the suspect; null: without end."""
    low: Figure | None
    """Lower end of its interval."""
    high: Figure | None
    """Upper end; null: without end."""


class CountsTold(Answer, frozen=True):
    """Failed and clear lots, with a suspect and without it."""

    failed_with: int
    """Failed with it."""
    failed_without: int
    """Failed without it."""
    clear_with: int
    """Clear with it."""
    clear_without: int
    """Clear without it."""


class BatchCounts(CountsTold, frozen=True):
    """The counts when lots of one batch of essence count once."""

    p: Figure | None
    """The exact p of these counts."""


class LessLikely(CauseTold, frozen=True):
    """What went with a suspect here, but also into other products without harm."""

    clear_elsewhere: int
    """In how many clear lots of other products it was too."""
    p: Figure | None
    """Exact p that lots with it fail as often without the suspect as with it."""


class PooledTold(Answer, frozen=True):
    """What the Mantel-Haenszel method makes of products and makers."""

    odds: OddsTold | None
    """The common odds ratio; null when nothing tells of it."""
    p: Figure | None
    """Its p."""
    strata: int
    """How many products and makers tell anything."""


class SuspectTold(CauseTold, frozen=True):
    """Something that some of the lots had and others had not, with the counts."""

    failed_with: int
    """Failed with it."""
    failed_without: int
    """Failed without it."""
    clear_with: int
    """Clear with it."""
    clear_without: int
    """Clear without it."""
    odds: OddsTold
    """Conditional odds ratio within products, with its exact interval."""
    p: Figure | None
    """Exact p within products, two-sided."""
    p_adjusted: Figure | None
    """p allowing for all that were tested; null when it never could have stood out."""
    not_separable_from: tuple[CauseTold, ...]
    """What always went with it in these lots."""
    less_likely: tuple[LessLikely, ...]
    """What went with it here, but also into other products without harm."""
    mantel_haenszel: PooledTold
    """The same pooled over product and maker."""
    by_batch: BatchCounts | None
    """The counts by batch of essence; null where it differs within a batch."""
    is_named: bool
    """Whether it stands out and is not explained by a stronger one."""
    is_explained_by_a_stronger: bool
    """Whether it only goes along with a stronger suspect."""


class FailedTold(Answer, frozen=True):
    """A failed lot."""

    code: Code
    """Its code."""
    name: str
    """What it is."""
    why: str
    """Why it counts as failed."""


class TrialTold(Answer, frozen=True):
    """The cheapest trial that would tell suspects apart."""

    arms: tuple[CauseTold, ...]
    """What is tried by itself, each in jars of its own."""
    has_control: bool
    """Whether jars without any of them stand beside."""
    jars_each: int
    """How many jars an arm takes."""
    jars: int
    """How many jars it takes in all."""
    p: Figure | None
    """The exact p, adjusted, when one arm fails in every jar and no other jar does."""


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
    suspects: tuple[SuspectTold, ...]
    """All suspects, the strongest first; empty where there is too little evidence."""
    verdict: Conclusion
    """What the evidence comes to."""
    named: tuple[CauseTold, ...]
    """What stands out and is not explained by a stronger one."""
    tested: int
    """How many suspects were tested and allowed for."""
    significance: Figure | None
    """The level kept to: how often at most something is named when nothing is a cause."""
    trial: TrialTold | None
    """The trial to make next."""
    left_out: LeftOut
    """Lots that were not counted."""
    sentences: tuple[str, ...]
    """What a maker should know first, a line each."""
    next: str
    """The command that usually comes next."""


def suspects_answer(found: Suspicion) -> SuspectsAnswer:
    """Return what failed lots share; a ratio or an end of its interval without end is null."""
    judgement, lots = found.judgement, found.lots
    is_ranked = judgement.conclusion is not Conclusion.TOO_LITTLE
    suspects = judgement.suspects if is_ranked else ()
    return SuspectsAnswer(
        failed_codes=judgement.failed,
        comparable_codes=judgement.clear,
        elsewhere_codes=judgement.elsewhere,
        failed_lots=tuple(FailedTold(item.code, item.name, item.why) for item in found.failed),
        compared=found.compared,
        suspects=tuple(_suspect(suspect, found) for suspect in suspects),
        verdict=judgement.conclusion,
        named=tuple(_cause(item.cause, lots) for item in judgement.named),
        tested=judgement.tested,
        significance=decimal(judgement.level),
        trial=_trial(judgement.crossing, lots) if judgement.crossing else None,
        left_out=_left_out(found.sorted),
        sentences=tuple(suspicion_lines(found)),
        next=next_step(found),
    )


def _suspect(suspect: Suspect, found: Suspicion) -> SuspectTold:
    lots = found.lots
    return SuspectTold(
        **asdict(_cause(suspect.cause, lots)),
        **asdict(_counts(suspect.table)),
        odds=_odds(suspect.odds),
        p=decimal(suspect.p),
        p_adjusted=decimal(suspect.p_adjusted),
        not_separable_from=tuple(_cause(item, lots) for item in suspect.not_separable_from),
        less_likely=tuple(_less_likely(item, lots) for item in suspect.set_apart),
        mantel_haenszel=_pooled(suspect.pooled),
        by_batch=_by_batch(suspect.by_batch) if suspect.by_batch else None,
        is_named=suspect in found.judgement.named,
        is_explained_by_a_stronger=suspect.is_explained,
    )


def _cause(cause: Cause, lots: Lots) -> CauseTold:
    is_lot = cause.sort is Sort.LOT
    return CauseTold(
        what=cause_words(cause, lots),
        lot=cause.name if is_lot else None,
        setting=None if is_lot else cause.name,
        level=None if is_lot else cause.level,
        absent=cause.is_absent,
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


def _by_batch(table: Table) -> BatchCounts:
    return BatchCounts(**asdict(_counts(table)), p=decimal(fisher(table)))


def _pooled(pooled: Pooled) -> PooledTold:
    odds = _odds(pooled.odds) if pooled.odds else None
    return PooledTold(odds, decimal(pooled.p), pooled.strata)


def _odds(odds: Odds) -> OddsTold:
    return OddsTold(decimal(odds.ratio), decimal(odds.low), decimal(odds.high))


def _trial(crossing: Crossing, lots: Lots) -> TrialTold:
    return TrialTold(
        arms=tuple(_cause(cause, lots) for cause in crossing.arms),
        has_control=crossing.has_control,
        jars_each=crossing.jars_each,
        jars=crossing.jars,
        p=decimal(crossing.p),
    )


def _left_out(out: Sorted) -> LeftOut:
    return LeftOut(
        other_kind_codes=tuple(run.code for run in out.other_stage),
        failed_otherwise_codes=tuple(run.code for run in out.otherwise_failed),
        not_seen=out.not_seen,
        too_far=out.too_far,
    )
