"""What this process does to the disk, act by act, seen before it is done.

Guarantees: every write, cut, flush, birth and death of a file that SQLite asks its default way to
the disk for is told, and what `os` flushes, links, moves and takes away. For a fork alone: what is
laid in between stays until the process ends. Refuses: a SQLite whose symbols nobody can reach.
"""

import _sqlite3
import ctypes
import os
import stat
from collections.abc import Callable
from ctypes import CFUNCTYPE, Structure, c_char_p, c_int, c_int64, c_void_p
from dataclasses import dataclass
from enum import Enum, auto
from pathlib import Path
from typing import Any


class Kind(Enum):
    """What is done to the disk."""

    WRITE = auto()
    """Bytes are written at a place of a file."""
    CUT = auto()
    """A file is cut to a length, or made longer."""
    FLUSH = auto()
    """What was written to a file is put on the disk for good."""
    WHOLE = auto()
    """A file that others than SQLite wrote is put on the disk for good."""
    FOLDER = auto()
    """The names in a folder are put on the disk for good."""
    NAME = auto()
    """A file has a name, of its own or a further one."""
    UNNAME = auto()
    """A name is taken away."""
    MOVE = auto()
    """A file gets another name in one step."""


@dataclass(frozen=True, slots=True)
class Act:
    """One thing done to the disk."""

    kind: Kind
    """What is done."""
    path: str
    """The file's name, the new one where it is moved."""
    file: int = 0
    """The number by which the system knows the file."""
    at: int = 0
    """Where in the file, or how long it becomes."""
    content: bytes = b""
    """What is written."""
    was: str = ""
    """The name that it had before it was moved."""
    is_new: bool = False
    """Whether the file was made just now."""


Seen = Callable[[Act], object]
"""What is told of each act."""
_KEPT = list[Any]()
"""Functions that a library calls, which nothing else may hold."""
FAILED = 71
"""How a process ends in which telling failed."""


class _Methods(Structure):
    """The functions of an open file (sqlite3_io_methods, https://sqlite.org/c3ref/io_methods.html)."""

    _fields_ = [("version", c_int)] + [
        (name, c_void_p)
        for name in (
            *("close", "read", "write", "truncate", "sync", "size", "lock", "unlock"),
            *("reserved", "control", "sector", "device", "shm_map", "shm_lock", "shm_barrier"),
            *("shm_unmap", "fetch", "unfetch"),
        )
    ]


class _Vfs(Structure):
    """The head of a way to the disk (sqlite3_vfs, https://sqlite.org/c3ref/vfs.html)."""

    _fields_ = [
        *(("version", c_int), ("file_bytes", c_int), ("most_letters", c_int)),
        *(("next", c_void_p), ("name", c_char_p), ("data", c_void_p)),
        *(("open", c_void_p), ("delete", c_void_p)),
    ]


_OPEN = CFUNCTYPE(c_int, c_void_p, c_void_p, c_void_p, c_int, c_void_p)
_DELETE = CFUNCTYPE(c_int, c_void_p, c_char_p, c_int)
_WRITE = CFUNCTYPE(c_int, c_void_p, c_void_p, c_int, c_int64)
_TRUNCATE = CFUNCTYPE(c_int, c_void_p, c_int64)
_SYNC = CFUNCTYPE(c_int, c_void_p, c_int)


def watch(seen: Seen) -> None:
    """Tell `seen` from now on of each act before it is done; it may end the process there."""
    _Watch(_telling(seen)).begin()
    _watch_os(_telling(seen))


def _telling(seen: Seen) -> Seen:
    def tell(act: Act) -> None:
        try:
            seen(act)
        except BaseException:  # an error would vanish in the library that called
            os._exit(FAILED)

    return tell


class _Watch:
    """What lies between SQLite and its default way to the disk."""

    def __init__(self, seen: Seen) -> None:
        self.seen = seen
        self.paths: dict[int, str] = {}
        self.tables: dict[int, _Methods] = {}
        self.vfs = _default_vfs()
        self.open = _OPEN(self.vfs.open)
        self.delete = _DELETE(self.vfs.delete)

    def begin(self) -> None:
        self.vfs.open = self._address(_OPEN(self._opened))
        self.vfs.delete = self._address(_DELETE(self._deleted))

    def _address(self, function: Any) -> int | None:
        _KEPT.append(function)
        return ctypes.cast(function, c_void_p).value

    def _opened(self, vfs: int, name: int | None, file: int, flags: int, out: int) -> int:
        path = ctypes.string_at(name).decode() if name else ""
        is_new = bool(path) and not Path(path).exists()
        code = int(self.open(vfs, name, file, flags, out))
        if path and not code:
            self.paths[file] = path
            self.seen(Act(Kind.NAME, path, _number(path), is_new=is_new))
            methods = c_void_p.from_address(file)
            methods.value = ctypes.addressof(self._between(methods.value or 0))
        return code

    def _between(self, methods: int) -> _Methods:
        """Return the functions of a file with ours laid before three of them."""
        if methods not in self.tables:
            table = _Methods.from_buffer_copy(_Methods.from_address(methods))
            write, cut, sync = _WRITE(table.write), _TRUNCATE(table.truncate), _SYNC(table.sync)

            def written(file: int, content: int, count: int, at: int) -> int:
                self._tell(file, Kind.WRITE, at, ctypes.string_at(content, count))
                return int(write(file, content, count, at))

            def truncated(file: int, size: int) -> int:
                self._tell(file, Kind.CUT, size)
                return int(cut(file, size))

            def synced(file: int, flags: int) -> int:
                code = int(sync(file, flags))
                self._tell(file, Kind.FLUSH)
                return code

            table.write = self._address(_WRITE(written))
            table.truncate = self._address(_TRUNCATE(truncated))
            table.sync = self._address(_SYNC(synced))
            self.tables[methods] = table
        return self.tables[methods]

    def _tell(self, file: int, kind: Kind, at: int = 0, content: bytes = b"") -> None:
        if path := self.paths.get(file):
            self.seen(Act(kind, path, _number(path), at, content))

    def _deleted(self, vfs: int, name: bytes, is_flushed: int) -> int:
        path = name.decode()
        if Path(path).exists():
            self.seen(Act(Kind.UNNAME, path))
        code = int(self.delete(vfs, name, is_flushed))
        if is_flushed:
            self.seen(Act(Kind.FOLDER, path))
        return code


def _default_vfs() -> _Vfs:
    for where in (getattr(_sqlite3, "__file__", None), None):
        try:
            find = ctypes.CDLL(where).sqlite3_vfs_find
        except (OSError, AttributeError):
            continue
        find.restype, find.argtypes = c_void_p, [c_char_p]
        return _Vfs.from_address(find(None))
    raise RuntimeError("This Python's SQLite hides its functions: try another Python.")


def _watch_os(seen: Seen) -> None:
    flush, link, move, take = os.fsync, os.link, os.replace, os.unlink

    def flushed(handle: int) -> None:
        flush(handle)
        found = os.fstat(handle)
        if stat.S_ISDIR(found.st_mode):
            seen(Act(Kind.FOLDER, ""))
        else:
            content = os.pread(handle, found.st_size, 0)
            seen(Act(Kind.WHOLE, "", found.st_ino, content=content))

    def linked(source: str, target: str, **how: Any) -> None:
        seen(Act(Kind.NAME, _absolute(target), _number(source)))
        link(source, target, **how)

    def moved(source: str, target: str, **how: Any) -> None:
        seen(Act(Kind.MOVE, _absolute(target), _number(source), was=_absolute(source)))
        move(source, target, **how)

    def taken(path: str, **how: Any) -> None:
        if os.path.lexists(path):
            seen(Act(Kind.UNNAME, _absolute(path)))
        take(path, **how)

    os.fsync, os.link, os.replace, os.unlink = flushed, linked, moved, taken  # type: ignore[assignment]


def _number(path: str) -> int:
    return Path(path).stat().st_ino


def _absolute(path: str) -> str:
    return str(Path(path).absolute())
