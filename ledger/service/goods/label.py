"""Label: labels printed, used and spoiled.

Guarantees: what is not told of labels used or spoiled stays unknown; it is not taken for none.
"""

from ledger.domain.entries import Labels
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded


def labels(
    book: Book,
    how: How,
    *,
    lot: str,
    printed: str,
    used: str | None = None,
    spoiled: str | None = None,
) -> Recorded:
    """Record labels printed, used and spoiled."""
    with at_desk(book, how) as desk:
        words = desk.words
        facts = Labels(
            printed=words.number(printed, 1, "", "number of labels"),
            used=words.whole(used, "number of labels"),
            spoiled=words.whole(spoiled, "number of labels"),
        )
        return desk.record(facts, words.lot(lot))
