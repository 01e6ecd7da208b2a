"""Making files that nobody else may read and that never take another's place.

Guarantees: a file appears under its name whole, or not at all, whatever stops the process; only its
owner may read it. Refuses: to write over a file that is there.
"""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ledger.errors import StorageError


def refuse_leftovers(path: Path) -> None:
    """Make sure that no book to be put at `path` would take up what another left beside it.

    Where a file is at `path` itself, the log is its own; that file is refused by who makes another.

    Raises:
        StorageError: A log of SQLite's is there, which would be written into the new book.
    """
    if path.exists():
        return
    for ending in ("-wal", "-journal"):
        left = path.with_name(path.name + ending)
        if left.exists():
            raise StorageError(
                f"There is a file {left}, left by another book that was at {path}.",
                "Move it to a safe place first: it may hold that book's last entries.",
            )


@contextmanager
def new_file(path: Path) -> Iterator[Path]:
    """Give an empty private file beside `path`, which takes its name at the end.

    Raises:
        FileExistsError: There is a file of that name already, or there is one now.
        OSError: The folder is missing, full, or may not be written in.
    """
    if path.exists() or path.is_symlink():
        raise FileExistsError(path)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".part", dir=path.parent)
    os.close(handle)
    # mkstemp has let nobody but the owner read it.
    part = Path(name)
    try:
        yield part
        _flush(part)
        # Whoever makes this empty file first has the name; only then is it filled.
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
        part.replace(path)
        # The name is kept in the folder, which has to reach the disk as well.
        _flush(path.parent)
    finally:
        part.unlink(missing_ok=True)


def _flush(path: Path) -> None:
    """Make sure that what was written is on the disk; a folder may not know how."""
    if os.name != "posix" and path.is_dir():
        return
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
