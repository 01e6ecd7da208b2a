"""What an act nearly always asks of the book, foretold for a server.

Guarantees: only what readers ask themselves; what is not asked in the end was asked for nothing.
Refuses: to know rules; what a lot's state is made of, and what went into it, is the same for all.
"""

from collections.abc import Sequence
from datetime import datetime

from ledger.domain.entries.canonical import MAX_INTEGER
from ledger.domain.entries.choices import LotType
from ledger.store.engine.acts import NOW
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import (
    amounts,
    dates,
    inputs,
    made,
    parties,
    people,
    queries,
    reach,
    received,
    stands,
    steps,
    walk,
)
from ledger.store.read.end import OF_LAST, edge_of, end_of
from ledger.store.read.lots import codes_of_stem

_ID = "SELECT id FROM lot WHERE code = :code"
_INSTANT = "SELECT to_char({} AT TIME ZONE 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS\"Z\"')"
_SECOND = _INSTANT.format(f"CAST(current_setting('{NOW}') AS TIMESTAMPTZ)")
_AT_HOME = (
    "(SELECT CAST(left(:clock, 19) AS TIMESTAMP) AT TIME ZONE h.time_zone FROM house h "
    "JOIN entry e ON e.seq = h.seq LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE c.corrects IS NULL ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1)"
)
_SECOND_AT_HOME = _INSTANT.format(_AT_HOME)
# Each once, where it was first met, as the walk is read.
MET = (
    "SELECT array_agg(lot ORDER BY first) FROM (SELECT lot, MIN(nth) AS first "
    "FROM unnest(CAST(:lots AS BIGINT[])) WITH ORDINALITY AS met(lot, nth) GROUP BY lot) AS once"
)
"""Each of some lots once, where it was first met, as walks are read."""
_MADE = (
    "SELECT array_agg(lot.id ORDER BY nth) FROM unnest(CAST(:lots AS BIGINT[])) "
    "WITH ORDINALITY AS met(number, nth) JOIN lot ON lot.id = number "
    "WHERE lot.lot_type <> 'received'"
)
_SORTED = (
    "SELECT array_agg(lot ORDER BY lot) FROM "
    "(SELECT DISTINCT lot FROM unnest(CAST(:lots AS BIGINT[])) AS met(lot)) AS once"
)
_MATERIAL = (
    "SELECT r.material FROM entry e JOIN receipt r ON r.seq = e.seq "
    "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.stands_for = :lot AND c.corrects IS NULL"
)
# Of each formula that lots were made by all versions, as they are read of one.
FORMULAS = (
    "SELECT code, body FROM (SELECT DISTINCT t.code, t.version, f.body "
    "FROM unnest(CAST(:lots AS BIGINT[])) AS met(number) JOIN entry e ON e.stands_for = number "
    "JOIN start s ON s.seq = e.seq LEFT JOIN entry c ON c.corrects = e.seq "
    "JOIN formula t ON t.code = s.formula JOIN entry f ON f.seq = t.seq "
    "LEFT JOIN entry d ON d.corrects = f.seq WHERE c.corrects IS NULL AND d.corrects IS NULL) "
    "AS every ORDER BY code, version"
)
BULK = (
    "SELECT b.source FROM entry e JOIN bottle b ON b.seq = e.seq "
    "WHERE e.stands_for = :lot ORDER BY e.seq DESC LIMIT 1"
)
# As the code of the lot of it that came last begins, so will that of the next.
_STEM_OF = (
    "SELECT split_part(lot.code, '-', 1) || '-' FROM receipt r JOIN lot ON lot.id = r.seq "
    "WHERE r.material = :code ORDER BY r.seq DESC LIMIT 1"
)
# As its own code begins, so will that of its bottles.
_STEM_OF_BOTTLES = "SELECT substr('B' || split_part(CAST(:code AS TEXT), '-', 1), 1, 8) || '-'"
_LOT_OF = "SELECT lot.code FROM entry e JOIN lot ON lot.id = e.lot WHERE e.seq = :seq"


def foresee_all(foreseen: Foreseen) -> None:
    """Foretell what every act asks."""
    foreseen.asks(queries.house)
    foreseen.asks(end_of)
    foreseen.asks(edge_of, foreseen.finds("BIGINT", OF_LAST))
    foreseen.asks(queries.people)


def in_hand(foreseen: Foreseen, by: str) -> Found:
    """Foretell what is asked for the lot that somebody has in hand, and return its code."""
    last = foreseen.finds_by("BIGINT", queries.last_about_a_lot, by)
    foreseen.asks(queries.entry, last)
    return foreseen.finds("TEXT", _LOT_OF, seq=last)


def second(foreseen: Foreseen) -> Found:
    """Return the second in which a writer's turn began, by the server's clock."""
    return foreseen.finds("TEXT", _SECOND)


def second_at_home(foreseen: Foreseen, clock: str) -> Found:
    """Return the second in which the house's clock shows what an instant's text tells."""
    return foreseen.finds("TEXT", _SECOND_AT_HOME, clock=clock)


def foresee_lot(
    foreseen: Foreseen,
    code: str | Found,
    sources: Sequence[str | Found] | Found,
    at: str | Found | None,
    skip: int | Found = 0,
) -> Found:
    """Foretell what an act asks of the lot that it is about, and return its number.

    Args:
        foreseen: Hears it.
        code: The lot's whole code.
        sources: The whole codes of the lots that it draws on.
        at: When it happened, as an instant; None: that is not known yet.
        skip: The number of a chain of corrections that does not count.
    """
    lot = foresee_state(foreseen, code, skip)
    if at is not None:
        cells = {"lot": lot, "skip": skip, "at": at, "number": skip or MAX_INTEGER}
        foreseen.asks_for(amounts.HELD_THEN_AND_NOW, **cells)
    foresee_inputs(foreseen, lot, sources, skip)
    foreseen.asks(inputs.makers_of)
    foreseen.asks(inputs.vessel_sizes)
    foreseen.asks(queries.withdrawn)
    return lot


def foresee_unforeseen(
    foreseen: Foreseen, row: queries.LotRow, sources: Sequence[str | Found] | None, at: str
) -> None:
    """Foretell what is asked of a lot that the words of an act did not tell, once it is known.

    Args:
        foreseen: Hears it.
        row: The lot.
        sources: The whole codes of the lots that it draws on; None: it is itself drawn on.
        at: When the act happened, as an instant.
    """
    code, number = row.opened.code, row.seq
    if not foreseen.is_first(code):
        return
    if not foreseen.knows(queries.entries_of_lot, number):
        if sources is None:
            foresee_source(foreseen, code)
        else:
            foresee_lot(foreseen, code, sources, at)
    if row.opened.lot_type is LotType.PACKED and not foreseen.knows(queries.chain, number):
        foresee_packed(foreseen, number)


def foresee_packed(foreseen: Foreseen, lot: int | Found) -> None:
    """Foretell what an act asks of bottles besides: what is in them, and who got some.

    Args:
        foreseen: Hears it.
        lot: Their number, or what it will be found by.
    """
    foreseen.asks(amounts.held, lot)
    foreseen.asks(made.next_case)
    foreseen.asks(queries.chain, lot)
    bulk = foreseen.finds("TEXT", BULK, lot=lot)
    number = foresee_state(foreseen, bulk)
    foreseen.asks(amounts.held, number)
    foresee_inputs(foreseen, number, ())
    foresee_names(foreseen)


def foresee_names(foreseen: Foreseen) -> None:
    """Foretell what an act asks to say whom a text names."""
    foreseen.asks(people.shown_rows)
    foreseen.asks(people.every_code)


def foresee_party(foreseen: Foreseen, name: str) -> None:
    """Foretell what an act asks of somebody whom it names."""
    foresee_names(foreseen)
    foreseen.asks(people.details)
    foreseen.asks(parties.is_named, name)
    for reader in parties.EACH_NAMED:
        foreseen.asks(reader)


def foresee_code(foreseen: Foreseen, stem: str) -> None:
    """Foretell what an act asks to find a code for a lot that it opens."""
    foreseen.asks(codes_of_stem, f"{stem}-")


def foresee_filling(foreseen: Foreseen, bulk: str | Found) -> None:
    """Foretell what an act asks that fills a lot into bottles, by its whole code."""
    foreseen.asks(codes_of_stem, foreseen.finds("TEXT", _STEM_OF_BOTTLES, code=bulk))


def foresee_vessel(foreseen: Foreseen, vessel: str, at: datetime) -> None:
    """Foretell what an act asks of a vessel into which something comes at a moment."""
    if not foreseen.knows(inputs.last_held, vessel, at):
        foreseen.asks(inputs.last_held, vessel, at)
        held = foreseen.finds("BIGINT", inputs.HELD_LOT, **inputs.held_cells(vessel, at))
        foreseen.asks_for(inputs.PRODUCT_OF, lot=held)


def foresee_material(foreseen: Foreseen, code: str) -> None:
    """Foretell what an act asks of a material, of which it may open a lot."""
    foreseen.asks(queries.material, code)
    foreseen.asks(codes_of_stem, foreseen.finds("TEXT", _STEM_OF, code=code))


def foresee_source(foreseen: Foreseen, code: str | Found, skip: int | Found = 0) -> Found:
    """Foretell what an act asks of a lot that it draws on, and return its number."""
    lot = foresee_state(foreseen, code, skip)
    foreseen.asks(amounts.held, lot, None, skip)
    foresee_names(foreseen)  # of its supplier
    return lot


def foresee_about(foreseen: Foreseen, seq: int, at: str | Found | None) -> None:
    """Foretell what an act asks that is about an entry, and about the lot of this.

    Args:
        foreseen: Hears it.
        seq: The number of the entry.
        at: When the act happened, as an instant; None: that is not known yet.
    """
    foresee_checked(foreseen, seq)
    lot = foresee_lot(foreseen, foreseen.finds("TEXT", _LOT_OF, seq=seq), (), at)
    foresee_packed(foreseen, lot)


def foresee_checked(foreseen: Foreseen, seq: int | Found) -> None:
    """Foretell what is asked of an entry that somebody checks."""
    foreseen.asks(queries.entry, seq)
    foreseen.asks(queries.corrected_by, seq)


def foresee_inputs(
    foreseen: Foreseen,
    lot: int | Found,
    sources: Sequence[str | Found] | Found,
    skip: int | Found = 0,
) -> None:
    """Foretell what is asked of what went into a lot."""
    foreseen.asks(inputs.numbers_into, lot, skip)
    codes = sources if isinstance(sources, Found) else list(sources)
    into = foreseen.finds("BIGINT[]", inputs.INTO_AND, lot=lot, skip=skip, codes=codes)
    foreseen.asks(inputs.inputs, into)
    foreseen.asks(stands.stands, into)


def foresee_replay(foreseen: Foreseen, met: Found) -> None:
    """Foretell what is asked of lots that are replayed."""
    foreseen.asks(steps.steps_of, met)
    foreseen.asks(steps.step_rows, foreseen.finds("BIGINT[]", _MADE, lots=met))
    foreseen.asks(received.received, met)


def foresee_state(foreseen: Foreseen, code: str | Found, skip: int | Found = 0) -> Found:
    """Foretell what is asked of any lot, and return its number."""
    foreseen.asks(queries.lot_by_code, code)
    lot = foreseen.finds("BIGINT", _ID, code=code)
    foreseen.asks(queries.entries_of_lot, lot, skip)
    foreseen.asks(queries.material, foreseen.finds("TEXT", _MATERIAL, lot=lot))
    foreseen.asks(walk.behind, lot)
    met = foreseen.finds("BIGINT[]", MET, lots=foreseen.finds_by("BIGINT[]", walk.back, lot))
    foresee_replay(foreseen, met)
    if met.rows is None:  # else once, of all that is replayed together
        foreseen.asks_each(queries.formulas, FORMULAS, lots=met)
    foreseen.asks(reach.made_of, [lot])
    foreseen.asks(dates.rows_of, foreseen.finds("BIGINT[]", _SORTED, lots=met))
    return lot
