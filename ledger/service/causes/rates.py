"""How often lots failed so far, with what is suspected and without.

Guarantees: of few lots no share of nothing or of all is made: half a failed and half a clear lot
are added to each count. Refuses: to call a share a cause; it only sizes a trial.

References:
    Jeffreys, An invariant form for the prior probability, Proc. R. Soc. A 186 (1946) 453, for the
    two halves (from memory).
"""

from collections.abc import Collection

from msgspec import Struct

from ledger.science.statistics.suspects import LEVEL
from ledger.service.account.shares import lots_behind
from ledger.service.causes.failed import Sought, sort_runs
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.runs import found, runs

USUAL_FAILS, USUAL_ELSE = 0.9, 0.05
"""Shares taken where the book has nothing to say (common practice, no source)."""
FEWEST = 4
"""Of fewer lots no share is taken (common practice, no source)."""
MOST_FAILS, LEAST_ELSE = 0.95, 0.02
"""No share is taken for more certain, whatever was seen."""


class Seen(Struct, frozen=True):
    """How many lots failed, of how many."""

    failed_with: int
    """Failed, with all that is suspected in them."""
    lots_with: int
    """Lots with all of it."""
    failed_without: int
    """Failed with none of it."""
    lots_without: int
    """Lots with none of it."""

    @property
    def fails(self) -> float:
        """The share that fails with it, as far as known."""
        if self.lots_with < FEWEST:
            return USUAL_FAILS
        return min(MOST_FAILS, (self.failed_with + 0.5) / (self.lots_with + 1))

    @property
    def otherwise(self) -> float:
        """The share that fails without, as far as known."""
        if self.lots_without < FEWEST:
            return USUAL_ELSE
        return max(LEAST_ELSE, (self.failed_without + 0.5) / (self.lots_without + 1))


def seen_on(connection: Connection, suspected: Collection[str]) -> Seen:
    """Return how lots with and without some lots in them turned out.

    Args:
        connection: A connection in a transaction.
        suspected: Levels that are suspected; of those that are no lots nothing is known.
    """
    rows = (queries.lot_by_code(connection, level) for level in suspected)
    lots = {row.seq for row in rows if row}
    if not lots:
        return Seen(0, 0, 0, 0)
    known = found(connection)
    versions = {(item.code, item.version): item for item in queries.formulas(connection)}
    sought = Sought(frozenset(), complaints=True, looks=True, worse_than=None, since="")
    parted = sort_runs(runs(connection), known, versions, sought, LEVEL)
    compared = [*parted.failed, *parted.clear]
    own = {run.lot: (run.lot, *known.packed.get(run.lot, ())) for run in compared}
    behind = lots_behind(connection, [lot for each in own.values() for lot in each])
    met = {
        run.lot: frozenset(part for lot in own[run.lot] for part in behind[lot]) for run in compared
    }
    whole = [run for run in compared if lots <= met[run.lot]]
    none = [run for run in compared if not lots & met[run.lot]]
    return Seen(
        failed_with=sum(run in parted.failed for run in whole),
        lots_with=len(whole),
        failed_without=sum(run in parted.failed for run in none),
        lots_without=len(none),
    )
