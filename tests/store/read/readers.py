"""What every reader of the store answers of one book, by how it is called.

Guarantees: readers of one lot are asked of every lot, those of many of all at once.
"""

from collections.abc import Callable, Iterator, Mapping
from datetime import UTC, datetime
from functools import partial
from typing import Any

from sqlalchemy import Connection

from ledger.domain.entries import Complaint, Look, Move
from ledger.store.read import (
    amounts,
    dates,
    dependents,
    end,
    inputs,
    lots,
    made,
    parties,
    past,
    people,
    periods,
    planned,
    queries,
    reach,
    received,
    runs,
    sent,
    sheets,
    stands,
    steps,
    turnover,
    waiting,
    walk,
)

NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)
THEN = queries.Moment(NOON)
OF_BOOK: Mapping[str, Callable[[Connection], Any]] = {
    "all lots": lots.all_lots,
    "codes": queries.all_codes,
    "edges": lambda book: end.edge_of(book, 69),
    "end": end.end_of,
    "house": queries.house,
    "house names": lambda book: past.house_names(book, 69),
    "journal": lambda book: queries.journal(book, 0),
    "last of AB": lambda book: queries.last_about_a_lot(book, "AB"),
    "last recorded": end.last_recorded,
    "limits": queries.limits,
    "looks": lambda book: queries.entries_of_kind(book, Look),
    "complaints of every version": lambda book: people.every_entry_of(book, Complaint),
    "lots on hand": lots.lots_on_hand,
    "makers": inputs.makers_of,
    "material codes": queries.material_codes,
    "moves": lambda book: queries.entries_of_kind(book, Move),
    "names": parties.names,
    "near": lambda book: parties.near(book, "Bridge Street Stal"),
    "parties": queries.parties,
    "party codes": people.party_codes,
    "people": queries.people,
    "periods": lambda book: periods.lots_of_period(book, "2026-03-02", "2026-03-05"),
    "persons": queries.persons,
    "plans": planned.plans,
    "runs": runs.runs,
    "runs found": runs.found,
    "sheets": sheets.sheets,
    "shown names": people.shown_names,
    "statuses": stands.statuses,
    "stored names": parties.stored_names,
    "texts": lambda book: [seq for seq, _ in past.texts(book, 20)],
    "vessels": inputs.vessel_sizes,
    "waiting": waiting.waiting_lots,
    "with a strength": received.with_a_strength,
    "withdrawn": queries.withdrawn,
    "formulas": queries.formulas,
    **{
        f"material {code}": partial(lambda code, book: queries.material(book, code), code)
        for code in ("spirit", "orange-oil", "rum")
    },
    **{
        f"lots of {code}": partial(lambda code, book: received.deliveries(book, code), code)
        for code in ("spirit", "orange-oil", "rum")
    },
}
OF_LOT: Mapping[str, Callable[[Connection, int], Any]] = {
    "held": amounts.held,
    "held then": lambda book, lot: amounts.held(book, lot, THEN),
    "held then and now": lambda book, lot: amounts.held_then_and_now(book, lot, THEN),
    "touching": dependents.entries_touching,
    "into": inputs.numbers_into,
    "entries": queries.entries_of_lot,
    "entries without one": lambda book, lot: queries.entries_of_lot(book, lot, 18),
    "all entries": queries.all_entries_of_lot,
    "journal": lambda book, lot: queries.journal(book, 5, lot),
    "chain": queries.chain,
    "about": queries.entries_about,
    "corrected by": queries.corrected_by,
    "draws until": lambda book, lot: queries.draws_on(book, lot, NOON),
    "back": lambda book, lot: walk.back(book, lot, None),
    "back one": lambda book, lot: walk.back(book, lot, 1),
    "forward": lambda book, lot: walk.forward(book, lot, None),
    "forward one": lambda book, lot: walk.forward(book, lot, 1),
    "behind": walk.behind,
    "texts about": lambda book, lot: [seq for seq, _ in past.texts_about(book, lot, 60)],
}
OF_LOTS: Mapping[str, Callable[[Connection, list[int]], Any]] = {
    "on hand": amounts.on_hand,
    "poured into": amounts.poured_into,
    "dates": dates.dated,
    "changed since": lambda book, numbers: dependents.changed_since(book, numbers, 27, ["look"]),
    "inputs": inputs.inputs,
    "lots": lots.lots_by_number,
    "finished": made.finished,
    "sizes": made.bottle_sizes,
    "made of": reach.made_of,
    "entries of lots": lambda book, numbers: reach.entries_of_lots(book, numbers, ["look", "move"]),
    "received": received.received,
    "materials of": received.materials_of,
    "sent": lambda book, numbers: sent.moves_from(book, numbers),
    "stands": stands.stands,
    "spent on": steps.spent_on,
    "steps": steps.steps_of,
    "turnovers": lambda book, numbers: turnover.turnovers(book, numbers, lambda *_: None),
    "all behind": walk.all_behind,
    "sources behind": walk.sources_behind,
    "edges into": walk.edges_into,
}


def asked(connection: Connection) -> Iterator[tuple[str, Any]]:
    """Yield what is asked of a book, with the answer."""
    numbers = lots.all_lots(connection)
    for name, act in OF_BOOK.items():
        yield name, _plain(act(connection))
    for name, of_lot in OF_LOT.items():
        for lot in numbers:
            yield f"{name} {lot}", _plain(of_lot(connection, lot))
    for name, of_lots in OF_LOTS.items():
        yield name, _plain(of_lots(connection, numbers))


def _plain(answer: Any) -> Any:
    return list(answer) if isinstance(answer, Iterator) else answer
