"""A look that physics does not allow: clear, where the oil must part.

Guarantees: told only where much of the oil parts even by the best of all that is published.
Refuses: to doubt a look of a lot of whose oil nothing is known.
"""

from ledger.domain.amounts.pours import read_pour
from ledger.domain.entries import Look, Start
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind
from ledger.domain.lots.control import Doubted
from ledger.errors import LedgerError
from ledger.science.haze.outlook import Diluted, held
from ledger.service.account.contents import contents_on
from ledger.service.account.mixed import mixed_of
from ledger.service.account.oils import calibration
from ledger.store.engine.connections import Connection

SURELY = 1.5
"""How many times the most that a drink holds must be in it, that a clear look is doubted (common
practice, no source)."""
SODA_BRIX = 8.0
"""Sugar in % of the mass of a drink as it is usually poured (common practice, no source)."""


def is_asked(look: Look, start: Start | None) -> bool:
    """Return whether a look is one that might be doubted: of a syrup, clear as poured, no ring."""
    return (
        start is not None
        and start.product_kind is ProductKind.SYRUP
        and look.looked_at is LookedAt.AS_POURED
        and look.grade in (Grade.BRIGHT, Grade.CLEAR)
        and not (look.ring or look.louche)
    )


def doubted(connection: Connection, lot: str, look: Look, start: Start) -> Doubted | None:
    """Return what makes a clear look of a drink doubtful; None where it may well be."""
    parts = _parts(look, start)
    made = contents_on(connection, lot).contents
    mixed = mixed_of(connection, made)
    if not parts or not mixed.mass_mg or made.volume_ul <= 0 or not mixed.oil.shares:
        return None
    glass = Diluted(
        1e6 * mixed.mass_mg / made.volume_ul / (parts + 1), made.abv / (parts + 1), SODA_BRIX
    )
    most = held(mixed.oil, glass, calibration()).high
    if glass.oil_mg_per_l < SURELY * most:
        return None
    return Doubted(" and ".join(mixed.kinds), glass.oil_mg_per_l, most)


def _parts(look: Look, start: Start) -> int | None:
    """Return the parts of soda water to one, as the look says, else as the batch does."""
    try:
        return read_pour(look.dilution) or start.pour_parts
    except LedgerError:
        return start.pour_parts
