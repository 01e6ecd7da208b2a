"""Label: labels printed, used and spoiled.

Guarantees: what is not told of labels used or spoiled stays unknown; it is not taken for none.
Labels of what may not leave have a word across, and are no bottle labels.
"""

from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.domain.lots.labels import across
from ledger.service.account.state import lot_state
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
    stock: str | None = None,
    specimen: str | None = None,
) -> Recorded[Labels]:
    """Record labels printed, used and spoiled; given `specimen`, none of them is for a bottle."""
    with at_desk(book, how) as desk:
        words = desk.words
        code, number = words.lot(lot), words.number(printed, 1, "", "number of labels")
        word = Across.SPECIMEN if specimen else None
        if code and number and not specimen:
            word = across(lot_state(desk.connection, code), desk.happened.local().date())
        facts = Labels(
            printed=number,
            used=words.whole(used, "number of labels"),
            spoiled=words.whole(spoiled, "number of labels"),
            stock=words.lot_or_none(stock),
            across=word if number else None,
        )
        return desk.record(facts, code)
