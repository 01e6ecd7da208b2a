"""Holding a plan to the book before it: the root it was drawn from was the book's.

Guarantees: the root of the plan is proved to be that of the entries before it, by the tree alone.
"""

from ledger.service.causes.layout import Planned
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import Seal, seal_faults, seal_on


def root_faults(book: Book, found: Planned) -> tuple[str, ...]:
    """Return why the root of a plan is not that of the book before it, a sentence each."""
    plan, seq = found.plan, found.entry.seq
    with book.reading() as connection:
        house = seal_on(connection).house
        faults = tuple(seal_faults(connection, Seal(house, plan.entries, plan.root)))
    if plan.entries != seq - 1:
        told = f"Entry {seq} is drawn from the root of {plan.entries} entries, not of {seq - 1}."
        return (told, *faults)
    return faults
