"""Case: bottles are put into cases, each of which gets a number of its own.

Guarantees: a number is given once, whatever becomes of its case or of the entry that told of it.
Refuses: to know of a case that nobody told of; a label that was printed is none.
"""

from functools import partial

from ledger.domain.amounts.packs import parse_cases
from ledger.domain.entries import Cases
from ledger.domain.masters.gs1 import case_number
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.read import queries
from ledger.store.read.made import next_case


@act
def cases(book: Book, how: How, *, lot: str, pack: str) -> Recorded[Cases]:
    """Record so many cases of so many bottles, and give each a number."""
    with at_desk(book, how, Ahead(lot, is_packed=True)) as desk:
        words = desk.words
        code = words.lot(lot)
        count, holds = words.read(lambda: parse_cases(pack), (1, 1))
        house, first = queries.house(desk.connection), next_case(desk.connection)
        prefix = house.company_prefix if house else None
        if prefix:
            # Told before anything is recorded if the digits of the prefix do not reach so far.
            words.read(partial(case_number, prefix, first + count - 1), "")
        words.done()
        return desk.record(Cases(count, holds, first, prefix), code)
