"""What every copy is: its place and seal, and how its file is made and checked.

Guarantees: a copy has its name only once it is whole, and only its owner may read it. Refuses: to
write over a file.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from itertools import islice
from pathlib import Path

from msgspec import Struct

from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.domain.evidence.seals import Seal
from ledger.errors import FindingError, LedgerError, StorageError
from ledger.service.copies.lines import opened_lines, read_head, read_lines
from ledger.store.audit.book import audit
from ledger.store.copies.lines import Progress
from ledger.store.engine.connections import connected, reading
from ledger.whole_files import whole_file

MOST_TOLD = 10
"""How many things that do not fit are told of a copy; verify tells all."""
_PLACE = "Choose a folder that exists, has room, and that you may write in."


class Copied(Struct, frozen=True):
    """A copy of a book."""

    path: Path
    """Where it is."""
    seal: Seal
    """What the book looked like."""
    where: str
    """Its place as people are shown it: the address of a server goes without its password."""
    is_new: bool = True
    """Whether it was made now; False where the same copy was there already, whole."""


def check_file(path: Path, seal: Seal, progress: Progress) -> None:
    """Make sure that a copy verifies and is of the book of a seal.

    Raises:
        FindingError: It does not.
    """
    with connected(str(path)) as engine, reading(engine) as connection:
        found = audit(connection, progress)
    whats = [fault.what for fault in found.faults]
    if not whats and found.root.hex() != seal.root:
        whats = ["The copy does not have the root of the book."]
    if whats:
        more, least = len(whats) - MOST_TOLD, "At least " if found.is_cut else ""
        told = [
            *whats[:MOST_TOLD],
            *([f"{least}{more} more things do not fit."] if more > 0 else []),
        ]
        todos = [*[""] * (len(told) - 1), "No copy was kept. Run pottle verify."]
        raise FindingError.of(list(zip(told, todos, strict=True)))


def is_copy_in_lines(path: Path, seal: Seal) -> bool:
    """Return whether a file is the book of a seal in lines, whole."""
    frontier = Frontier()
    try:
        with opened_lines(path) as source:
            head = read_head(source)
            for line in islice(read_lines(source), head.entries):
                frontier.add(leaf_hash(line.encode()))
    except LedgerError:
        return False
    return head == seal and frontier.root().hex() == seal.root


@contextmanager
def made(path: Path) -> Iterator[Path]:
    """Give a private file to fill that takes its name at the end.

    Raises:
        StorageError: There is a file of that name, or it cannot be written.
    """
    try:
        with whole_file(path, is_private=True, may_replace=False) as part:
            yield part
    except FileExistsError as error:
        raise StorageError(
            f"There is a file {path} already; it was left as it is.",
            "Give another place. Nothing was written.",
        ) from error
    except OSError as error:
        raise StorageError(
            f"The file {path} could not be written: {error.strerror}.", _PLACE
        ) from error


def take_up(path: Path) -> None:
    """Let a file that was just made be written by several at once."""
    from ledger.store.form.create import use_write_ahead_log

    with connected(str(path)) as engine:
        use_write_ahead_log(engine)
