"""Judge: a lot is held, released or rejected.

Guarantees: the latest verdict on a lot counts. Refuses: a release while something
stands in its way, unless a reason is given.
"""

from ledger.domain.entries import Judge
from ledger.domain.entries.choices import Verdict
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded


def judge(book: Book, how: How, *, lot: str, verdict: str) -> Recorded:
    """Hold, release or reject a lot."""
    with at_desk(book, how) as desk:
        facts = Judge(desk.words.needed(verdict, Verdict, "verdict"))
        return desk.record(facts, desk.words.lot(lot))
