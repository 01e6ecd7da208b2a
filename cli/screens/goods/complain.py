"""Answering a complaint.

Guarantees: a photo is read, piece by piece, and hashed before anything is recorded. Refuses: to
keep the photo itself; its name and its hash show later which one it was.
"""

from hashlib import file_digest
from pathlib import Path
from stat import S_ISDIR, S_ISREG
from typing import TYPE_CHECKING

from cli.kit.answer import dossier_of, say
from cli.kit.call import Call
from ledger.domain.entries import Complaint
from ledger.errors import StorageError
from ledger.service.desk.book import Book, Recorded
from ledger.service.goods.triage import triage
from reports.words.desk.answer import answer
from reports.words.goods.triage import triage_lines, triage_step

if TYPE_CHECKING:
    from reports.json.goods.complain import ComplainAnswer

OR_WITHOUT = "or leave --photo out; nothing was recorded."
"""How what is to be done about a photo ends."""


def say_complaint(call: Call, book: Book, done: Recorded[Complaint]) -> None:
    """Show a complaint that was recorded, and what it points to."""
    found, about = triage(book, done.entry), dossier_of(book, done)
    step = triage_step(found)
    said = answer(done, about, step)

    def plain() -> "ComplainAnswer":
        from reports.json.goods.complain import complain_answer

        return complain_answer(done, about, step, found)

    say(call, plain, said.done, *said.found, *triage_lines(found), *said.last)


def hash_of(photo: Path) -> str:
    """Return the SHA-256 hash of a photo's file, in hexadecimal.

    Raises:
        StorageError: It is not there, is no file, or cannot be read.
    """
    try:
        _refuse_no_file(photo)
        with photo.open("rb") as file:
            return file_digest(file, "sha256").hexdigest()
    except FileNotFoundError as error:
        raise StorageError(
            f"There is no photo {photo}.", f"Give the name of a file that is there, {OR_WITHOUT}"
        ) from error
    except OSError as error:
        raise StorageError(
            f"The photo {photo} could not be read: {error.strerror}.",
            f"Give the name of a file that you may read, {OR_WITHOUT}",
        ) from error


def _refuse_no_file(photo: Path) -> None:
    kind = photo.stat().st_mode
    if S_ISDIR(kind):
        raise StorageError(
            f"The photo {photo} is a folder.", f"Give the name of a file in it, {OR_WITHOUT}"
        )
    if not S_ISREG(kind):
        raise StorageError(
            f"The photo {photo} is no file.", f"Give the name of a photo's file, {OR_WITHOUT}"
        )
