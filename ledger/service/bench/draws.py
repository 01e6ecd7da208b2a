"""Which lots to draw on for a batch that follows a formula.

Guarantees: first expired first out, among lots that are on hand, in date, and received and not
held, or made here and released; what is short is said. Refuses: to draw; it only proposes.
"""

from collections.abc import Iterable, Iterator
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Formula, Start
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.control import Control
from ledger.domain.lots.lot import Lot, Status, by_date
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import in_measure_of, latest
from ledger.domain.masters.formulas import Called, Wanted, together, wanted
from ledger.domain.masters.weighing import asked, weighable
from ledger.domain.rules.formula.lines import went_in
from ledger.service.account.dates import with_dates
from ledger.service.account.density import with_density
from ledger.service.account.lots import lots_by_number
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.clock import today
from ledger.service.desk.control import formula_of
from ledger.store.engine.connections import Connection
from ledger.store.read import inputs, queries

USABLE = frozenset({Status.IN_STOCK, Status.RELEASED})
"""Where a lot stands that may be drawn on."""


class Drawn(Struct, frozen=True):
    """What to take of one lot."""

    lot: str
    """Its code."""
    amount: int
    """How much, in the measure of the formula's line."""
    best_before: date | None
    """Its best-before date."""


class Proposed(Struct, frozen=True):
    """What to take for one line of a formula."""

    wanted: Wanted
    """What the line calls for."""
    name: str
    """Its name for people."""
    drawn: tuple[Drawn, ...]
    """What to take of which lots, in order."""
    short: int
    """How much of it no lot has, in the line's measure."""


def propose(book: Book, code: str) -> tuple[Proposed, ...]:
    """Return what to draw for a batch, by its lot's whole code; empty without a formula."""
    day = today(book)
    with book.reading() as connection:
        start = latest(lot_state(connection, code, is_whole=False), Start)
        formula = formula_of(connection, start) if start else None
        if start is None or formula is None:
            return ()
        return proposed_on(connection, formula, start.target.amount, day)


def propose_for(book: Book, formula: Formula, target_ul: int) -> tuple[Proposed, ...]:
    """Return what to draw for a volume by a formula, before a batch of it is begun."""
    day = today(book)
    with book.reading() as connection:
        return proposed_on(connection, formula, target_ul, day)


def lacking(book: Book, code: str) -> tuple[Proposed, ...]:
    """Return what to draw for those lines of its formula of which too little is in a batch yet.

    Too little is what the end of its making would ask a reason for.
    """
    day = today(book)
    with book.reading() as connection:
        state = lot_state(connection, code, is_whole=False)
        start = latest(state, Start)
        formula = formula_of(connection, start) if start else None
        if start is None or formula is None:
            return ()
        into = inputs.inputs(connection, inputs.numbers_into(connection, state.seq))
        scene = Scene(now=book.clock(), lot=state, control=Control(formula, inputs=into))
        lines = together(wanted(formula, start.target.amount))
        return _proposed(connection, (left for line in lines for left in _left(line, scene)), day)


def _left(line: Wanted, scene: Scene) -> Iterator[Wanted]:
    """Yield what is left of a line to be put in; nothing when enough is in."""
    total = went_in(line, scene.lot, scene) if scene.lot else None
    # Where no tolerance is given any of it is enough, as for the rule that asks at the finish.
    if total is None or total >= (line.least if line.least is not None else 1):
        return
    least, most = (None if end is None else end - total for end in (line.least, line.most))
    yield replace(line, amount=line.amount - total, least=least, most=most)


def proposed_on(
    connection: Connection, formula: Formula, target_ul: int, day: date
) -> tuple[Proposed, ...]:
    """Return what to draw for a volume."""
    return _proposed(connection, wanted(formula, target_ul), day)


def _proposed(connection: Connection, lines: Iterable[Wanted], day: date) -> tuple[Proposed, ...]:
    """Return what to draw for lines; a lot drawn on by one has less for the next."""
    gone: dict[str, int] = {}
    proposed = []
    for line in lines:
        drawn, short = _draw(connection, line, day, gone)
        proposed.append(Proposed(line, _name(connection, line.called), drawn, short))
        for taken in drawn:
            gone[taken.lot] = gone.get(taken.lot, 0) + taken.amount
    return tuple(proposed)


def _name(connection: Connection, called: Called) -> str:
    if called.material:
        material = queries.material(connection, called.material)
        return material.name if material else called.code
    versions = queries.formulas(connection, called.formula)
    return versions[-1].product if versions else called.code


def _draw(
    connection: Connection, line: Wanted, day: date, gone: dict[str, int]
) -> tuple[tuple[Drawn, ...], int]:
    """Return what to take of which lots, and how much of what is asked for no lot has.

    All that is left of a lot is taken exactly; the rest is rounded like what is asked for.
    """
    left, drawn = asked(line), list[Drawn]()
    for lot in _first_expired(connection, line.called, day):
        there = _on_hand(connection, lot, line) - gone.get(lot.code, 0)
        want = _rest(line, left, drawn) if drawn else left
        take = min(want, there)
        if take > 0:
            drawn.append(Drawn(lot.code, take, lot.best_before))
            left = 0 if take == want else left - take
    return tuple(drawn), left


def _rest(line: Wanted, left: int, drawn: list[Drawn]) -> int:
    """Return what is still asked for, so that all that is taken stays within the limits."""
    taken = sum(draw.amount for draw in drawn)
    least, most = (None if end is None else end - taken for end in (line.least, line.most))
    return weighable(left, line.measure, least, most)


def _first_expired(connection: Connection, called: Called, day: date) -> list[Lot]:
    lots = lots_by_number(connection, inputs.lots_called(connection, called))
    fit = [lot for lot in with_dates(connection, lots).values() if _is_fit(lot, day)]
    return sorted(fit, key=by_date)


def _is_fit(lot: Lot, day: date) -> bool:
    is_in_date = lot.best_before is None or lot.best_before >= day
    is_ready = lot.lot_type is LotType.RECEIVED or lot.status is Status.RELEASED
    return lot.on_hand > 0 and lot.status in USABLE and is_in_date and is_ready


def _on_hand(connection: Connection, lot: Lot, line: Wanted) -> int:
    """Return what is there in the measure of a line; 0 when its density is not known."""
    if lot.measure is line.measure:
        return lot.on_hand
    # A large amount, so that the ratio of the two measures keeps its figures.
    one = Quantity(10**6, line.measure, "")
    state = with_density(connection, lot_state(connection, lot.code, is_whole=False), line.measure)
    own = in_measure_of(state, one)
    return lot.on_hand * 10**6 // own if own else 0
