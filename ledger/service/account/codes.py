"""Lots by their codes: the whole one, an unambiguous ending, or a dot for the lot in hand.

Guarantees: a lot that is returned is in the book. Refuses: codes that are not, in words, with the
nearest that are; endings so short that any lot may have them.
"""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from datetime import date
from itertools import groupby, islice
from operator import itemgetter

from ledger.domain.entries import Bottle, Facts
from ledger.domain.lots.codes import check_code, clean_code, nearest
from ledger.domain.lots.lot import BARRED, Lot, Status
from ledger.errors import InputError, RefusedError
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries
from ledger.store.read.lots import foresee_lots, lots_by_number
from ledger.store.read.queries import LotRow
from ledger.store.read.received import as_they_came, deliveries, moments_of

SHORTEST_ENDING = 3
"""How many letters and digits of a code name a lot at least; the last only checks the rest."""

MOST_FORESEEN = 42
"""Of how many lots of a material it is foretold to a server what is asked of them."""
FIRST_ASKED = 2
"""How many lots of a material are looked at first for one to take from."""


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


def whole_code(connection: Connection, text: str) -> LotRow | None:
    """Return the lot of which `text` is the whole code, or None where no lot has it."""
    with suppress(InputError):  # what can be no code is none
        return queries.lot_by_code(connection, clean_code(text))
    return None


def resolve_lot(connection: Connection, text: str, by: str | None = None) -> str:
    """Return the whole code of the lot that `text` names; as `lot_named`.

    Raises:
        InputError: It cannot be a code.
        RefusedError: No lot or several lots have it; the nearest are named.
    """
    found = lot_named(connection, text, by)
    if found is None:
        raise _unknown(connection, clean_code(text))
    return found


def lot_named(connection: Connection, text: str, by: str | None = None) -> str | None:
    """Return the whole code of the lot that `text` names, or None where no lot has it.

    Args:
        connection: A connection in a transaction.
        text: A code, an unambiguous ending of one, or "." for the lot in hand.
        by: Whose lot in hand.

    Raises:
        InputError: It cannot be a code.
        RefusedError: Several lots have it, or it is too little of a code.
    """
    if text.strip() == ".":
        return _lot_in_hand(connection, by)
    code = clean_code(text)
    if queries.lot_by_code(connection, code):
        return code
    if len(code.replace("-", "")) < SHORTEST_ENDING:
        raise RefusedError(
            f"{code} is too little of a code to name a lot: many end so.",
            f"Give at least {SHORTEST_ENDING} characters of it, such as 001-3 of SOO-001-3.",
        )
    endings = queries.codes_ending_in(connection, code)
    if len(endings) == 1:
        return endings[0]
    if endings:
        shown = ", ".join(endings[:5]) + (" and more" if len(endings) > 5 else "")
        raise RefusedError(
            f"{code} is the ending of {len(endings)} lots: {shown}.", "Give more of the code."
        )
    return None


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
    last = queries.last_about_a_lot(connection, by)
    if last is None or last.draft.lot is None:
        raise RefusedError(
            "There is no lot in hand yet for a dot to stand for.", "Name the lot by its code."
        )
    bulk = left_to_fill(connection, last.facts)
    return bulk.code if bulk else last.draft.lot


def left_to_fill(connection: Connection, facts: Facts) -> Lot | None:
    """Return the lot that bottles were filled from, if enough is left of it to fill one more.

    It stays in hand then, since the rest of it is still to be filled; a heel does not.
    """
    if not isinstance(facts, Bottle):
        return None
    row = known_lot(connection, facts.source)
    bulk = lots_by_number(connection, [row.seq])[row.seq]
    is_left = bulk.measure is facts.size.measure and bulk.on_hand >= facts.size.amount
    return bulk if is_left else None


def first_of_material(connection: Connection, material: str, today: date) -> tuple[Lot, bool]:
    """Return the lot of a material to take from, and whether there are others to choose among.

    Of those that are on hand and not barred it is the first to expire, of those without a date the
    first that came; one that is past its date is taken where there is no other.

    Raises:
        RefusedError: There is none.
    """
    came = deliveries(connection, material)
    foresee(connection, lambda foreseen: _ahead(foreseen, came, today))
    for is_past in (False, True):
        told = _told(came, today, is_past=is_past)
        fit = list(islice(_usable(connection, told), 2))
        if fit:
            return fit[0], len(fit) > 1
    raise RefusedError(
        f"There is nothing of {material} on hand that may be used.",
        f"Record a delivery: pottle receive {material} AMOUNT; or name a lot by its code.",
    )


def _told(
    came: Sequence[tuple[int, date | None]], today: date, *, is_past: bool
) -> list[tuple[int, date | None]]:
    return [(seq, day) for seq, day in came if bool(day and day < today) is is_past]


def _ahead(foreseen: Foreseen, came: Sequence[tuple[int, date | None]], today: date) -> None:
    """Foretell what is asked of the first lots that came, as those that nobody corrected."""
    told = _told(came, today, is_past=False) or _told(came, today, is_past=True)
    for _, of_a_day in groupby(told[:MOST_FORESEEN], key=itemgetter(1)):
        foreseen.asks(moments_of, [seq for seq, _ in of_a_day])
    first, at, size = [seq for seq, _ in told[:MOST_FORESEEN]], 0, FIRST_ASKED
    while at < len(first):
        foresee_lots(foreseen, first[at : at + size])
        at, size = at + size, size * 4


def _usable(connection: Connection, receipts: Sequence[tuple[int, date | None]]) -> Iterator[Lot]:
    """Yield the lots of receipts, by their days, that are on hand and not barred, in their order.

    Of the same day, or without any, the first that came is the first.

    What is on hand is summed of a few at first, ever more at a time: one of the first is mostly
    it, and of all that ever came there are the more the longer the book is.
    """
    barred, size = BARRED | {Status.STRUCK}, FIRST_ASKED
    lots = _in_order(connection, receipts)
    while part := list(islice(lots, size)):
        found = lots_by_number(connection, part)
        yield from (lot for lot in found.values() if lot.on_hand > 0 and lot.status not in barred)
        size *= 4


def _in_order(connection: Connection, receipts: Sequence[tuple[int, date | None]]) -> Iterator[int]:
    """Yield the lots of receipts that are in the order of their days; those of one as they came.

    This is the order of `by_date`, of which most lots are not read for it.
    """
    for _, of_a_day in groupby(receipts, key=itemgetter(1)):
        yield from as_they_came(connection, [seq for seq, _ in of_a_day]).values()
