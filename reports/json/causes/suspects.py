"""Suspects for machines: stable keys, counts as whole numbers, p and odds as decimals in text.

Guarantees: the keys are documented in DEVELOPERS.md and only ever added to. Refuses: floats, and
suspects where there is too little evidence.
"""

from typing import Any

from ledger.science.statistics.association import Odds, fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Conclusion, Crossing, Sort, Suspect
from ledger.service.causes.suspects import Suspicion
from reports.words.causes.odds import Lots, cause_words, decimal
from reports.words.causes.suspects import next_step, suspicion_lines


def suspicion_plain(found: Suspicion) -> dict[str, Any]:
    """Return it for machines; an odds ratio or an end of its interval without end is null."""
    judgement = found.judgement
    is_ranked = judgement.conclusion is not Conclusion.TOO_LITTLE
    suspects = judgement.suspects if is_ranked else ()
    return {
        "failed": list(judgement.failed),
        "comparable": list(judgement.clear),
        "elsewhere": list(judgement.elsewhere),
        "failed_lots": [
            {"lot": item.code, "name": item.name, "why": item.why} for item in found.failed
        ],
        "compared": found.compared,
        "suspects": [_suspect_plain(suspect, found) for suspect in suspects],
        "verdict": str(judgement.conclusion),
        "named": [_cause_plain(item.cause, found.lots) for item in judgement.named],
        "tested": judgement.tested,
        "level": decimal(judgement.level),
        "trial": _trial_plain(judgement.crossing, found.lots),
        "left_out": {
            "other_kind": [run.code for run in found.sorted.other_stage],
            "failed_otherwise": [run.code for run in found.sorted.otherwise_failed],
            "not_seen": found.sorted.not_seen,
            "too_far": found.sorted.too_far,
        },
        "says": suspicion_lines(found),
        "next": next_step(found),
    }


def _suspect_plain(suspect: Suspect, found: Suspicion) -> dict[str, Any]:
    table, lots = suspect.table, found.lots
    return {
        **_cause_plain(suspect.cause, lots),
        "failed_with": table.failed_with,
        "failed_without": table.failed_without,
        "clear_with": table.clear_with,
        "clear_without": table.clear_without,
        "odds": _odds_plain(suspect.odds),
        "p": decimal(suspect.p),
        "p_adjusted": decimal(suspect.p_adjusted),
        "not_separable_from": [_cause_plain(item, lots) for item in suspect.not_separable_from],
        "less_likely": [
            {
                **_cause_plain(item.cause, lots),
                "clear_elsewhere": item.clear_elsewhere,
                "p": decimal(item.p),
            }
            for item in suspect.set_apart
        ],
        "mantel_haenszel": {
            "odds": _odds_plain(suspect.pooled.odds),
            "p": decimal(suspect.pooled.p),
            "strata": suspect.pooled.strata,
        },
        "by_batch": _by_batch_plain(suspect.by_batch),
        "is_named": suspect in found.judgement.named,
        "is_explained_by_a_stronger": suspect.is_explained,
    }


def _by_batch_plain(table: Table | None) -> dict[str, Any] | None:
    if table is None:
        return None
    return {
        "failed_with": table.failed_with,
        "failed_without": table.failed_without,
        "clear_with": table.clear_with,
        "clear_without": table.clear_without,
        "p": decimal(fisher(table)),
    }


def _cause_plain(cause: Cause, lots: Lots) -> dict[str, Any]:
    key = "lot" if cause.sort is Sort.LOT else "setting"
    level = {} if cause.sort is Sort.LOT else {"level": cause.level}
    return {
        "what": cause_words(cause, lots),
        key: cause.name,
        **level,
        **({"absent": True} if cause.is_absent else {}),
    }


def _odds_plain(odds: Odds | None) -> dict[str, str | None] | None:
    if odds is None:
        return None
    return {
        "ratio": decimal(odds.ratio),
        "low": decimal(odds.low),
        "high": decimal(odds.high),
    }


def _trial_plain(crossing: Crossing | None, lots: Lots) -> dict[str, Any] | None:
    if crossing is None:
        return None
    return {
        "arms": [_cause_plain(cause, lots) for cause in crossing.arms],
        "has_control": crossing.has_control,
        "jars_each": crossing.jars_each,
        "jars": crossing.jars,
        "p": decimal(crossing.p),
    }
