"""What a correction asks of its entry and of all that stands on it, foretold for a server.

Guarantees: only what readers ask themselves, of each of the acts and lots in their own words; what
is not asked in the end was asked for nothing. Refuses: to know rules; which acts are judged, and
how many at most, it is told.
"""

from msgspec import Struct

from ledger.domain.entries.choices import MaterialKind
from ledger.store.ahead import foreseen as reads
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import Found
from ledger.store.read import amounts, dependents, inputs, parties, queries, received, walk
from ledger.store.read.end import STANDS_FOR
from ledger.store.read.queries import IN_FORCE

_PARTY_OF = (
    "SELECT COALESCE((SELECT MAX(shown) FROM party_shown WHERE stored = told.name), told.name) "
    "FROM (SELECT party AS name FROM move WHERE seq = :seq "
    "UNION ALL SELECT supplier FROM receipt WHERE seq = :seq "
    "UNION ALL SELECT party FROM complaint WHERE seq = :seq "
    "UNION ALL SELECT party FROM contact WHERE seq = :seq) AS told"
)
_MATERIAL_OF = (
    "SELECT code FROM material WHERE seq = :seq "
    "UNION ALL SELECT material FROM receipt WHERE seq = :seq"
)
# As it is compared: capitals do not matter.
_VESSEL_OF = (
    "SELECT translate(t.vessel, 'ABCDEFGHIJKLMNOPQRSTUVWXYZ', 'abcdefghijklmnopqrstuvwxyz'), "
    "lower(t.vessel), e.happened_at, e.stands_for FROM entry e JOIN (SELECT seq, vessel FROM start "
    "UNION ALL SELECT seq, vessel FROM rest) AS t ON t.seq = e.seq WHERE e.seq = :seq"
)
_CHECKED = 'SELECT about FROM "check" WHERE seq = :seq'
_PERSON_OF = "SELECT initials FROM person WHERE seq = :seq"
# Sorted as Python sorts them.
_MATERIALS_OF = (
    'SELECT array_agg(DISTINCT r.material COLLATE "C" ORDER BY r.material COLLATE "C") '
    "FROM unnest(CAST(:lots AS BIGINT[])) AS met(lot) JOIN entry e ON e.stands_for = met.lot "
    "JOIN receipt r ON r.seq = e.seq LEFT JOIN entry c ON c.corrects = e.seq "
    "WHERE c.corrects IS NULL"
)
_OILS_OF = (
    f"{_MATERIALS_OF} AND EXISTS "
    f"(SELECT 1 FROM material m WHERE m.code = r.material AND m.sort = '{MaterialKind.OIL}')"
)
_LOOKED_AT = "SELECT e.lot FROM entry e JOIN look l ON l.seq = e.seq WHERE e.seq = :seq"
_BOTH = "SELECT CAST(:lots AS BIGINT[]) || CAST(:behind AS BIGINT[])"
_FIRST = 1000
"""The number of the first value that is found, far behind those of all else in an act."""
# The lots that an entry touches as rules name them, each once, where it is named first.
_CODES_OF = """
    SELECT array_agg(code ORDER BY nth) FROM (
        SELECT code, MIN(nth) AS nth FROM (
            SELECT lot.code, touched.nth FROM (
                SELECT e.lot, 0 AS nth FROM entry e WHERE e.seq = :seq
                UNION ALL SELECT e.stands_for, 1 FROM entry e WHERE e.seq = :seq
                UNION ALL SELECT l.lot, 2 FROM level l WHERE l.seq = :seq
                UNION ALL SELECT p.source, 3 + 2 * p.line FROM posting p WHERE p.seq = :seq
                UNION ALL SELECT p.target, 4 + 2 * p.line FROM posting p WHERE p.seq = :seq
            ) AS touched JOIN lot ON lot.id = touched.lot
            UNION ALL SELECT code, 1000000 + nth
            FROM unnest(CAST(:more AS TEXT[])) WITH ORDINALITY AS more(code, nth)) AS every
        GROUP BY code) AS once"""
_CODES = "SELECT CAST(:codes AS TEXT[])"
_BEGUN = """
    SELECT lot.id, told.nth FROM unnest(CAST(:codes AS TEXT[])) WITH ORDINALITY AS told(code, nth)
    JOIN lot ON lot.code = told.code
    WHERE lot.lot_type <> 'received'
        OR EXISTS (SELECT 1 FROM entry o WHERE o.seq = :seq AND o.kind = ANY(:of_all))"""
_NEAR = """
    SELECT array_agg(lot ORDER BY nth, place) FROM (
        SELECT first.* FROM (
            SELECT DISTINCT ON (met.lot) met.lot, each.nth, met.place
            FROM :begun CROSS JOIN unnest(:reached) WITH ORDINALITY AS met(lot, place)
            JOIN lot ON lot.id = met.lot AND lot.lot_type <> 'received'
            ORDER BY met.lot, each.nth, met.place) AS first
        ORDER BY first.nth, first.place LIMIT :most) AS near"""
_TOUCHED = """
    SELECT lot.id, lot.code FROM lot
    WHERE lot.id = ANY(:near) OR lot.code = ANY(CAST(:codes AS TEXT[]))"""
_SOURCES_OF = """
    ARRAY(SELECT DISTINCT s.code FROM posting p JOIN lot s ON s.id = p.source
        WHERE p.seq = e.seq AND p.source IS DISTINCT FROM e.lot)"""
_OWN = """
    SELECT e.seq, e.stands_for, COALESCE(CAST(:then AS TEXT), e.happened_at), lot.code, {sources}
    FROM entry e LEFT JOIN lot ON lot.id = e.lot WHERE e.seq = :seq"""
_INSTEAD = "CAST(:instead AS TEXT[])"
# One that opens a lot asks of none that it is about.
_ACTS = f"""
    {_OWN.format(sources=_SOURCES_OF)}
    UNION ALL {_OWN.format(sources=_INSTEAD)} AND cardinality({_INSTEAD}) > 0
    UNION ALL SELECT seq, chain, at, code, sources FROM (
        SELECT once.* FROM (
            SELECT DISTINCT ON (e.stands_for) e.seq, e.stands_for AS chain, e.happened_at AS at,
                CASE WHEN e.lot <> e.stands_for THEN lot.code END AS code,
                {_SOURCES_OF} AS sources, near.nth
            FROM unnest(CAST(:near AS BIGINT[])) WITH ORDINALITY AS near(lot, nth)
            CROSS JOIN LATERAL ({dependents.TOUCHING.format(lot="near.lot")}) AS touching
            JOIN entry e ON e.seq = touching.seq
            JOIN entry o ON o.seq = :seq
            LEFT JOIN lot ON lot.id = e.lot
            {IN_FORCE} AND e.stands_for <> o.stands_for
            AND (e.happened_at, e.stands_for) > (o.happened_at, o.stands_for)
            AND e.kind = ANY(:kinds)
            ORDER BY e.stands_for, near.nth) AS once
        ORDER BY once.nth, once.at, once.chain LIMIT :most) AS later"""
_SOURCES = "SELECT each.chain, told.code FROM :acts CROSS JOIN unnest(:sources) AS told(code)"
_FILLED = """
    SELECT DISTINCT told.chain, lot.id FROM (
        SELECT each.chain, each.code FROM :acts
        UNION ALL SELECT each.chain, each.code FROM :sources) AS told
    JOIN lot ON lot.code = told.code AND lot.lot_type = 'packed'"""


def foresee_entry(foreseen: Foreseen, seq: int) -> dict[str, Found]:
    """Foretell what a correction asks of the entry that it corrects, besides of lots.

    Args:
        foreseen: Hears it.
        seq: The number of the entry.

    Returns:
        By what a person or a material that it tells of is known, as it will be found, by its kind.
    """
    reads.foresee_checked(foreseen, seq)
    foreseen.asks(queries.entries_about, foreseen.finds("BIGINT", STANDS_FOR, seq=seq))
    reads.foresee_names(foreseen)
    foreseen.asks(parties.is_named, foreseen.finds("TEXT", _PARTY_OF, seq=seq))
    material = foreseen.finds("TEXT", _MATERIAL_OF, seq=seq)
    foreseen.asks(queries.material, material)
    _stood_in(foreseen, seq)
    reads.foresee_checked(foreseen, foreseen.finds("BIGINT", _CHECKED, seq=seq))
    _materials(foreseen, foreseen.finds("BIGINT", _LOOKED_AT, seq=seq), _OILS_OF)
    return {"material": material, "person": foreseen.finds("TEXT", _PERSON_OF, seq=seq)}


def _stood_in(foreseen: Foreseen, seq: int) -> None:
    """Foretell what is asked of the vessel that an entry names."""
    names = ("vessel", "folded", "at", "skip")
    found = foreseen.finds_rows(
        dict(zip(names, (*["TEXT"] * 3, "BIGINT"), strict=True)), _VESSEL_OF, seq=seq
    )
    cells = dict(zip(names, found, strict=True))
    foreseen.asks_for(inputs.HELD, **cells)
    foreseen.asks_for(inputs.PRODUCT_OF, lot=foreseen.finds("BIGINT", inputs.HELD_LOT, **cells))


class Anew(Struct, frozen=True):
    """Which acts are judged anew that stand on an entry."""

    kinds: tuple[str, ...]
    """Their kinds."""
    of_all: tuple[str, ...]
    """The kinds of entries that concern all that is made of a lot, even of one that came."""
    most_acts: int
    """How many of them at most."""
    most_lots: int
    """How many lots that may stand on it at most."""


class Touched(Struct, frozen=True):
    """An entry that is corrected or struck, as far as that is known."""

    seq: int
    """Its number."""
    codes: tuple[str, ...] | None = None
    """The codes of the lots that it touches, before or after; None: as the book has it."""
    sources: tuple[str, ...] = ()
    """The codes of lots that it is to draw on instead."""
    at: str | Found | None = None
    """When it is to have happened, as an instant; None: when it did."""


def foresee_later(foreseen: Foreseen, touched: Touched, anew: Anew) -> None:
    """Foretell what is asked to correct or strike an entry, of all that stands on it.

    Args:
        foreseen: Hears it.
        touched: The entry.
        anew: Which acts are judged anew.
    """
    foreseen.number_from(_FIRST)
    codes = _codes(foreseen, touched)
    near = _near(foreseen, touched.seq, codes, anew)
    lot, code = foreseen.finds_rows(
        {"lot": "BIGINT", "code": "TEXT"}, _TOUCHED, near=near, codes=codes
    )
    foreseen.asks(queries.lot_by_code, code)
    foreseen.asks(dependents.entries_touching, lot)
    _replay(foreseen, near)
    _foresee_acts(foreseen, touched, near, anew)


def _codes(foreseen: Foreseen, touched: Touched) -> Found:
    """Return the codes of the lots that an entry touches, before or after."""
    if touched.codes is not None:
        return foreseen.finds("TEXT[]", _CODES, codes=list(touched.codes))
    return foreseen.finds("TEXT[]", _CODES_OF, seq=touched.seq, more=list(touched.sources))


def _near(foreseen: Foreseen, seq: int, codes: Found, anew: Anew) -> Found:
    """Return the lots made here that may be others by an entry, nearest first."""
    lot, _ = foreseen.finds_rows(
        {"lot": "BIGINT", "nth": "BIGINT"}, _BEGUN, codes=codes, seq=seq, of_all=list(anew.of_all)
    )
    reached = foreseen.finds_by("BIGINT[]", walk.forward, lot)
    return foreseen.finds("BIGINT[]", _NEAR, begun=lot.rows, reached=reached, most=anew.most_lots)


def _foresee_acts(foreseen: Foreseen, touched: Touched, near: Found, anew: Anew) -> None:
    """Foretell what rules ask around an entry and each later act, as if it were entered anew."""
    number, chain, at, code, sources = foreseen.finds_rows(
        {"seq": "BIGINT", "chain": "BIGINT", "at": "TEXT", "code": "TEXT", "sources": "TEXT[]"},
        _ACTS,
        seq=touched.seq,
        then=touched.at,
        instead=list(touched.sources),
        near=near,
        kinds=list(anew.kinds),
        most=anew.most_acts,
    )
    foreseen.asks(queries.entry, number)
    foreseen.asks(queries.corrected_by, number)
    reads.foresee_lot(foreseen, code, sources, at, chain)
    skip, source = foreseen.finds_rows(
        {"chain": "BIGINT", "code": "TEXT"}, _SOURCES, acts=number.rows, sources=sources
    )
    reads.foresee_source(foreseen, source, skip)
    left_out, lot = foreseen.finds_rows(
        {"chain": "BIGINT", "lot": "BIGINT"}, _FILLED, acts=number.rows, sources=source.rows
    )
    _bulk(foreseen, lot, left_out)
    foreseen.asks(queries.limits)
    foreseen.asks(queries.withdrawn)


def _replay(foreseen: Foreseen, lots: Found) -> None:
    """Foretell what is asked to replay lots together, by their numbers as they will be found."""
    foreseen.asks(walk.all_behind, lots)
    behind = foreseen.finds_all("BIGINT[]", walk.all_behind, lots)
    both = foreseen.finds("BIGINT[]", _BOTH, lots=lots, behind=behind)
    met = foreseen.finds("BIGINT[]", reads.MET, lots=both)
    reads.foresee_replay(foreseen, met)
    foreseen.asks_each(queries.formulas, reads.FORMULAS, lots=met)


def _bulk(foreseen: Foreseen, lot: Found, skip: Found) -> None:
    """Foretell what an act asks of what is in bottles, by their number as it will be found."""
    foreseen.asks(queries.chain, lot)
    bulk = reads.foresee_state(foreseen, foreseen.finds("TEXT", reads.BULK, lot=lot))
    foreseen.asks(amounts.held, bulk)
    reads.foresee_inputs(foreseen, bulk, (), skip)
    _materials(foreseen, lot, _MATERIALS_OF)


def _materials(foreseen: Foreseen, lot: Found, statement: str) -> None:
    """Foretell what is asked of materials in a lot, by a statement that finds these behind it."""
    behind = foreseen.finds_by("BIGINT[]", walk.back, lot)
    foreseen.asks(received.material_bodies, foreseen.finds("TEXT[]", statement, lots=behind))
