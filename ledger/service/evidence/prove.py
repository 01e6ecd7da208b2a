"""Proving one lot's entries to somebody who does not have the book.

Guarantees: every entry about the lot up to the seal, in force or not, each with its inclusion
proof, read in one transaction. Refuses: a seal that is not of this book's beginning.
"""

from ledger.domain.evidence.merkle import inclusion_path
from ledger.domain.evidence.proofs import Proof, Proved, proof_faults
from ledger.domain.evidence.seals import Seal
from ledger.errors import FindingError, RefusedError
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal_faults, seal_on
from ledger.store.engine.connections import Connection
from ledger.store.read import past
from ledger.store.write import recorder

_NO_PROOF = "Nothing was written. Read the seal again, and run pottle verify."
_VERIFY = "Nothing was written. Run pottle verify to see what else does not fit."


def prove(book: Book, text: str, by: str | None = None, older: Seal | None = None) -> Proof:
    """Return the proof of the lot that `text` names.

    Args:
        book: The book.
        text: The lot's code or its ending.
        by: Who asks.
        older: The seal to prove against; None for that of the book as it is now.

    Raises:
        FindingError: The seal is not of this book, or the book does not fit its own tree.
        RefusedError: The lot was opened after the seal.
    """
    with book.reading() as connection:
        code = resolve_lot(connection, text, by)
        if older and (faults := tuple(seal_faults(connection, older))):
            raise FindingError.of([(what, _NO_PROOF) for what in faults])
        seal = older or seal_on(connection)
        lot = known_lot(connection, code).seq
        entries = tuple(
            Proved(seq, body, _path(connection, seq, seal.entries))
            for seq, body in past.texts_about(connection, lot, seal.entries)
        )
    if not entries:
        raise RefusedError(
            f"{code} was opened after the seal of {seal.entries} entries.",
            "Leave --seal out to prove it against the book as it is now.",
        )
    proof = Proof(code, seal, entries)
    if faults := tuple(proof_faults(proof)):
        raise FindingError.of([(what, _VERIFY) for what in faults])
    return proof


def _path(connection: Connection, seq: int, size: int) -> tuple[bytes, ...]:
    return tuple(
        inclusion_path(
            seq - 1, size, lambda height, place: recorder.node(connection, height, place)
        )
    )
