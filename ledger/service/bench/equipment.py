"""Equipment: an instrument or vessel was taken into use, checked or set.

Guarantees: it is of the house and of no lot. Refuses: a vessel that holds a weight or pieces.
"""

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Equipment
from ledger.errors import InputError
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded


@act
def equipment(book: Book, how: How, *, name: str, words: str, holds: str | None = None) -> Recorded:
    """Record that an instrument or vessel was taken into use, checked or set."""
    with at_desk(book, how) as desk:
        read = desk.words
        size = read.amount_or_none(holds)
        facts = Equipment(
            name=read.text(name, "name"),
            words=read.text(words, "finding"),
            holds=read.read(lambda: _as_volume(size), None) if size else None,
        )
        return desk.record(facts)


def _as_volume(size: Quantity) -> Quantity:
    if size.measure is not Measure.UL:
        raise InputError(
            f"{size.written} is not a volume, so no vessel holds it.", "Write it such as 5L."
        )
    return size
