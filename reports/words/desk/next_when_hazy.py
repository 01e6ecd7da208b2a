"""What comes next when a batch that is to be clear was seen not to be: it is cleared again.

Guarantees: first the same cake again, which the pass before has made tighter; then a finer pore;
then a chill, and a pass after it. Each asks for the pore used last, where one was told. Refuses:
to end a making that is not clear, and to clear what is meant to be cloudy.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ledger.domain.entries import Entry, Filter, Look, Rest, entries_of, is_of
from ledger.domain.entries.choices import Cake, Grade, LotType, Medium, ProductKind, RestFor
from ledger.domain.lots.lot import Status
from ledger.domain.lots.state import LotState
from ledger.domain.rules.release.barriers import CLEAR
from reports.kit.format import scaled

if TYPE_CHECKING:
    from ledger.service.lots.dossier import Dossier

LIQUIDS_CLEARED = frozenset(
    {ProductKind.ESSENCE, ProductKind.WASHED_ESSENCE, ProductKind.MACERATE, ProductKind.REWORK}
)
"""Kinds of product that rest and are filtered."""
UNDER_WAY = frozenset({Status.MAKING, Status.FINISHED, Status.REWORK})
"""Where a lot stands that steps of its formula may still be missing of."""
PORES_NM = (25_000, 20_000, 11_000, 8_000, 6_000, 5_000, 2_500, 1_000)
"""The classes of papers and membranes, the coarsest first (common practice, no source)."""
USUAL_PORE = "20"
"""The pore that a first pass is proposed with, in µm (common practice, no source)."""


def clearing_of(dossier: "Dossier") -> str | None:
    """Return what clears a lot that was seen not to be clear; None where it is, or need not."""
    lot, formula = dossier.lot, dossier.formula
    is_meant_clear = lot.product_kind in LIQUIDS_CLEARED and lot.status in UNDER_WAY
    if not is_meant_clear or dossier.state.opened.lot_type is not LotType.MADE:
        return None
    return clearing(dossier.state, formula.wanted_clarity if formula else None)


def clearing(state: LotState, wanted: Grade | None = None) -> str | None:
    """Return the command that clears a batch again; None when its last look was clear enough.

    Args:
        state: The batch.
        wanted: How it is to look; None: bright or clear.
    """
    looks = list(entries_of(state.entries, Look))
    if not looks or _is_clear(looks[-1].facts.grade, wanted):
        return None
    if not (passes := _passes(state)):
        return pass_of(state)
    last = passes[-1]
    if any(_is_chill(entry) and entry.position > last.position for entry in state.entries):
        return pass_of(state)
    if last.facts.cake is not Cake.SAME:
        return f"{pass_of(state)} --cake same"
    is_finer = len(passes) > 1 and _pore(passes[-1]) < min(_pore(item) for item in passes[:-1])
    if not is_finer and (finer := _finer(_pore(last))):
        return _pass(state, _medium(passes), finer)
    return f"pottle rest {state.code} --for chill --temp DEGREES"


def pass_of(state: LotState) -> str:
    """Return the command of a pass, with the medium and the pore that were used last."""
    passes = _passes(state)
    medium = _medium(passes)
    known = [_pore(item) for item in passes if _pore(item)]
    return _pass(state, medium, scaled(known[-1], 1000) if known else USUAL_PORE)


def _medium(passes: Sequence[Entry[Filter]]) -> str:
    """Return the medium that was said last; paper where none was."""
    said = [item.facts.medium for item in passes if item.facts.medium != Medium.UNSAID]
    return said[-1] if said else str(Medium.PAPER)


def _pass(state: LotState, medium: str, pore: str) -> str:
    return f"pottle filter {state.code} --medium {medium} --pore {pore} --out VOLUME"


def _is_clear(grade: Grade, wanted: Grade | None) -> bool:
    grades = tuple(Grade)
    return grade in CLEAR if wanted is None else grades.index(grade) <= grades.index(wanted)


def _passes(state: LotState) -> Sequence[Entry[Filter]]:
    return list(entries_of(state.entries, Filter))


def _pore(entry: Entry[Filter]) -> int:
    """Return the coarser end of a pass's pores in nanometres; 0 when it was not told."""
    return entry.facts.pore_high_nm or entry.facts.pore_low_nm or 0


def _finer(pore_nm: int) -> str | None:
    return next((scaled(size, 1000) for size in PORES_NM if size < pore_nm), None)


def _is_chill(entry: Entry) -> bool:
    return is_of(entry, Rest) and entry.facts.purpose is RestFor.CHILL
