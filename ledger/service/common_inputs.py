"""What lots that failed have in common and lots that did not have not.

Guarantees: counts only; a lot failed when a complaint about its clarity stands against it. Refuses:
to weigh evidence; one common input is where to look first, not a proof.
"""

from dataclasses import dataclass

from ledger.domain.entries import Complaint
from ledger.domain.entries.words import Grade, LotType
from ledger.service.book import Book
from ledger.store import queries, walk
from ledger.store.briefs import briefs
from ledger.store.engine import Connection

UNCLEAR = (Grade.HAZY, Grade.OPALESCENT, Grade.CLOUDY, Grade.MILKY)
"""Grades whose name in a complaint makes it one about clarity."""


@dataclass(frozen=True, slots=True)
class CommonInputs:
    """What the failed lots share."""

    failed: tuple[str, ...]
    """Codes of packed lots complained of as unclear."""
    clear: tuple[str, ...]
    """Codes of the other packed lots."""
    shared: tuple[str, ...]
    """Codes of lots that every failed one is made of."""
    names: dict[str, str]
    """What each of those lots is."""
    only_in_failed: tuple[str, ...]
    """Those of them that no other packed lot is made of, nearest the source first."""


def common_inputs(book: Book) -> CommonInputs:
    """Return what the packed lots complained of as unclear share."""
    with book.reading() as connection:
        return _common(connection)


def _common(connection: Connection) -> CommonInputs:
    failed = _complained(connection)
    packed = queries.lots_of_type(connection, LotType.PACKED)
    behind = {row.seq: _made_of(connection, row.seq) for row in packed}
    bad = [behind[row.seq] for row in packed if row.opened.code in failed]
    good = [behind[row.seq] for row in packed if row.opened.code not in failed]
    shared = set.intersection(*bad) if bad else set[int]()
    only = shared.difference(*good)
    names = briefs(connection, [*shared, *only])
    return CommonInputs(
        failed=tuple(row.opened.code for row in packed if row.opened.code in failed),
        clear=tuple(row.opened.code for row in packed if row.opened.code not in failed),
        shared=tuple(names[number].code for number in sorted(shared)),
        names={brief.code: brief.name for brief in names.values()},
        only_in_failed=tuple(names[number].code for number in sorted(only)),
    )


def _complained(connection: Connection) -> frozenset[str]:
    return frozenset(
        entry.draft.lot
        for entry in queries.entries_of_kind(connection, Complaint.KIND)
        if entry.draft.lot and _is_about_clarity(entry.draft.facts)
    )


def _is_about_clarity(facts: object) -> bool:
    return isinstance(facts, Complaint) and any(grade in facts.symptom.lower() for grade in UNCLEAR)


def _made_of(connection: Connection, lot: int) -> set[int]:
    return set(walk.back(connection, lot)[1:])
