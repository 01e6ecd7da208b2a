"""Counting lots of one batch once: they share its luck, so they are not evidence each.

Guarantees: a batch failed when any lot of it did; only what all lots of a batch had alike is
counted so. Refuses: to count a batch that is itself the suspect.
"""

from collections.abc import Sequence

from msgspec.structs import replace

from ledger.science.statistics.elsewhere import has
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Observed, Suspect


def with_batches(suspect: Suspect, observed: Sequence[Observed]) -> Suspect:
    """Return a suspect with its counts by batch, where these say something else.

    Args:
        suspect: What stands out by lots.
        observed: The lots it was counted in.
    """
    batches: dict[str, list[Observed]] = {}
    for run in observed:
        batches.setdefault(run.batch or run.lot, []).append(run)
    is_one = any(cause.name in batches for cause in suspect.causes)
    if is_one or len(batches) == len(observed):
        return suspect
    cells = [0, 0, 0, 0]
    for lots in batches.values():
        had = {has(run, suspect.cause) for run in lots}
        if len(had) > 1:
            return suspect
        is_failed = any(run.is_failed for run in lots)
        cells[(0 if is_failed else 2) + (0 if had == {True} else 1)] += 1
    return replace(suspect, by_batch=Table(*cells))
