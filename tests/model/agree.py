"""What trace, contents, cost and stock say of one lot, side by side.

All follow from one replay, so whatever one of them says of a lot follows from what another says.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from math import isclose

from ledger.domain.entries import Facts, Material, Move
from ledger.domain.entries.choices import LotType, MaterialKind, MoveAs
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import LotState
from ledger.service.account.contents import contents_on
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.glass.cost import CostCard, cost
from ledger.service.lots.shares import Share, traced
from ledger.service.lots.stock import stock
from ledger.service.masters.material import materials

NEAR = 2e-3
"""Relative difference that the rounding of amounts of a few drops may make."""


def disagreements(book: Book) -> Iterator[str]:
    """Yield a line for each lot of which two tell what does not follow from one account."""
    lots = {lot.code: lot for lot in stock(book, everything=True)}
    known = {material.code: material for material in materials(book)}
    of = {code: known[lot.material] for code, lot in lots.items() if lot.material}
    for code, lot in lots.items():
        found = traced(book, code, forward=False)
        here = next(node.brief for node in found.trace.nodes if node.brief.code == code)
        state = _state(book, code)
        if not here.on_hand == lot.on_hand == state.on_hand:
            yield f"{code}: {lot.on_hand} in stock, {here.on_hand} by trace, {state.on_hand} by lot"
        if lot.lot_type is not LotType.RECEIVED:
            behind = {
                source: share
                for source, share in found.behind.items()
                if source in of and not share.is_in_cake
            }
            yield from by_cost(cost(book, code), behind)
            # What came back is in the jar, and leaves alone of what the batch was made.
            if not any(_came_back(entry.facts) for entry in state.entries):
                yield from _by_contents(book, lot, behind, of)


def _came_back(facts: Facts) -> bool:
    return isinstance(facts, Move) and facts.moved_as is MoveAs.RETURNED


def _state(book: Book, code: str) -> LotState:
    with book.reading() as connection:
        return lot_state(connection, code)


def by_cost(card: CostCard, received: Mapping[str, Share]) -> Iterator[str]:
    """Whatever is in the lot was paid for, with what was lost on the way to it."""
    paid = {line.lot: line.drawn for line in card.lines}
    if card.total_minor != sum(line.minor for line in card.lines) + card.duty_minor + (
        card.labour_minor or 0
    ):
        yield f"{card.code}: the lines of its cost do not add up"
    for source, share in received.items():
        there = share.amount / (share.whole or 1) * card.there
        if paid.get(source, 0) < there * (1 - NEAR) - 2:
            yield f"{card.code}: {there} of {source} by trace, paid for {paid.get(source, 0)}"


def _by_contents(
    book: Book, lot: Lot, received: Mapping[str, Share], materials_of: Mapping[str, Material]
) -> Iterator[str]:
    """The masses of its oils and its sugar are those of the shares that the trace tells."""
    with book.reading() as connection:
        told = contents_on(connection, lot.code)
    ours = {code: part.mass_mg for code, part in told.contents.oils().items()}
    ours["sucrose"] = told.contents.sucrose_mg
    if not told.contents.volume_ul:
        return  # nothing is left of it, or it is counted and holds no liquid
    theirs: Counter[str] = Counter()
    for source, share in received.items():
        material, fact = materials_of[source], told.received[source]
        if material.sort is MaterialKind.SUGAR:
            theirs["sucrose"] += round(share.amount)
        elif material.sort is MaterialKind.OIL and fact.density_kg_per_m3:
            theirs[material.code] += round(share.amount * fact.density_kg_per_m3 / 1000)
    if lot.lot_type is LotType.PACKED:  # a bottle may hold more than its size, so by proportion
        scale = sum(ours.values()) / (sum(theirs.values()) or 1)
    else:
        scale = told.contents.volume_ul / next((s.whole for s in received.values()), 1)
    for what in ours.keys() | theirs.keys():
        mass = ours.get(what, 0.0)
        if not isclose(mass, theirs[what] * scale, rel_tol=NEAR, abs_tol=2):
            yield f"{lot.code}: {mass} mg of {what} by contents, {theirs[what] * scale} by trace"
