"""Judge: a lot is held, released or rejected.

Guarantees: the latest verdict on a lot counts, a release until something goes in. Refuses: a
release while something stands in its way, unless a reason is given; a hold or a rejection that
does not say why, and the end of a hold that does not.
"""

from ledger.domain.entries import Judge
from ledger.domain.entries.choices import Verdict
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.read import queries


@act
def judge(
    book: Book, how: How, *, lot: str, verdict: str, anyway: str | None = None
) -> Recorded[Judge]:
    """Hold, release or reject a lot.

    Args:
        book: The book.
        how: Who decides, and why.
        lot: The lot.
        verdict: The word for it.
        anyway: Given, a held lot is released whatever else stands in its way.
    """
    asked = ((queries.limits,),) if verdict == Verdict.RELEASE else ()  # by a claim to be without
    with at_desk(book, how, Ahead(lot, is_packed=True, also=asked)) as desk:
        facts = Judge(desk.words.needed(verdict, Verdict, "verdict"))
        return desk.record(facts, desk.words.lot(lot), insists=bool(anyway))
