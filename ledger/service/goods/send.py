"""Send: goods go out, are written off, or come back.

Guarantees: it is a sale unless something else is said, a bare number counts pieces, and a market or
a walk-in customer is one word however it was written.
"""

from ledger.domain.entries import Move
from ledger.domain.entries.choices import MoveAs
from ledger.domain.masters.parties import party_word
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead


@act
def send(
    book: Book,
    how: How,
    *,
    lot: str,
    amount: str,
    moved_as: str | None = None,
    party: str | None = None,
    document: str | None = None,
    witness: str | None = None,
) -> Recorded:
    """Send goods out, write them off, or take them back."""
    with at_desk(book, how, Ahead(lot, is_packed=True, party=party)) as desk:
        words = desk.words
        named = words.text_or_none(party, "name of who gets it")
        code, way = words.lot(lot), words.needed(moved_as or "sale", MoveAs, "way of sending")
        # All that is here is nothing to tell what came back by.
        is_back = way is MoveAs.RETURNED
        facts = Move(
            moved_as=way,
            amount=words.pieces(amount) if is_back else words.amount_of(code, amount, counted=True),
            party=party_word(named) if named else None,
            document=words.text_or_none(document, "document"),
            witness=words.text_or_none(witness, "name of the witness"),
        )
        return desk.record(facts, code)
