"""Label: labels printed, used and spoiled.

Guarantees: what is not told of labels used or spoiled stays unknown; it is not taken for none.
Labels of what may not leave have a word across, and are no bottle labels. Those of several lots on
one sheet are all recorded, or none.
"""

from collections.abc import Callable, Mapping
from functools import partial

from ledger.domain.entries import Draft, Labels
from ledger.domain.entries.choices import Across
from ledger.domain.lots.labels import across
from ledger.service.account.state import lot_state
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.judged import Judged, judged
from ledger.store.engine.abreast import abreast


@act
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
    with at_desk(book, how, Ahead(lot, (stock,), is_packed=True)) as desk:
        number = desk.words.number(printed, 1, "", "number of labels")
        draft = _draft(desk, lot, number, used, spoiled, stock=stock, specimen=specimen)
        return desk.append(draft)


@act
def labels_together(
    book: Book,
    how: How,
    *,
    printed: Mapping[str, int],
    stock: str | None = None,
    specimen: str | None = None,
) -> tuple[Recorded[Labels], ...]:
    """Record labels of several lots that were printed on one sheet: how many, by lot.

    Raises:
        RefusedError: Those of a lot cannot be so; nothing is recorded.
    """
    with at_desk(book, how, Ahead(sources=(stock,), packed=tuple(printed))) as desk:
        drafts = [
            partial(_draft, desk, lot, number, stock=stock, specimen=specimen)
            for lot, number in printed.items()
        ]
        if not stock:  # of one stock what is there for the next hangs on those before
            found = abreast(desk.connection, *(partial(_judged, desk, draft) for draft in drafts))
            if len({each.draft.lot for each in found}) == len(found):
                return tuple(map(desk.put, found))
        return tuple(desk.append(draft()) for draft in drafts)


def _judged(desk: Desk, draft: Callable[[], Draft[Labels]]) -> Judged[Labels]:
    return judged(desk.connection, draft(), desk.now)


def _draft(
    desk: Desk,
    lot: str,
    number: int,
    used: str | None = None,
    spoiled: str | None = None,
    *,
    stock: str | None,
    specimen: str | None,
) -> Draft[Labels]:
    words = desk.words
    code = words.lot(lot)
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
    words.done()
    return desk.draft(facts, code)
