"""Judging what is behind failed lots, from how they and clear lots were made.

Guarantees: each thing is tested at the level where it was dealt out, so that lots that share the
luck of one batch are no evidence each; an innocent is ever named in at most as many books as the
level says, however often the book is asked; what simply followed in time, or went with something
else, is said not to be separable. Refuses: to name a cause from fewer than `LEAST_UNITS` failures
with it, from a comparison of different products, and a batch made here or a time at all.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from ledger.science.statistics.chance import adjusted, families
from ledger.science.statistics.columns import BEGUN, Columns, Group, columns
from ledger.science.statistics.drift import MARGIN, best_stretch, likelihood
from ledger.science.statistics.elsewhere import set_apart
from ledger.science.statistics.exact import Table, counts_of, least_one_sided, one_sided
from ledger.science.statistics.levels import Ground, grounds, tables
from ledger.science.statistics.looks import share_left
from ledger.science.statistics.sites import adjusted_sites, sites
from ledger.science.statistics.suspects import (
    LEVEL,
    Cause,
    Conclusion,
    Counted,
    Judgement,
    Level,
    Observed,
    Sort,
    Suspect,
)

LEAST_FAILED = 2
"""One failed lot alone shows no common cause."""
LEAST_UNITS = 3
"""Two batches cannot decide: with fewer failures at its level nothing is named."""
LEAD = Fraction(1, 10)
"""A lead is no likelier than this by itself."""
WORTH_A_TRIAL = Fraction(1, 3)
"""Nor than this allowing for all, unless it divides failed and clear cleanly."""


class _Judged(Struct, frozen=True):
    """A suspect with the group it was made of."""

    group: Group
    suspect: Suspect


def judge(
    observed: Sequence[Observed], level: Fraction = LEVEL, *, is_mixed: bool = False
) -> Judgement:
    """Return what the lots observed tell of the cause of failing.

    Args:
        observed: Failed lots and the clear ones they are compared with, each a run of its own;
            lots of products that never failed help to tell apart what went together in the others.
        level: In how many books at most an innocent may ever be named.
        is_mixed: Whether different products are compared with each other; nothing is named then.
    """
    main, aside = _parted(observed)
    found = grounds(main)
    made = frozenset(code for run in main for code in f"{run.batch} {run.bases}".split())
    had = columns(main, found, made)
    tested = families(had.groups, level)
    judged = _judged(main, had, adjusted(tested, level, next(iter(found))))
    where = _sites(main, made, level)
    named = [] if is_mixed or not _is_enough(main) else _named(judged, aside, level)
    lead = None if named or not _is_enough(main) else _lead(judged, where, aside, level)
    told = [*named, *([lead] if lead else [])]
    return Judgement(
        verdict=_verdict(named, lead, bool(tested) and _is_enough(main)),
        failed=tuple(item.lot for item in main if item.is_failed),
        clear=tuple(item.lot for item in main if not item.is_failed),
        elsewhere=tuple(item.lot for item in aside),
        suspects=(*told, *_others([*judged, *where], told)),
        named=tuple(named),
        lead=lead,
        tested=sum(map(len, tested.values())),
        in_all=had.in_all,
        untested=_untested(had, tested),
        level=level,
        top=_counted(next(iter(found.values()))),
        least_p=min((least_one_sided(group.counts) for group in had.groups), default=Fraction(1)),
    )


def _parted(observed: Sequence[Observed]) -> tuple[list[Observed], list[Observed]]:
    """Return the lots of products of which some failed, and the lots of all other products."""
    products = {run.product for run in observed if run.is_failed}
    return (
        [run for run in observed if run.product in products],
        [run for run in observed if run.product not in products],
    )


def _counted(ground: Ground) -> Counted:
    return Counted(ground.level, len(ground.units), ground.failures)


def _is_enough(observed: Sequence[Observed]) -> bool:
    failed = sum(run.is_failed for run in observed)
    return LEAST_FAILED <= failed < len(observed)


def _untested(had: Columns, tested: Mapping[Level, Sequence[Group]]) -> tuple[Cause, ...]:
    able = {id(group) for groups in tested.values() for group in groups}
    out = [cause for group in had.groups if id(group) not in able for cause in group.causes]
    return tuple(sorted([*out, *had.untold]))


def _judged(
    main: Sequence[Observed], had: Columns, allowing: Mapping[tuple[Level, int], Fraction]
) -> list[_Judged]:
    """Return the suspects, the strongest first."""
    made = [
        _Judged(group, _suspect(main, group, allowing.get((group.ground.level, group.mask))))
        for group in had.groups
    ]
    return sorted(made, key=lambda item: _rank(item.suspect))


def _rank(suspect: Suspect) -> tuple[Fraction, Fraction, bool, Cause]:
    adjusted_p = Fraction(1) if suspect.p_adjusted is None else suspect.p_adjusted
    return adjusted_p, suspect.p, suspect.cause.sort is Sort.TIME, suspect.cause


def _suspect(main: Sequence[Observed], group: Group, allowing: Fraction | None) -> Suspect:
    failed = [n in group.runs for n, run in enumerate(main) if run.is_failed]
    clear = [n in group.runs for n, run in enumerate(main) if not run.is_failed]
    return Suspect(
        cause=group.causes[0],
        not_separable_from=group.causes[1:],
        level=group.ground.level,
        table=Table(sum(failed), failed.count(False), sum(clear), clear.count(False)),
        units=group.whole,
        strata=tuple((name, table) for name, table in group.tables.items() if table.is_telling),
        p=one_sided(group.counts),
        p_adjusted=allowing,
    )


def _sites(main: Sequence[Observed], made: frozenset[str], level: Fraction) -> list[_Judged]:
    groups = sites(main, made)
    allowing = adjusted_sites(groups, level)
    where = [
        _Judged(group, _suspect(main, group, allowing.get(place)))
        for place, group in enumerate(groups)
    ]
    return sorted(where, key=lambda item: _rank(item.suspect))


def _named(judged: Sequence[_Judged], aside: Sequence[Observed], level: Fraction) -> list[Suspect]:
    """Return what is shown to be a cause: the strongest, and what stands out beside it."""
    named: list[Suspect] = []
    stronger: list[Group] = []
    for item in judged:
        if not stands_out(item.suspect, level):
            break
        told = _told(item, judged, aside, level)
        # Beside a cause another is named only if it stands out among what had the same of it.
        if stronger and not _is_beside(item.group, stronger, len(judged), level):
            continue
        if not _is_shown(told):
            break
        named.append(told)
        stronger.append(item.group)
    return named


def stands_out(suspect: Suspect, level: Fraction) -> bool:
    """Return whether a suspect is beyond chance, allowing for all that were tested."""
    return suspect.p_adjusted is not None and suspect.p_adjusted <= level


def _is_shown(told: Suspect) -> bool:
    return (
        not told.not_separable_from
        and not told.set_apart
        and told.cause.sort is not Sort.TIME
        and told.units.failed_with >= LEAST_UNITS
    )


def _is_beside(
    group: Group, stronger: Sequence[Group], tested: int, level: Fraction
) -> bool:  # fmt: skip
    ground = group.ground
    alike: dict[str, int] = {}
    for place, unit in enumerate(ground.units):
        had = [bool(unit.runs and set(unit.runs) & other.runs) for other in stronger]
        key = f"{unit.stratum} {had}"
        alike[key] = alike.get(key, 0) | 1 << place
    left = counts_of(list(tables(group.mask, ground.failed, alike).values()))
    return one_sided(left) * tested <= level * share_left(ground.failures)


def _told(
    item: _Judged, judged: Sequence[_Judged], aside: Sequence[Observed], level: Fraction
) -> Suspect:
    """Return a suspect with all that explains the failures nearly as well."""
    own = _fit(item.group)
    near = [
        other.group.causes[0]
        for other in judged
        if other is not item
        and other.group.ground is item.group.ground
        and other.suspect.cause.sort is not Sort.TIME
        and _fit(other.group) > own - MARGIN
        and not _is_beside(item.group, [other.group], 1, level)
    ]
    stretch = _stretch(item.group.ground, own)
    beside = dict.fromkeys([*item.suspect.not_separable_from, *near, *stretch])
    return set_apart(replace(item.suspect, not_separable_from=tuple(beside)), aside)


def _fit(group: Group) -> float:
    whole = group.whole
    return likelihood(whole.failed_with, whole.with_it, whole.failed, whole.lots)


def _stretch(ground: Ground, own: float) -> list[Cause]:
    """Return the stretch of time that explains the failures as well, if one does."""
    units = [unit for n, unit in enumerate(ground.units) if ground.telling >> n & 1]
    if not ground.is_dated:
        return []
    fit, first, end = best_stretch([unit.is_failed for unit in units])
    if fit <= own - MARGIN:
        return []
    days = f"{units[first].begun_on} to {units[end - 1].begun_on}"
    return [Cause(Sort.TIME, BEGUN, days)]


def _lead(
    judged: Sequence[_Judged], where: Sequence[_Judged], aside: Sequence[Observed], level: Fraction
) -> Suspect | None:
    """Return what is worth a trial, or at least where the failures sit."""
    strong = [item for item in judged if stands_out(item.suspect, level)]
    for item in strong or [item for item in judged if _is_lead(item.suspect)]:
        # Two failures lie side by side in time as often as not; that tells nothing of time.
        if item.suspect.units.failed_with < LEAST_UNITS:
            return set_apart(item.suspect, aside)
        return _told(item, judged, aside, level)
    return next((item.suspect for item in where if stands_out(item.suspect, level)), None)


def _is_lead(suspect: Suspect) -> bool:
    units = suspect.units
    is_clean = not units.failed_without and not units.clear_with
    is_unlikely = suspect.p_adjusted is not None and suspect.p_adjusted <= WORTH_A_TRIAL
    is_more = units.failed_with >= LEAST_FAILED and suspect.cause.sort is not Sort.TIME
    return is_more and suspect.p <= LEAD and (is_clean or is_unlikely)


def _others(judged: Sequence[_Judged], told: Sequence[Suspect]) -> list[Suspect]:
    """Return the suspects without those that are told already, alone or with others."""
    known = {
        cause
        for item in told
        for cause in (*item.causes, *(apart.cause for apart in item.set_apart))
    }
    return [item.suspect for item in judged if not known >= set(item.suspect.causes)]


def _verdict(named: Sequence[Suspect], lead: Suspect | None, is_tested: bool) -> Conclusion:
    if named:
        return Conclusion.CAUSE
    if lead:
        is_one = not lead.not_separable_from and lead.cause.sort is not Sort.TIME
        return Conclusion.LEAD if is_one else Conclusion.INSEPARABLE
    return Conclusion.NONE if is_tested else Conclusion.TOO_FEW
