"""How suspects were reckoned, in words: the tests, the levels, the strata, what was not tested.

Guarantees: every stratum of a suspect that is told is shown with its counts, and what could not be
tested is named.
"""

from collections.abc import Iterator
from fractions import Fraction

from ledger.science.statistics.looks import share_left
from ledger.science.statistics.suspects import Level, Suspect
from ledger.service.causes.suspects import Suspicion
from reports.kit.format import plural
from reports.words.causes.odds import (
    Lots,
    cause_words,
    counted,
    decimal,
    listed,
    odds_words,
    p_words,
)

MOST_STRATA = 12
"""So many strata of a suspect are shown."""
LEVELS = {
    Level.BATCH: "the same in all lots of a batch of essence, so batches are counted",
    Level.BASE: "the same in all lots of a base, so bases are counted",
    Level.RUN: "it differs among lots of one batch, so these are compared with each other",
}
"""Why each level."""


def explained(suspicion: Suspicion) -> list[str]:
    """Return how it was reckoned, and the counts of what is told by stratum."""
    judgement = suspicion.judgement
    lines = [
        "How it is reckoned",
        "A run and the lots filled from it count once. Failed is a look worse than the formula "
        "wants (else than clear) or a complaint; clear is a lot that was looked at or sent and did "
        "not fail. Looks count from the end of the making on, the worst of them.",
        "Each lot that went in at any depth, each setting and the time of making is a suspect. A "
        "lot counts by its weakest link: the shortest contact, the warmest filter. Figures are put "
        "in two classes at the formula's limit, else at the median of all lots compared.",
        "Lots of one batch share its luck. What is the same in a whole batch of essence is "
        "counted by batches, and a batch failed when any lot of it did; batches that hang together "
        "by rework count once. What differs within a batch is compared within it. p is the exact "
        "chance, products apart, that failing goes with a suspect as much or more.",
        "Adjusted p allows for all suspects whose counts could have stood out at all (Tarone), "
        f"here {judgement.tested}, all dealt the same chance outcomes (Westfall and Young); a "
        "delivered lot may take twice the share of a setting. Where something stands out, each "
        "batch or lot is also given the chance of failing that its neighbours in time show, and "
        "the greater p counts. A dash is what could not stand out.",
        _asked(suspicion),
    ]
    told = judgement.named or ((judgement.lead,) if judgement.lead else ())
    for suspect in told:
        lines += _strata(suspect, suspicion.lots, judgement.level)
    return [*lines, *_not_tested(suspicion)]


def _asked(suspicion: Suspicion) -> str:
    judgement, top = suspicion.judgement, suspicion.judgement.top
    share = decimal(share_left(top.failed) * judgement.level)
    return (
        "The book cannot know how often it was asked, so every failure counts as an asking: with "
        f"{counted(top.failed, top.level)} that failed, {share} is left of the level of "
        f"{float(judgement.level):g}, and p is adjusted for that too. Named is what stays at or "
        f"below {float(judgement.level):g}, failed in three at least, and explains the failures "
        "three times as well as anything else, a stretch of time included."
    )


def _not_tested(suspicion: Suspicion) -> Iterator[str]:
    judgement, lots = suspicion.judgement, suspicion.lots
    if judgement.in_all:
        every = listed(cause_words(cause, lots) for cause in judgement.in_all)
        yield f"In every lot compared, so nothing can be said of it: {every}."
    if judgement.untested:
        out = listed(cause_words(cause, lots) for cause in judgement.untested)
        yield f"Not tested, because its counts could not stand out: {out}."


def _strata(suspect: Suspect, lots: Lots, level: Fraction) -> Iterator[str]:
    percent = f"{float(100 * (1 - level)):g} %"
    yield (
        f"{cause_words(suspect.cause, lots)}: {LEVELS[suspect.level]}. Odds of failing with it "
        f"against without, {odds_words(suspect.odds(level), percent)}."
    )
    for name, table in suspect.strata[:MOST_STRATA]:
        yield (
            f"  {name}: in {table.failed_with} of {table.failed} failed, "
            f"in {table.clear_with} of {table.clear} clear"
        )
    if len(suspect.strata) > MOST_STRATA:
        yield f"  and {plural(len(suspect.strata) - MOST_STRATA, 'more stratum', 'more strata')}"
    pooled = suspect.pooled(level)
    if pooled.odds:
        yield (
            "  Over these together (Mantel-Haenszel): odds "
            f"{odds_words(pooled.odds, percent)}, p {p_words(pooled.p)}."
        )
