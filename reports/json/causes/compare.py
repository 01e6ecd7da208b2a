"""A trial compared, for machines: stable keys, figures as decimals in text.

Guarantees: the keys are documented in DEVELOPERS.md and only ever added to. Refuses: floats, and
levels of a factor that moved together with something.
"""

from typing import Any

from ledger.science.statistics.trials import Factor, Jar, mean
from ledger.service.causes.compare import GRADES, Comparison
from reports.words.causes.compare import comparison_view
from reports.words.causes.odds import decimal


def comparison_plain(found: Comparison) -> dict[str, Any]:
    """Return a trial for machines; a factor that moved with another has no levels."""
    view = comparison_view(found)
    return {
        "group": found.group,
        "batches": [_jar_plain(jar, found) for jar in found.jars],
        "control": [jar.lot for jar in found.jars if jar.is_control],
        "factors": [_factor_plain(item) for item in found.factors],
        "front": [jar.lot for jar in found.front],
        "repeats": {
            "batches": found.spread.batches,
            "grades": found.spread.grade,
            "ntu": decimal(found.spread.ntu),
            "yield_pct": decimal(found.spread.yield_pct),
        },
        "held_constant": [brief.code for brief in found.held],
        "says": [*view.lines, *(item.words for item in view.factors), view.front],
    }


def _factor_plain(factor: Factor) -> dict[str, Any]:
    levels = () if factor.moved_with else factor.levels
    return {
        "factor": factor.name,
        "confounded_with": list(factor.moved_with),
        "levels": [
            {
                "level": level,
                "n": len(jars),
                "batches": [jar.lot for jar in jars],
                "ntu": decimal(mean([jar.ntu for jar in jars])),
                "yield_pct": decimal(mean([jar.yield_pct for jar in jars])),
            }
            for level, jars in levels
        ],
    }


def _jar_plain(jar: Jar, found: Comparison) -> dict[str, Any]:
    return {
        "lot": jar.lot,
        "factors": [{"factor": name, "level": level} for name, level in jar.factors.items()],
        "is_control": jar.is_control,
        "looks": [{"age": age, "grade": str(GRADES[rank])} for age, rank in jar.grades],
        "ntu": decimal(jar.ntu),
        "yield_pct": decimal(jar.yield_pct),
        "is_front": jar in found.front,
    }
