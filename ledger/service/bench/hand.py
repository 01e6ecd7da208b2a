"""The lot in hand at the bench: what a short line leaves to be known.

Guarantees: reads only, in one transaction; what a pass or a liquid was is read off the entries in
force. Refuses: to choose; what was never done is None.
"""

from collections.abc import Sequence
from contextlib import suppress
from datetime import datetime

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Bottle, Filter, Formula, MakeUp, Rest, Rinse, Start
from ledger.domain.entries.choices import MaterialKind, RinseTo
from ledger.domain.lots.state import LotState, latest
from ledger.domain.lots.waiting import rest_is_over
from ledger.errors import LedgerError
from ledger.service.account.codes import (
    first_of_material,
    known_lot,
    left_to_fill,
    lot_named,
    resolve_lot,
    whole_code,
)
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.clock import today_on
from ledger.service.desk.control import formula_of
from ledger.store.engine.connections import Connection
from ledger.store.read import inputs, queries
from ledger.store.write import recorder


class Hand(Struct, frozen=True):
    """A lot in hand."""

    state: LotState
    """The lot."""
    formula: Formula | None
    """The formula it is made by."""
    last_pass: Filter | None
    """Its last pass through a filter."""
    liquid: str | None
    """Code of the lot of spirit that went in last; without any, of the water."""
    rest: Rest | None
    """The rest that goes on."""
    rest_ends: datetime | None
    """When that may end by the formula, UTC; None when nothing says so."""
    at_entry: int
    """Number of the last entry of the book when it was read."""


def hand(book: Book, text: str, by: str | None) -> Hand:
    """Return the lot that `text` names as a line at the bench needs it."""
    with book.reading() as connection:
        state = lot_state(connection, resolve_lot(connection, text, by), is_whole=False)
        return _hand_on(connection, state)


def hand_of(book: Book, state: LotState) -> Hand:
    """Return a lot, as it was just read, as a line at the bench needs it."""
    with book.reading() as connection:
        return _hand_on(connection, state)


def _hand_on(connection: Connection, state: LotState) -> Hand:
    start = latest(state, Start)
    formula = formula_of(connection, start) if start else None
    over = rest_is_over(state, formula)
    return Hand(
        state=state,
        formula=formula,
        last_pass=latest(state, Filter),
        liquid=_liquid(connection, state),
        rest=over[0] if over else None,
        rest_ends=over[1] if over else None,
        at_entry=recorder.size(connection),
    )


def is_as_read(book: Book, found: Hand) -> bool:
    """Return whether nothing was recorded since a lot was read, by whomever."""
    with book.reading() as connection:
        return recorder.size(connection) == found.at_entry


def _liquid(connection: Connection, state: LotState) -> str | None:
    into = inputs.inputs(connection, inputs.numbers_into(connection, state.seq))
    sorts = {item.code: item.sort for item in into}
    came = [code for entry in reversed(state.entries) if (code := _source(entry.facts))]
    for kind in (MaterialKind.ETHANOL, MaterialKind.WATER):
        if found := next((code for code in came if sorts.get(code) is kind), None):
            return found
    return None


def _source(facts: object) -> str | None:
    match facts:
        case Add(source=source) | MakeUp(source=source):
            return source
        case Rinse(source=source, went_to=RinseTo.BATCH):
            return source
        case _:
            return None


def measure_of(book: Book, text: str, by: str | None) -> Measure | None:
    """Return what the lot that `text` names is counted in; of a material its first to expire.

    None where there is neither. It is looked for as the lot that is drawn on.
    """
    with book.reading() as connection:
        if whole := whole_code(connection, text):
            return whole.opened.measure
        material = text.strip().lower()
        with suppress(LedgerError):
            if queries.material(connection, material):
                today = today_on(connection, book.now(connection))
                return first_of_material(connection, material, today)[0].measure
            if code := lot_named(connection, text, by):
                return known_lot(connection, code).opened.measure
        return None


def known_code(book: Book, code: str) -> bool:
    """Return whether the book has a lot of that whole code."""
    with book.reading() as connection:
        return queries.lot_by_code(connection, code.upper()) is not None


def first_lot(book: Book, material: str) -> str:
    """Return the code of the lot of a material that is taken first.

    Raises:
        RefusedError: There is none.
    """
    with book.reading() as connection:
        today = today_on(connection, book.now(connection))
        return first_of_material(connection, material, today)[0].code


def in_hand_after(book: Book, numbers: Sequence[int]) -> str | None:
    """Return the lot that is in hand after entries that were recorded; None: none of them says.

    A batch that was begun, and bottles once too little is left to fill one more.
    """
    with book.reading() as connection:
        for number in reversed(numbers):
            entry = queries.entry(connection, number)
            match entry.facts if entry else None:
                case Start():
                    return entry.draft.lot if entry else None
                case Bottle() as facts:
                    bulk = left_to_fill(connection, facts)
                    return bulk.code if bulk else entry.draft.lot if entry else None
                case _:
                    pass
    return None
