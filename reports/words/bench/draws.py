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
    lines: list[tuple[str, ...]] = []
    for proposal in proposed:
        calls_for = _shown(asked(proposal.wanted), proposal)
        for place, drawn in enumerate(proposal.drawn):
            first = (proposal.wanted.called.code, calls_for) if place == 0 else ("", "")
            take = _shown(drawn.amount, proposal)
            lines.append((*first, drawn.lot, take, str(drawn.best_before or "")))
        if not proposal.drawn:
            lines.append((proposal.wanted.called.code, calls_for, "none", "", ""))
    return lines


def _shown(amount: int, proposal: "Proposed") -> str:
    # To the last digit, since a rounded amount could be more than is there.
    return show_exactly(amount, proposal.wanted.measure)


def shortages(proposed: tuple["Proposed", ...]) -> list[str]:
    """Return a sentence for each line of which not enough is there."""
    return [
        f"Short of {proposal.wanted.called.code}: {_shown(proposal.short, proposal)} of "
        f"{_shown(asked(proposal.wanted), proposal)} are in no lot that may be used."
        for proposal in proposed
        if proposal.short > 0
    ]


def commands(code: str, proposed: tuple["Proposed", ...]) -> list[str]:
    """Return the commands that put in what is proposed, in the formula's order."""
    return [
        f"pottle add {code} {drawn.lot} {_shown(drawn.amount, proposal).replace(' ', '')}"
        for proposal in proposed
        for drawn in proposal.drawn
    ]


def offers_of(code: str, proposed: tuple["Proposed", ...]) -> list[tuple[str, str]]:
    """Return the commands that put in what is proposed, each with what is said of it."""
    said = [
        f"{_shown(drawn.amount, proposal)} of {proposal.name}, from {drawn.lot}"
        for proposal in proposed
        for drawn in proposal.drawn
    ]
    return list(zip(commands(code, proposed), said, strict=True))
