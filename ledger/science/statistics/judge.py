"""Judging what is behind failed lots, from how they and clear lots were made.

Guarantees: things that went together in every lot are one suspect; the exact test compares lots of
one product with each other; whatever is named stands out after allowing for all that was tested,
so where lots fail each by chance anything is named at most as often as the level; lots that share
the luck of one batch are counted by batch too. Refuses: to rank when
no suspect could have reached the level, and to name what only goes along with a stronger suspect.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from ledger.science.statistics.adjustment import holm, worth_testing
from ledger.science.statistics.association import exact_odds, mantel_haenszel
from ledger.science.statistics.by_batch import with_batches
from ledger.science.statistics.elsewhere import set_apart
from ledger.science.statistics.exact import Counts, Table, counts_of, least_attainable, two_sided
from ledger.science.statistics.suspects import (
    LEVEL,
    Cause,
    Conclusion,
    Judgement,
    Observed,
    Sort,
    Suspect,
)
from ledger.science.statistics.trial_plan import crossing

LEAST_FAILED = 2
"""One failed lot alone shows no common cause."""
Column = tuple[bool, ...]
"""For each lot observed, whether it had something."""


class _Group(Struct, frozen=True):
    """Causes with one and the same column."""

    causes: tuple[Cause, ...]
    column: Column
    counts: Counts


def judge(
    observed: Sequence[Observed],
    level: Fraction = LEVEL,
    made_of: Mapping[str, frozenset[str]] | None = None,
) -> Judgement:
    """Return what the lots observed tell of the cause of failing.

    Args:
        observed: Failed lots and the clear ones they are compared with, each a run of its own;
            lots of products that never failed help to tell apart what went together in the others.
        level: How often at most something may be named when nothing is a cause.
        made_of: For each lot that went in, the lots it is made of, to plan a trial.
    """
    main, aside = _parted(observed)
    columns = _columns(main)
    groups = _groups(main, columns)
    adjusted = _adjusted(groups, level)
    suspects = [
        _suspect(main, group, adjusted.get(place), level) for place, group in enumerate(groups)
    ]
    told = tuple(
        # Lots of one batch of essence share its luck, so the level does not hold for what lies
        # upstream of the batch: what is named is counted by batch too.
        with_batches(set_apart(item, aside, level), main) if _is_out(item, level) else item
        for item in _explained(main, groups, suspects, level)
    )
    named = tuple(item for item in told if _is_out(item, level)) if _is_enough(main) else ()
    return Judgement(
        conclusion=_conclusion(main, len(adjusted), named),
        failed=tuple(item.lot for item in main if item.is_failed),
        clear=tuple(item.lot for item in main if not item.is_failed),
        elsewhere=tuple(item.lot for item in aside),
        suspects=told,
        named=named,
        tested=len(adjusted),
        in_all=tuple(sorted(cause for cause, column in columns.items() if all(column))),
        level=level,
        crossing=crossing(named[0].causes, made_of or {}, level) if named else None,
        least_p=min((least_attainable(group.counts) for group in groups), default=Fraction(1)),
    )


def _parted(observed: Sequence[Observed]) -> tuple[list[Observed], list[Observed]]:
    """Return the lots of products of which some failed, and the lots of all other products."""
    products = {run.product for run in observed if run.is_failed}
    return (
        [run for run in observed if run.product in products],
        [run for run in observed if run.product not in products],
    )


def _adjusted(groups: Sequence[_Group], level: Fraction) -> dict[int, Fraction]:
    """Return the adjusted p of each group that is worth testing, by its place."""
    able = worth_testing([least_attainable(group.counts) for group in groups], level)
    return dict(zip(able, holm([two_sided(groups[n].counts) for n in able]), strict=True))


def _is_out(suspect: Suspect, level: Fraction) -> bool:
    return stands_out(suspect, level) and not suspect.is_explained


def stands_out(suspect: Suspect, level: Fraction) -> bool:
    """Return whether a suspect is beyond chance, allowing for all that were tested."""
    return suspect.p_adjusted is not None and suspect.p_adjusted <= level


def _columns(observed: Sequence[Observed]) -> dict[Cause, Column]:
    causes = dict.fromkeys(cause for run in observed for cause in _causes_in(run))
    has = [frozenset(_causes_in(run)) for run in observed]
    return {cause: tuple(cause in had for had in has) for cause in causes}


def _causes_in(run: Observed) -> Iterable[Cause]:
    yield from (Cause(Sort.LOT, code) for code in sorted(run.inputs))
    yield from (Cause(Sort.SETTING, name, level) for name, level in run.settings.items())


def _groups(observed: Sequence[Observed], columns: Mapping[Cause, Column]) -> list[_Group]:
    together: dict[Column, list[Cause]] = {}
    for cause, column in columns.items():
        if any(column) and not all(column):
            turned, is_absent = _turned(observed, column)
            together.setdefault(turned, []).append(replace(cause, is_absent=is_absent))
    return [
        _Group(_told(causes), column, counts_of(_by_product(observed, column)))
        for column, causes in together.items()
    ]


def _turned(observed: Sequence[Observed], column: Column) -> tuple[Column, bool]:
    """Return a column, or its opposite when the lots without it failed more, and which it was."""
    other = tuple(not had for had in column)
    gain = sum(_gain(table) for table in _by_product(observed, column))
    # Where neither side tells more, always the same of the two, so that both are one group.
    is_absent = gain < 0 or (gain == 0 and other > column)
    return (other, True) if is_absent else (column, False)


def _gain(table: Table) -> Fraction:
    return table.failed_with - Fraction(table.failed * table.with_it, table.lots or 1)


def _told(causes: Sequence[Cause]) -> tuple[Cause, ...]:
    """Leave out what is only the other side of something that is told."""
    present = [cause for cause in causes if not cause.is_absent]
    return tuple(sorted(present or causes))


def _by_product(observed: Sequence[Observed], column: Column) -> list[Table]:
    return list(_tables(observed, column, [item.product for item in observed]).values())


def _tables(
    observed: Sequence[Observed], column: Column, strata: Sequence[str]
) -> dict[str, Table]:
    cells: dict[str, list[int]] = {}
    for run, had, stratum in zip(observed, column, strata, strict=True):
        place = (0 if run.is_failed else 2) + (0 if had else 1)
        cells.setdefault(stratum, [0, 0, 0, 0])[place] += 1
    return {stratum: Table(*numbers) for stratum, numbers in cells.items()}


def _suspect(
    observed: Sequence[Observed], group: _Group, adjusted: Fraction | None, level: Fraction
) -> Suspect:
    whole = _tables(observed, group.column, [""] * len(observed))[""]
    strata = _tables(
        observed, group.column, [f"{run.product}, made by {run.maker}" for run in observed]
    )
    return Suspect(
        cause=group.causes[0],
        not_separable_from=group.causes[1:],
        table=whole,
        strata=tuple((name, table) for name, table in strata.items() if table.is_telling),
        odds=exact_odds(_by_product(observed, group.column), float(level)),
        p=two_sided(group.counts),
        p_adjusted=adjusted,
        pooled=mantel_haenszel(list(strata.values()), float(level)),
    )


def _rank(suspect: Suspect) -> tuple[bool, Fraction, Cause]:
    return suspect.p_adjusted is None, suspect.p, suspect.cause


def _explained(
    observed: Sequence[Observed], groups: Sequence[_Group], suspects: Sequence[Suspect],
    level: Fraction,
) -> list[Suspect]:  # fmt: skip
    """Return the suspects, the strongest first.

    Those that stand out by themselves but not among lots alike in a stronger one are marked.
    """
    marked: list[Suspect] = []
    stronger: list[Column] = []
    for suspect, group in sorted(
        zip(suspects, groups, strict=True), key=lambda pair: _rank(pair[0])
    ):
        # Alike are lots of one product that had the same of all that is stronger.
        alike = [
            f"{run.product} {[column[n] for column in stronger]}" for n, run in enumerate(observed)
        ]
        left = counts_of(list(_tables(observed, group.column, alike).values()))
        is_out = stands_out(suspect, level)
        is_explained = is_out and bool(stronger) and two_sided(left) > level
        marked.append(replace(suspect, is_explained=is_explained))
        if is_out and not is_explained:
            stronger.append(group.column)
    return marked


def _is_enough(observed: Sequence[Observed]) -> bool:
    failed = sum(run.is_failed for run in observed)
    return LEAST_FAILED <= failed < len(observed)


def _conclusion(observed: Sequence[Observed], tested: int, named: Sequence[Suspect]) -> Conclusion:
    if not tested or not _is_enough(observed):
        return Conclusion.TOO_LITTLE
    if not named:
        return Conclusion.NOTHING
    return Conclusion.TOGETHER if named[0].not_separable_from else Conclusion.NAMED
