"""Figures of one batch, folded from its entries: what came out, how turbid it was, what was lost.

Guarantees: what was not recorded is None. Refuses: to mix batches; each is folded by itself.
"""

from collections.abc import Sequence
from fractions import Fraction

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Entry, Filter, Finish, Look, MakeUp, Start, entries_of
from ledger.domain.entries.choices import AddedAs, LookedAt


def yield_of(said: Sequence[Entry]) -> Fraction | None:
    """Return what came out of the liquids that were put in, in per cent."""
    put_in = 0
    for facts in (entry.facts for entry in said):
        match facts:
            # An old cake is no liquid that was put in.
            case Add(added_as=AddedAs.OLD_CAKE):
                pass
            case Add(amount=amount) | MakeUp(used=amount) if amount.measure is Measure.UL:
                put_in += amount.amount
    out = _came_out(said)
    return Fraction(100 * out, put_in) if out and put_in else None


def share_of_target(said: Sequence[Entry]) -> Fraction | None:
    """Return what came out of the volume that was aimed at, in per cent."""
    targets = [entry.facts.target.amount for entry in entries_of(said, Start)]
    out = _came_out(said)
    return Fraction(100 * out, targets[-1]) if out and targets and targets[-1] else None


def ntu_at_end(said: Sequence[Entry]) -> Fraction | None:
    """Return the last reading of a batch neat until its making ended, in NTU."""
    ends = [entry.position for entry in entries_of(said, Finish)]
    read = [
        entry.facts.ntu_milli
        for entry in entries_of(said, Look)
        if entry.facts.ntu_milli is not None
        and entry.facts.looked_at is LookedAt.NEAT
        and ends
        and entry.position < ends[-1]
    ]
    return Fraction(read[-1], 1000) if read else None


def loss_in_pass(said: Sequence[Entry], number: int) -> Fraction | None:
    """Return what stayed in the filter of a pass, in per cent of what was put on it."""
    for facts in (entry.facts for entry in entries_of(said, Filter)):
        if facts.pass_no == number and facts.volume_in.amount:
            lost = facts.volume_in.amount - facts.volume_out.amount
            return Fraction(100 * lost, facts.volume_in.amount)
    return None


def _came_out(said: Sequence[Entry]) -> int | None:
    ended = [entry.facts.volume.amount for entry in entries_of(said, Finish)]
    return ended[-1] if ended else None
