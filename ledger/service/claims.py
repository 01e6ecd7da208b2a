"""Gathering what only a release asks: how strong a lot was made and what its label claims.

Guarantees: nothing is told that is not known. Refuses: to judge.
"""

from ledger.domain.entries import Formula, Limit
from ledger.service.contents import contents_on
from ledger.service.shipped import limits_on
from ledger.store.engine import Connection


def strength_as_made(connection: Connection, lot: str, formula: Formula) -> int | None:
    """Return the strength of a lot in thousandths of a per cent by volume.

    None where its formula does not ask for it, or anything of it is missing.
    """
    if (formula.abv_min_mpct, formula.abv_max_mpct, formula.claim) == (None, None, None):
        return None
    made = contents_on(connection, lot)
    return None if made.missing else round(1000 * made.contents.abv)


def claimed_limit(connection: Connection, formula: Formula) -> Limit | None:
    """Return the limit whose words the label claims, where the claim is the code of one."""
    if formula.claim is None:
        return None
    return next((item for item in limits_on(connection) if item.code == formula.claim), None)
