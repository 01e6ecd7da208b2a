"""Appending many entries at once to a book that has some already.

Guarantees: the same rows, hashes and tree nodes as appending one by one, in the caller's
transaction, in memory that does not grow with their number. Refuses: numbers that do not follow on
the book's last, and lots that nothing opened; it runs no rules and decides nothing else.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import islice

from sqlalchemy import Connection

from ledger.domain.entries import Entry
from ledger.domain.entries.plain import entry_text
from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.errors import RefusedError
from ledger.store.engine.statements import among, ask, ask_column
from ledger.store.form.appends import out_of_order
from ledger.store.form.columns import IN_ORDER
from ledger.store.form.mapping import Cells, lot_codes, rows
from ledger.store.write.recorder import KEYS, node, size
from ledger.store.write.rows import insert_many

CHUNK = 2000
"""How many entries are put in at once."""


class Bulk:
    """Appends to a book to which nobody else can write meanwhile."""

    def __init__(self, connection: Connection) -> None:
        """Take up a book at its end, in a writing transaction."""
        self._connection = connection
        self._frontier = Frontier.of_nodes(
            size(connection), lambda height, place: node(connection, height, place)
        )
        self._keys = {
            (kind, key)
            for kind, (table, column) in KEYS.items()
            for key in ask_column(connection, f"SELECT {column} FROM {table}")
        }

    def append(self, entries: Iterable[Entry]) -> int:
        """Append entries in the order of their numbers; return how many.

        Raises:
            RefusedError: A number does not follow on the last, or a lot was never opened.
        """
        following, count = iter(entries), 0
        with out_of_order(self._connection):
            while chunk := tuple(islice(following, CHUNK)):
                self._put(chunk)
                count += len(chunk)
        return count

    def root(self) -> bytes:
        """Return the root over all entries so far."""
        return self._frontier.root()

    def _put(self, chunk: Sequence[Entry]) -> None:
        named = [lot_codes(entry) for entry in chunk]
        listed, asked = among(frozenset[str]().union(*named))
        query = f"SELECT code, id FROM lot WHERE code IN ({listed})"
        ids: dict[str, int] = dict(ask(self._connection, query, **asked))
        found: dict[str, list[Cells]] = defaultdict(list)
        for entry, codes in zip(chunk, named, strict=True):
            self._check(entry, codes - ids.keys())
            body = entry_text(entry)
            leaf = leaf_hash(body.encode())
            found["tree"] += self._frontier.add(leaf)
            for table, cells in rows(entry, body, leaf, ids, self._is_first_of):
                found[table].append(cells)
            if (opens := entry.draft.opens) and entry.draft.corrects is None:
                ids[opens.code] = entry.seq
        for table in IN_ORDER:
            if found[table]:
                insert_many(self._connection, table, found[table])

    def _check(self, entry: Entry, unknown: frozenset[str]) -> None:
        last = self._frontier.size
        if entry.seq != last + 1:
            raise RefusedError(
                f"Entry {entry.seq} cannot follow on entry {last}.",
                "Append the entries in the order of their numbers, without gaps.",
            )
        if unknown:
            raise RefusedError(
                f"Entry {entry.seq} speaks of the lot {min(unknown)}, which no entry before it "
                "opened.",
                "Append the entry that opens it first.",
            )

    def _is_first_of(self, kind: str, key: str) -> bool:
        is_new = (kind, key) not in self._keys
        self._keys.add((kind, key))
        return is_new
