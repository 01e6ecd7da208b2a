"""What to draw for a batch, in words.

Guarantees: every line of the formula is told, with what is short; the commands can be typed as
they stand. Refuses: to choose lots; the book proposes them.
"""

from typing import TYPE_CHECKING

from ledger.domain.amounts.quantity import show_exactly
from ledger.domain.masters.weighing import asked

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed


HEADS = ("what", "calls for", "lot", "take", "best before")


def rows(proposed: tuple["Proposed", ...]) -> list[tuple[str, ...]]:
    """Return what to take of which lot, a row a lot."""
    found: list[tuple[str, ...]] = []
    for item in proposed:
        calls_for = _shown(asked(item.wanted), item)
        for place, drawn in enumerate(item.drawn):
            first = (item.wanted.called.code, calls_for) if place == 0 else ("", "")
            take = _shown(drawn.amount, item)
            found.append((*first, drawn.lot, take, str(drawn.best_before or "")))
        if not item.drawn:
            found.append((item.wanted.called.code, calls_for, "none", "", ""))
    return found


def _shown(amount: int, item: "Proposed") -> str:
    return show_exactly(amount, item.wanted.measure)


def shortages(proposed: tuple["Proposed", ...]) -> list[str]:
    """Return a sentence for each line of which not enough is there."""
    return [
        f"Short of {item.wanted.called.code}: {_shown(item.short, item)} of "
        f"{_shown(asked(item.wanted), item)} are in no lot that may be used."
        for item in proposed
        if item.short > 0
    ]


def commands(code: str, proposed: tuple["Proposed", ...]) -> list[str]:
    """Return the commands that put in what is proposed, in the formula's order."""
    return [
        f"pottle add {code} {drawn.lot} {_shown(drawn.amount, item).replace(' ', '')}"
        for item in proposed
        for drawn in item.drawn
    ]
