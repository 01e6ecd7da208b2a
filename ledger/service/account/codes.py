"""Lots by their codes: the whole one, an unambiguous ending, or a dot for the lot in hand.

Guarantees: a lot that is returned is in the book. Refuses: codes that are not, in words, with the
nearest that are.
"""

from ledger.domain.lots.codes import check_code, clean_code, nearest
from ledger.errors import RefusedError
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.queries import LotRow


def known_lot(connection: Connection, code: str) -> LotRow:
    """Return the lot with that whole code.

    Raises:
        RefusedError: It is not in the book.
    """
    row = queries.lot_by_code(connection, code)
    if row is None:
        raise RefusedError(
            f"The lot {code} is not in the book.", "pottle stock lists the lots that are."
        )
    return row


def resolve_lot(connection: Connection, text: str, by: str | None = None) -> str:
    """Return the whole code of the lot that `text` names.

    Args:
        connection: A connection in a transaction.
        text: A code, an unambiguous ending of one, or "." for the lot in hand.
        by: Whose lot in hand.

    Raises:
        InputError: It cannot be a code.
        RefusedError: No lot or several lots have it; the nearest are named.
    """
    if text.strip() == ".":
        return _lot_in_hand(connection, by)
    code = clean_code(text)
    if queries.lot_by_code(connection, code):
        return code
    endings = queries.codes_ending_in(connection, code)
    if len(endings) == 1:
        return endings[0]
    if endings:
        shown = ", ".join(endings[:5]) + (" and more" if len(endings) > 5 else "")
        raise RefusedError(
            f"{code} is the ending of {len(endings)} lots: {shown}.", "Give more of the code."
        )
    raise _unknown(connection, code)


def _unknown(connection: Connection, code: str) -> RefusedError:
    near = nearest(code, queries.all_codes(connection))
    hint = f" Near to it: {', '.join(near)}." if near else ""
    if slip := check_code(code):
        return RefusedError(f"{slip}{hint}", "pottle stock lists the lots that are.")
    return RefusedError(
        f"There is no lot {code} in the book.{hint}", "pottle stock lists the lots that are."
    )


def _lot_in_hand(connection: Connection, by: str | None) -> str:
    if not by:
        raise RefusedError(
            "A dot stands for the lot that somebody has in hand, and no initials are given.",
            "Give --by INITIALS, set POTTLE_BY, or name the lot by its code.",
        )
    code = queries.last_lot_of(connection, by)
    if code is None:
        raise RefusedError(
            "There is no lot in hand yet for a dot to stand for.", "Name the lot by its code."
        )
    return code
