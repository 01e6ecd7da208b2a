"""Answering a complaint.

Guarantees: a photo is read and hashed before anything is recorded. Refuses: to keep the photo
itself; its name and its hash show later which one it was.
"""

from hashlib import sha256
from pathlib import Path

from cli.call import Call
from cli.out import say
from ledger.errors import StorageError
from ledger.service.looking import dossier
from ledger.service.selling import complain
from ledger.service.triage import triage
from reports.build.answers import answer
from reports.build.triage import triage_lines, triage_plain, triage_step


def complain_of(call: Call, photo: Path | None, **words: str | None) -> None:
    """Record a complaint and show what it points to."""
    shown = {"photo": photo.name, "photo_sha256": _hash(photo)} if photo else {}
    book = call.book()
    done = complain(book, call.how(), **words, **shown)  # type: ignore[arg-type]
    assert done.entry.draft.lot
    found = triage(book, done.entry)
    said = answer(done, dossier(book, done.entry.draft.lot), triage_step(found))
    *lines, last = said.lines
    say(call, {**said.plain, "triage": triage_plain(found)}, *lines, *triage_lines(found), last)


def _hash(photo: Path) -> str:
    try:
        return sha256(photo.read_bytes()).hexdigest()
    except OSError as error:
        raise StorageError(
            f"The photo {photo} could not be read: {error.strerror}.",
            "Give the name of a file that is there, or leave --photo out; nothing was recorded.",
        ) from error
