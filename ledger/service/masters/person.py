"""People who write in the book.

Guarantees: the first person may add herself. Refuses: initials that are in the book already.
"""

import re

from ledger.domain.entries import Person
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.store.read import queries

MOST_INITIALS = 4
"""So many letters are initials at most."""
_INITIALS = re.compile(rf"[A-Z]{{1,{MOST_INITIALS}}}", re.ASCII)


@act
def person(book: Book, how: How, *, initials: str, name: str, role: str | None = None) -> Recorded:
    """Add a person who writes in the book; the first may add herself."""
    with at_desk(book, how) as desk:
        # While nobody is in the book nobody could enter her.
        if how.by is None and not queries.people(desk.connection):
            desk.by = initials.strip().upper()
        code = desk.words.read(lambda: _initials(desk, initials), "")
        return desk.record(
            Person(
                initials=code,
                name=desk.words.text(name, "name"),
                role=desk.words.text_or_none(role, "role"),
            )
        )


def read_initials(text: str) -> str:
    """Return initials in capitals.

    Raises:
        InputError: They are none.
    """
    code = text.strip().upper()
    if not _INITIALS.fullmatch(code):
        raise InputError(f'"{text}" are not initials.', "Write one to four letters A-Z.")
    return code


def _initials(desk: Desk, text: str) -> str:
    code = read_initials(text)
    if code in queries.people(desk.connection):
        raise RefusedError(
            f"The initials {code} are in the book already.", "Choose others for this person."
        )
    return code
