"""Gathering what only a release asks: how strong a lot was made and what its label claims.

Guarantees: nothing is told that is not known.
"""

from datetime import date

from ledger.domain.entries import Formula, Limit
from ledger.domain.masters.limits import counting_on
from ledger.service.account.contents import contents_on
from ledger.service.account.shipped import limit_versions
from ledger.store.engine.connections import Connection


def strength_as_made(connection: Connection, lot: str, formula: Formula) -> float | None:
    """Return the strength of a lot in thousandths of a per cent by volume, not rounded.

    None where its formula does not ask for it, or anything of it is missing.
    """
    if (formula.abv_min_mpct, formula.abv_max_mpct, formula.claim) == (None, None, None):
        return None
    made = contents_on(connection, lot)
    return None if made.missing else 1000 * made.contents.abv


def claimed_limit(connection: Connection, formula: Formula, on: date) -> Limit | None:
    """Return the limit whose words the label claims, as it counts on a day, in force or not.

    None where the claim is not the code of a limit.
    """
    said = limit_versions(connection).get(formula.claim or "")
    return counting_on(said, on) if said else None
