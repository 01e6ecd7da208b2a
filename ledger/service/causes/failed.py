"""Sorting making runs into failed and clear, for what they are compared by.

Guarantees: a run and the lots filled from it are one; only lots that were looked at or sent count
as clear; what failed in another way than asked for is left out, not counted as clear. Refuses: to
mix stages; a syrup and the essence in it would be the same failure twice.
"""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from fractions import Fraction
from math import comb

from msgspec import Struct

from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, Purpose
from ledger.domain.masters.formulas import worst_wanted
from ledger.store.read.runs import Found, Run, Seen

GRADES = tuple(Grade)
"""Grades, best first."""
USUAL = Grade.CLEAR
"""How a lot should look when its formula does not say."""
MOST_COMPARED = 400
"""At most so many clear lots are compared, the nearest in time."""


class Sought(Struct, frozen=True):
    """What counts as failed."""

    lots: frozenset[int]
    """Numbers of runs named as failed; empty: by looks and complaints."""
    complaints: bool
    """Whether complaints count."""
    looks: bool
    """Whether looks count."""
    worse_than: Grade | None
    """A look must be worse than this too."""
    since: str
    """Only runs begun from then on, UTC instant text; empty: all."""


class Sorted(Struct, frozen=True):
    """Runs sorted for a comparison."""

    failed: tuple[Run, ...]
    """Failed."""
    clear: tuple[Run, ...]
    """Clear, of the same products, or of the kind when these are too few."""
    elsewhere: tuple[Run, ...]
    """Clear, of other products of the kind."""
    reasons: Mapping[int, str]
    """Why each failed."""
    is_by_kind: bool
    """Whether all products of the kind are compared, not one product with itself."""
    other_stage: tuple[Run, ...]
    """Failed, but of another kind of product."""
    otherwise_failed: tuple[Run, ...]
    """Comparable, but failed in a way not asked for."""
    not_seen: int
    """How many comparable runs nobody looked at or was sent."""
    too_far: int
    """How many clear runs were left out because many nearer in time are there."""


def sort_runs(
    runs: Sequence[Run],
    found: Found,
    formulas: Mapping[tuple[str, int], Formula],
    sought: Sought,
    level: Fraction,
) -> Sorted:
    """Return the failed runs and those they are compared with."""
    is_trial = any(run.lot in sought.lots and run.purpose is Purpose.TRIAL for run in runs)
    counted = [run for run in runs if _counts(run, sought, is_trial=is_trial)]
    faults = {run.lot: _faults(run, found, formulas, sought.worse_than) for run in counted}
    failed = [run for run in counted if _has_failed(run, faults[run.lot], sought)]
    stage = _stage(failed)
    same = [run for run in failed if run.product_kind == stage]
    others = [run for run in counted if run.product_kind == stage and run not in same]
    products = {run.product for run in same}
    alike = [run for run in others if run.product in products]
    # Too few lots of one product can tell nothing, however they divide; the whole kind may.
    is_by_kind = not _could_tell(len(same), sum(_is_clear(r, found, faults) for r in alike), level)
    pool = others if is_by_kind else alike
    good = [run for run in others if _is_clear(run, found, faults)]
    near = _nearest(good, same)
    clear = tuple(run for run in near if is_by_kind or run.product in products)
    return Sorted(
        failed=tuple(same),
        clear=clear,
        elsewhere=tuple(run for run in near if run not in clear),
        reasons={run.lot: _told(faults[run.lot]) for run in same},
        is_by_kind=is_by_kind and any(run.product not in products for run in clear),
        other_stage=tuple(run for run in failed if run.product_kind != stage),
        otherwise_failed=tuple(run for run in pool if faults[run.lot]),
        not_seen=sum(not _was_seen(run, found) for run in pool),
        too_far=len(good) - len(near),
    )


def _counts(run: Run, sought: Sought, *, is_trial: bool) -> bool:
    """Return whether a run takes part; trials, made to fail or not, only beside one named."""
    if run.lot in sought.lots:
        return True
    return run.began_at >= sought.since and (is_trial or run.purpose is Purpose.SALE)


def _has_failed(run: Run, faults: Mapping[str, str], sought: Sought) -> bool:
    if sought.lots:
        return run.lot in sought.lots
    return (sought.looks and "look" in faults) or (sought.complaints and "complaint" in faults)


def _faults(
    run: Run,
    found: Found,
    formulas: Mapping[tuple[str, int], Formula],
    worse_than: Grade | None,
) -> dict[str, str]:
    """Return what was wrong with a run: a complaint, a look worse than wanted, or both."""
    faults: dict[str, str] = {}
    lots = (run.lot, *found.packed.get(run.lot, ()))
    symptoms = dict.fromkeys(text for lot in lots for text in found.complaints.get(lot, ()))
    if symptoms:
        listed = ", ".join(f'"{symptom}"' for symptom in symptoms)
        faults["complaint"] = f"complaint of {listed}"
    if worst := bad_look(run, found, formulas, worse_than):
        faults["look"] = f"looked {worst}"
    return faults


def bad_look(
    run: Run,
    found: Found,
    formulas: Mapping[tuple[str, int], Formula],
    worse_than: Grade | None = None,
) -> Grade | None:
    """Return the worst look that was worse than wanted of what was looked at; None without."""
    bad = [
        seen.grade
        for seen in counted_looks(run.lot, found)
        if GRADES.index(seen.grade)
        > GRADES.index(wanted_of(run, formulas, worse_than, seen.looked_at))
    ]
    return max(bad, key=GRADES.index, default=None)


def wanted_of(
    run: Run,
    formulas: Mapping[tuple[str, int], Formula],
    worse_than: Grade | None = None,
    looked_at: LookedAt = LookedAt.NEAT,
) -> Grade:
    """Return the worst grade at which a run is as wanted: its formula's, else the usual."""
    formula = formulas.get(run.formula) if run.formula else None
    wanted = (worst_wanted(formula, looked_at) if formula else None) or worse_than or USUAL
    return max(wanted, worse_than or wanted, key=GRADES.index)


def counted_looks(lot: int, found: Found) -> list[Seen]:
    """Return the looks at a run and at what was filled from it, once its making had ended.

    What was looked at only while it was being made counts by its last look.
    """
    own = found.looks.get(lot, [])
    finished_at = found.finished_at.get(lot, "")
    later = [seen for seen in own if finished_at and seen.at >= finished_at]
    of_packed = [
        seen for packed in found.packed.get(lot, ()) for seen in found.looks.get(packed, ())
    ]
    return [*(later or own[-1:]), *of_packed]


def _was_seen(run: Run, found: Found) -> bool:
    lots = (run.lot, *found.packed.get(run.lot, ()))
    return any(lot in found.looks or lot in found.sent for lot in lots)


def _is_clear(run: Run, found: Found, faults: Mapping[int, Mapping[str, str]]) -> bool:
    return not faults[run.lot] and _was_seen(run, found)


def _stage(failed: Sequence[Run]) -> str:
    """Return the kind of product of which most failed; among equals the one made last."""
    kinds = Counter(run.product_kind for run in failed)
    latest = {run.product_kind: run.began_at for run in failed}
    return max(kinds, key=lambda kind: (kinds[kind], latest[kind]), default="")


def _could_tell(failed: int, clear: int, level: Fraction) -> bool:
    """Return whether a clean split of so many lots could reach the level."""
    return failed + clear > 0 and Fraction(1, comb(failed + clear, failed)) <= level


def _nearest(clear: Sequence[Run], failed: Collection[Run]) -> tuple[Run, ...]:
    if len(clear) <= MOST_COMPARED or not failed:
        return tuple(clear)
    places = {run.lot: place for place, run in enumerate(sorted([*clear, *failed], key=_when))}
    middle = sorted(places[run.lot] for run in failed)[len(failed) // 2]
    near = sorted(clear, key=lambda run: abs(places[run.lot] - middle))[:MOST_COMPARED]
    return tuple(sorted(near, key=_when))


def _when(run: Run) -> tuple[str, int]:
    return run.began_at, run.lot


def _told(faults: Mapping[str, str]) -> str:
    return "; ".join(faults.values()) or "named as failed"
