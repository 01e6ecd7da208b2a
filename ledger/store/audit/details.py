"""Auditing the details of people and parties: are they what their entries have commitments to?

Guarantees: details that are changed, lost without being forgotten, back after they were forgotten,
or of an entry that has none, are told at their entry; that somebody was forgotten counts only by
the text of the entry that says so. Refuses: to compare a commitment with the entry's text; that is
for the comparison of rows.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from sqlalchemy import Connection

from ledger.domain.entries import Forget
from ledger.domain.entries.plain import UNREADABLE, read_entry
from ledger.domain.evidence.commitments import commitment
from ledger.store.form.columns import DETAIL_FIELDS

_COMMITMENTS = " UNION ALL ".join(
    f"SELECT seq, commitment FROM {kind} WHERE commitment IS NOT NULL"
    for kind in ("party", "person")
)
_FORGETTING = "SELECT body FROM entry WHERE kind = 'forget'"
_DETAILS = f"SELECT seq, salt, {', '.join(DETAIL_FIELDS)} FROM details"


def detail_faults(connection: Connection, last: int) -> Iterator[tuple[int, str]]:
    """Yield what does not fit of details: the number of the entry and a sentence.

    Args:
        connection: A connection in a transaction that reads.
        last: Number of the last entry; what belongs to none is told with the strays.
    """
    stored = {row[0]: row[1:] for row in connection.exec_driver_sql(_DETAILS)}
    promised = dict(tuple(row) for row in connection.exec_driver_sql(_COMMITMENTS))
    gone = forgotten(connection)
    for seq in sorted({seq for seq in stored if 1 <= seq <= last} | promised.keys()):
        if fault := _fault(seq, promised.get(seq), stored.get(seq), is_gone=seq in gone):
            yield seq, fault


def forgotten(connection: Connection) -> frozenset[int]:
    """Return the numbers of the entries whose details were erased, by the texts that say so."""
    bodies = connection.exec_driver_sql(_FORGETTING).scalars()
    return frozenset(number for body in bodies for number in _erased(body))


def _erased(body: str) -> Iterator[int]:
    try:
        facts = read_entry(body).facts
    except UNREADABLE:
        return  # told where texts are read
    if isinstance(facts, Forget):
        yield from (named.entry for named in facts.entries if not named.is_kept)


def _fault(seq: int, promised: Any, row: Any, *, is_gone: bool) -> str:  # noqa: ANN401 - cells
    if promised is None:
        return f"The table details has a row for entry {seq} that the entry does not say."
    if row is None:
        lost = f"The details of entry {seq} are lost, and no entry says that they were forgotten."
        return "" if is_gone else lost
    if is_gone:
        return f"The details of entry {seq} were forgotten, and somebody put them back."
    salt, *cells = row
    told = {name: cell for name, cell in zip(DETAIL_FIELDS, cells, strict=True) if cell is not None}
    return (
        ""
        if _fits(promised, salt, told)
        else (f"The details of entry {seq} are not those that the entry has a commitment to.")
    )


def _fits(promised: object, salt: str, told: Mapping[str, str]) -> bool:
    try:
        return commitment(bytes.fromhex(salt), told) == promised
    except UNREADABLE:
        return False
