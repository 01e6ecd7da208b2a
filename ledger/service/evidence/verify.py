"""Verifying the book.

Guarantees: every stored byte is compared with what its entries say, and an older seal with the
beginning of today's book. Refuses: to call a book sound of which any stored byte differs. Says
nothing about a book that was rebuilt whole: only a seal kept elsewhere can.
"""

from msgspec.structs import replace

from ledger.domain.evidence.seals import Seal
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal_faults
from ledger.store.audit.book import Audit, Fault, Progress, audit

__all__ = ["Audit", "Fault", "verify"]


def verify(
    book: Book,
    progress: Progress = lambda done, total: None,
    older: Seal | None = None,
    *,
    only_since: bool = False,
) -> Audit:
    """Recompute everything and return what does not fit.

    Args:
        book: The book.
        progress: Told how far it is.
        older: A seal the book is to be an honest continuation of.
        only_since: Whether to pass over the entries of that seal, if it fits.
    """
    with book.reading() as connection:
        unlike_seal = tuple(seal_faults(connection, older)) if older else ()
        # Entries are passed over only if the seal fits: one that does not vouches for none.
        after = older.entries if older and only_since and not unlike_seal else 0
        audited = audit(connection, progress, after)
    faults = tuple(Fault(None, what) for what in unlike_seal)
    return replace(audited, faults=faults + audited.faults)
