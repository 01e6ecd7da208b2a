"""Bringing an older book to this version.

Guarantees: a copy is kept first, or the one is used that an upgrade kept which was broken off; the
tables change in one transaction that is verified before it ends; no entry changes, so the root
stays; lots that stand elsewhere by the rules of this version are told. Refuses: a newer book, and a
book that would not verify afterwards; then it is left as it was.
"""

from datetime import date
from pathlib import Path

from msgspec import Struct

from ledger.domain.evidence.seals import Seal
from ledger.errors import FindingError, StorageError
from ledger.service.copies.copied import Copied, is_copy_in_lines, made
from ledger.service.copies.export import write_lines
from ledger.service.desk.book import Clock, wall_clock
from ledger.service.evidence.seal import seal_on
from ledger.store.audit.book import audit
from ledger.store.copies.lines import Progress, copy_file, root_of_texts
from ledger.store.engine.connections import (
    SCHEMA_VERSION,
    Engine,
    book_version,
    connected,
    is_server,
    reading,
    writing,
)
from ledger.store.form.migrate import migrate
from ledger.store.read.stands import statuses

_LEFT = "The book was left as it was. Verify it with the pottle that wrote it."


class Restated(Struct, frozen=True):
    """A lot that stands elsewhere by the rules of this version."""

    code: str
    """Its code."""
    before: str
    """Where it stood."""
    after: str
    """Where it stands now."""


class Upgraded(Struct, frozen=True):
    """What an upgrade did."""

    before: int
    """The version the book had."""
    after: int
    """The version it has now."""
    kept: Copied | None
    """The copy that was kept; None when there was nothing to do."""
    restated: tuple[Restated, ...] = ()
    """The lots that stand elsewhere by the rules of this version."""


def upgrade(where: str, folder: Path, progress: Progress, clock: Clock = wall_clock) -> Upgraded:
    """Bring the book at a path or URL to this version, after a backup.

    Args:
        where: The book.
        folder: Where the copy goes.
        progress: Told how far it is.
        clock: Tells the day that the copy is named by.

    Raises:
        StorageError: It is no book, is newer, or the copy cannot be written.
        FindingError: It does not verify, before or after.
    """
    with connected(where) as engine:
        before = book_version(engine, where)
        if before == SCHEMA_VERSION:
            return Upgraded(before, before, None)
        kept = _keep(engine, where, folder, clock().date(), progress)
        restated = _raise_version(engine, kept.seal, progress)
        return Upgraded(before, SCHEMA_VERSION, kept, restated)


def _keep(engine: Engine, where: str, folder: Path, day: date, progress: Progress) -> Copied:
    with reading(engine) as connection:
        seal = seal_on(connection)
        ending = "jsonl" if is_server(where) else "db"
        path = folder / f"pottle-{day}-{seal.root[:8]}-before-upgrade.{ending}"
        # Left by an upgrade that was broken off, it is as good as one made now.
        if path.is_file() and _is_copy(path, seal):
            return Copied(path, seal, str(path), is_new=False)
        with made(path) as part:
            if is_server(where):
                write_lines(connection, seal, part, progress)
            else:
                copy_file(connection, part, progress)
                if not _is_copy(part, seal):
                    what = "The entries do not have the root of the book's own tree."
                    raise FindingError(what, _LEFT)
    return Copied(path, seal, str(path))


def _is_copy(path: Path, seal: Seal) -> bool:
    """Return whether a file has the entries of a seal, in tables of whatever form."""
    if path.suffix == ".jsonl":
        return is_copy_in_lines(path, seal)
    # Its tables are of the older form, which the audit does not know; texts are the same in every
    # form.
    try:
        with connected(str(path)) as engine:
            book_version(engine, str(path))
            with reading(engine) as connection:
                return root_of_texts(connection).hex() == seal.root
    except (StorageError, UnicodeDecodeError):
        return False


def _raise_version(engine: Engine, seal: Seal, progress: Progress) -> tuple[Restated, ...]:
    with writing(engine) as connection:
        old = statuses(connection)
        migrate(connection)
        new = statuses(connection)
        audited = audit(connection, progress)
        whats = [fault.what for fault in audited.faults]
        if not whats and audited.root.hex() != seal.root:
            whats = ["The book was written in after the copy was made; run pottle upgrade again."]
        if whats:
            raise FindingError.of([(what, _LEFT) for what in whats])
    return tuple(Restated(code, old[code], new[code]) for code in new if old[code] != new[code])
