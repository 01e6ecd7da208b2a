"""The looks that a formula asks for before the filling, and the looks at a lot that answer them.

Guarantees: one look answers one step, and as many steps as can be have a look of their own; after
the last step that changes the lot, only looks since it last changed answer.
"""

from collections.abc import Iterable, Sequence
from datetime import timedelta
from typing import NamedTuple

from ledger.domain.entries import Entry, Formula, Look, entries_of, is_of
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.state import LotState, finished_at, opener
from ledger.domain.masters.formulas import look_steps
from ledger.domain.rules.figures import is_outside
from ledger.domain.rules.release.barriers import changes


class Asked(NamedTuple):
    """A look that a formula asks for."""

    step: FormulaStep
    """The step that asks for it."""
    is_last: bool
    """Whether no later step changes the lot, so that only looks since then answer it."""
    seen: tuple[Entry[Look], ...]
    """The looks that are as it asks, oldest first."""
    has_own: bool
    """Whether one of them answers this step and no other."""


def looks_asked(formula: Formula, lot: LotState, *, in_order: bool = False) -> list[Asked]:
    """Return each look that a formula asks for before the filling, with what answers it.

    Args:
        formula: The formula.
        lot: The lot.
        in_order: Whether an earlier step comes first where not all have a look of their own: as in
            a making that goes on, whose later steps are to come; else the later does.
    """
    every, since = _every_look(lot), _looks_since(lot)
    steps = look_steps(formula)
    seen = [
        tuple(look for look in (since if is_last else every) if _is_as_asked(step, look, lot))
        for step, is_last in steps
    ]
    places = range(len(steps))
    answered = answered_by_their_own(
        [[every.index(look) for look in looks] for looks in seen],
        places if in_order else reversed(places),
    )
    return [
        Asked(step, is_last, looks, place in answered)
        for place, ((step, is_last), looks) in enumerate(zip(steps, seen, strict=True))
    ]


def answered_by_their_own(
    choices: Sequence[Sequence[int]], picking: Iterable[int]
) -> frozenset[int]:
    """Return the places of those that get one of their choices for themselves, as many as can be.

    Args:
        choices: What each would take.
        picking: Their places in the order in which they pick; who picks first gets one where not
            all can.

    >>> sorted(answered_by_their_own([[1, 2], [1]], [0, 1]))
    [0, 1]
    >>> sorted(answered_by_their_own([[1], [1]], [0, 1])), sorted(
    ...     answered_by_their_own([[1], [1]], [1, 0])
    ... )
    ([0], [1])
    """
    taken: dict[int, int] = {}

    def gets_one(place: int, tried: set[int]) -> bool:
        for choice in choices[place]:
            if choice in tried:
                continue
            tried.add(choice)
            # Who has it already gives it up if another of its own is free.
            if choice not in taken or gets_one(taken[choice], tried):
                taken[choice] = place
                return True
        return False

    return frozenset(place for place in picking if gets_one(place, set()))


def _every_look(lot: LotState) -> list[Entry[Look]]:
    return list(entries_of((*(lot.bulk.entries if lot.bulk else ()), *lot.entries), Look))


def _looks_since(lot: LotState, filling: Entry | None = None) -> list[Entry[Look]]:
    """Return the looks at a lot and its bulk since they last changed.

    What was left of a bulk may change after the filling: what is in the bottles did not.
    """
    seen = _looks_since(lot.bulk, opener(lot)) if lot.bulk else []
    for entry in lot.entries:
        if changes(entry.facts):
            if filling and entry.position > filling.position:
                break
            seen = []
        elif is_of(entry, Look):
            seen.append(entry)
    return seen


def _is_as_asked(step: FormulaStep, entry: Entry[Look], lot: LotState) -> bool:
    look = entry.facts
    if step.looked_at not in (None, look.looked_at):
        return False
    if step.dilution not in (None, look.dilution):
        return False
    low, high, temp = step.temp_min_mdegc, step.temp_max_mdegc, look.temp_mdegc
    is_cold_enough = high is None or (temp is not None and temp <= high)
    is_warm_enough = low is None or (temp is not None and temp >= low)
    is_old_enough = not is_outside(_age(entry, lot), step.age_minutes, None)
    return is_cold_enough and is_warm_enough and is_old_enough


def _age(entry: Entry[Look], lot: LotState) -> timedelta:
    """Return how old the sample was: as told, else since the making ended."""
    if entry.facts.age_minutes is not None:
        return timedelta(minutes=entry.facts.age_minutes)
    made = finished_at(lot.bulk or lot)
    return entry.draft.happened.at - made if made else timedelta()
