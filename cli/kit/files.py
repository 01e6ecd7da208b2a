"""Files that commands write.

Guarantees: a file that is there stays unless asked, and a book stays whatever is asked; a paper
takes its name once it is whole, in one step. Refuses: folders that do not exist.
"""

import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import BinaryIO

from cli.kit.errors import AfterwardsError
from cli.kit.tables import fitted
from ledger.errors import LedgerError, StorageError
from ledger.whole_files import is_book, whole_file
from reports.kit.boxed import boxed_words, noting_boxed

OTHER_NAME = "Give another name with --out, or --force to write over it."
WRITABLE = "Choose a place that you may write in."


def check_place(out: Path, *, force: bool, instead: str = OTHER_NAME) -> None:
    """Make sure a file may be written; `instead` is what to do when it is there already.

    Raises:
        StorageError: Its folder is missing, it is there already, it is a book, a device or a pipe,
            or no file can have its name.
    """
    try:
        # A link that leads nowhere is there too.
        is_there, has_folder = out.exists() or out.is_symlink(), out.parent.is_dir()
        is_of_a_book = is_there and is_book(out)
    except OSError as error:
        raise StorageError(
            f"No file can be named {out}: {error.strerror}.", "Give a shorter name."
        ) from error
    if not has_folder:
        raise StorageError(
            f"There is no folder {out.parent}.", "Make it first, or give another place."
        )
    if is_of_a_book:
        raise StorageError(
            f"{out} is a book, or a copy of one; it was left as it is.",
            "Give another name. No book is ever written over, with --force neither.",
        )
    if is_there and not force:
        raise StorageError(
            f"There is a file {out} already; it was left as it is.",
            instead,
        )
    # To take the name of a device or a pipe would be to destroy it.
    if out.exists() and not (out.is_file() or out.is_dir()):
        raise StorageError(
            f"{out} is no file but a device or a pipe; it was left as it is.",
            "Give the name of a file.",
        )


def make_folder(
    folder: Path, *, parents: bool = False, is_private: bool = False, instead: str = WRITABLE
) -> None:
    """Make a folder, unless it is there; `instead` is what to do where it cannot be made.

    Args:
        folder: The folder.
        parents: Whether those that it is in are made with it.
        is_private: Whether only its owner may look into it.
        instead: What to do where it cannot be made.

    Raises:
        StorageError: It cannot be made.
    """
    try:
        folder.mkdir(0o700 if is_private else 0o777, parents=parents, exist_ok=True)
    except OSError as error:
        raise StorageError(
            f"The folder {folder} could not be made: {error.strerror}.", instead
        ) from error


@dataclass(frozen=True, slots=True)
class Paper:
    """A file that is being written, aside."""

    part: Path
    """Where it stands until it is whole."""

    def put(self, content: bytes) -> None:
        """Write all of it, in place of what was put before."""
        self.part.write_bytes(content)

    def draw(self, draw: Callable[[BinaryIO], None]) -> None:
        """Put what is drawn, once all of it could be."""
        whole = BytesIO()
        draw(whole)
        self.put(whole.getvalue())


@contextmanager
def paper_at(
    out: Path, *, force: bool, instead: str = OTHER_NAME, is_private: bool = False
) -> Iterator[Paper]:
    """Give a paper to be put at a place; it takes its name when the block ends well.

    Raises:
        StorageError: The place is not free, or the file cannot be written.
    """
    check_place(out, force=force, instead=instead)
    try:
        with (
            noting_boxed() as boxed,
            whole_file(out, is_private=is_private, may_replace=force) as part,
        ):
            yield Paper(part)
    except FileExistsError as error:
        raise StorageError(
            f"There is a file {out} already; it was left as it is.", instead
        ) from error
    except OSError as error:
        raise StorageError(
            f"The file {out} could not be written: {error.strerror}.", WRITABLE
        ) from error
    tell_boxed(boxed)


def tell_boxed(boxed: Iterable[str]) -> None:
    """Say on standard error which characters stand in boxes on a paper, if any do."""
    if boxed := set(boxed):
        for line in fitted([f"Note: {boxed_words(boxed)}"], sys.stderr):
            print(line, file=sys.stderr)


@contextmanager
def once_recorded(done: str, again: str) -> Iterator[None]:
    """Say what stands in the book where what comes after the recording fails.

    Args:
        done: What was recorded, as a sentence.
        again: How to get the paper all the same.

    Raises:
        AfterwardsError: Something failed: both, and why.
    """
    try:
        yield
    except (LedgerError, OSError) as error:
        why = error.problems[0][0] if isinstance(error, LedgerError) else f"{error.strerror}."
        raise AfterwardsError(f"{done} Its paper could not be made: {why}", again) from error


def write(out: Path, content: bytes, *, force: bool, instead: str = OTHER_NAME) -> None:
    """Write a text to its file.

    Raises:
        StorageError: The place is not free, or the file cannot be written.
    """
    with paper_at(out, force=force, instead=instead) as paper:
        paper.put(content)


def draw(
    out: Path, drawn: Callable[[BinaryIO], None], *, force: bool, instead: str = OTHER_NAME
) -> None:
    """Write a paper to its file.

    Raises:
        StorageError: The place is not free, or the file cannot be written.
    """
    with paper_at(out, force=force, instead=instead) as paper:
        paper.draw(drawn)
