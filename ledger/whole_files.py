"""Making files: whole under their name, or not at all, whatever stops the process.

Guarantees: what is written stands beside its place until it is whole and on the disk, and then
takes its name in one step; a book is never written over, whatever is asked. Refuses: to write over
a file that is there, unless that is asked.
"""

import os
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ledger.errors import StorageError

IS_POSIX = os.name == "posix"
"""Whether folders can be flushed, as on Linux and macOS."""
PART = ".part"
"""How the name of a file ends that is not whole yet."""
OLD_S = 3600
"""Age in seconds from which a part is left over: no file takes so long (common practice, no
source)."""
BOOKS = (b"SQLite format 3\0", b'{"entries":')
"""How a book begins, or a backup: a file of SQLite, a book in lines."""
BESIDE_A_BOOK = ("-wal", "-shm", "-journal")
"""What SQLite keeps beside a file."""


def is_book(path: Path) -> bool:
    """Return whether a file is a book, a copy of one, or what SQLite keeps beside one.

    Raises:
        OSError: It cannot be read.
    """
    for ending in BESIDE_A_BOOK:
        if path.name.endswith(ending):
            book = path.with_name(path.name.removesuffix(ending))
            return book.is_file() and is_book(book)
    if not path.is_file():
        return False
    with path.open("rb") as file:
        head = file.read(max(map(len, BOOKS)))
    return any(head.startswith(mark) for mark in BOOKS)


@contextmanager
def whole_file(path: Path, *, is_private: bool, may_replace: bool) -> Iterator[Path]:
    """Give an empty file beside `path`, which takes its name at the end.

    Args:
        path: The name that it will have.
        is_private: Whether only its owner may read it; else whoever may read other files.
        may_replace: Whether it may take the place of a file that is there and is no book.

    Raises:
        FileExistsError: There is a file of that name already, or there is one now.
        StorageError: A book is there.
        OSError: The folder is missing, full, or may not be written in.
    """
    _refuse(path, may_replace=may_replace)
    clear_leftovers(path)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=PART, dir=path.parent)
    os.close(handle)
    part = Path(name)
    try:
        if not is_private:
            part.chmod(0o666 & ~_mask())
        yield part
        _flush(part)
        _refuse(path, may_replace=may_replace)
        if may_replace:
            part.replace(path)
        else:
            _link(part, path)
        _flush(path.parent)
    finally:
        for ending in ("", *BESIDE_A_BOOK):  # a book that came to no end leaves its log too
            part.with_name(part.name + ending).unlink(missing_ok=True)


def clear_leftovers(path: Path) -> list[Path]:
    """Take away and return what earlier tries at this file left when they were broken off."""
    cleared = []
    parts = f".{_literal(path.name)}.*{PART}"
    for left in (p for end in ("", *BESIDE_A_BOOK) for p in path.parent.glob(parts + end)):
        try:
            if time.time() - left.stat().st_mtime > OLD_S:
                left.unlink()
                cleared.append(left)
        except OSError:  # another cleared it, or it is not ours to clear
            continue
    return cleared


def _refuse(path: Path, *, may_replace: bool) -> None:
    if not (path.exists() or path.is_symlink()):
        return
    if not may_replace:
        raise FileExistsError(path)
    if is_book(path):
        raise StorageError(
            f"{path} is a book, or a copy of one; it was left as it is.",
            "Give another name. No book is ever written over, with --force neither.",
        )


def _link(part: Path, path: Path) -> None:
    """Give the part its name without a moment at which another file of that name is lost."""
    try:
        path.hardlink_to(part)
    except FileExistsError:
        raise
    except OSError:  # a disk that knows no links: whoever makes the empty name first has it
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
        part.replace(path)


def _literal(name: str) -> str:
    return "".join(f"[{letter}]" if letter in "*?[" else letter for letter in name)


def _mask() -> int:
    """Return the rights that new files of this process go without; there is no other way to ask."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _flush(path: Path) -> None:
    """Make sure that what was written is on the disk; a folder may not know how."""
    is_folder = path.is_dir()
    if is_folder and not IS_POSIX:
        return
    # Windows flushes no file that is open for reading alone; a folder opens no other way.
    handle = os.open(path, os.O_RDONLY if is_folder else os.O_RDWR)
    try:
        if sys.platform == "darwin":
            # What fsync hands to the disk there may still stand in the disk's own memory.
            import fcntl

            fcntl.fcntl(handle, fcntl.F_FULLFSYNC)
        else:
            os.fsync(handle)
    finally:
        os.close(handle)
