"""Parties: suppliers and customers, and how to reach them.

Guarantees: a party is known by the name that receipts and deliveries use; the latest entry of a
name counts. Refuses: nothing beyond the rules; a name nobody has told about is known by name only.
"""

from ledger.domain.entries import Party
from ledger.domain.masters.gs1 import read_gln
from ledger.domain.masters.parties import is_forgotten
from ledger.errors import RefusedError
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.read import parties as known_parties
from ledger.store.read import queries


@act
def party(
    book: Book,
    how: How,
    *,
    name: str,
    phone: str | None = None,
    email: str | None = None,
    address: str | None = None,
    words: str | None = None,
    gln: str | None = None,
) -> Recorded:
    """Say how to reach a supplier or a customer; what is not given stays as it was."""
    with at_desk(book, how, Ahead(party=name)) as desk:
        read = desk.words
        called = read.text(name, "name")
        old = known_parties.party(desk.connection, called)
        told = {
            "phone": read.text_or_none(phone, "telephone number"),
            "email": read.text_or_none(email, "mail address"),
            "address": read.text_or_none(address, "address"),
            "words": read.text_or_none(words, "words"),
            "gln": read.read(lambda: read_gln(gln), None) if gln else None,
        }
        if old and is_forgotten(old):
            raise RefusedError(
                f"{called} was forgotten, so nothing is kept of it any more.",
                "Tell the party anew under its name.",
            )
        kept = {fact: value or getattr(old, fact, None) for fact, value in told.items()}
        # By its code too, and it keeps that.
        name, code = (old.name, old.code) if old else (called, None)
        return desk.record(Party(name=name, code=code, **kept))


def parties(book: Book) -> tuple[Party, ...]:
    """Return what the book last said of each party, by name, without those that were forgotten."""
    with book.reading() as connection:
        known = queries.parties(connection)
    return tuple(party for party in known if not is_forgotten(party))
