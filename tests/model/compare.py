"""Every figure of a random book beside the second model's."""

from collections.abc import Iterator
from math import isclose

from ledger.service.account.contents import contents_on
from ledger.service.glass.cost import CostCard, cost
from ledger.service.lots.shares import Share, traced
from ledger.service.lots.stock import stock, values_left
from tests.model.books import Played
from tests.model.jars import Jar, Noted

NEAR = 1e-6
"""Relative difference that rounding may make."""
NEAR_UNITS = 3
"""What is on hand may differ by so many smallest units: what sums and replay may, and rounding."""


def differences(book: Played) -> Iterator[str]:
    """Yield a line for every figure in which the book and the model differ."""
    shelf = book.shelf()
    for lot, jar in shelf.jars.items():
        for what, ours, theirs in (*_contents(book, lot, jar), *_cost(book, lot, jar)):
            if not isclose(ours, theirs, rel_tol=NEAR, abs_tol=1e-3):
                yield f"{lot}: {what} is {theirs} in the book, {ours} by the model"
        yield from _shares(book, lot, jar)
    yield from _ahead(book, shelf.jars)
    yield from _on_hand_and_worth(book, shelf.jars)


def _contents(book: Played, lot: str, jar: Jar) -> Iterator[tuple[str, float, float]]:
    with book.keeper.reading() as connection:
        told = contents_on(connection, lot)
    found, last = told.contents, jar.last
    yield "volume", last.ul, found.volume_ul
    yield "ethanol", last.ethanol, found.ethanol_mg
    yield "water", last.water, found.water_mg
    yield "sugar", last.sugar, found.sucrose_mg
    yield "oil", last.oil, sum(part.mass_mg for part in found.oils().values())
    now = told.happenings[-1].after.volume_ul if told.happenings else 0.0
    yield "volume now", jar.there.ul, now


def _cost(book: Played, lot: str, jar: Jar) -> Iterator[tuple[str, float, float]]:
    card = cost(book.keeper.book, lot)
    yield "what its cost is of", round(jar.told_there), card.there
    if card.there:
        yield "cost", round(jar.told_money * 10**6), round(_exact(card))
    else:
        yield "cost", round(jar.told_money), card.total_minor


def _exact(card: CostCard) -> float:
    """Return what it cost in all in millionths of a hundredth, by the price of a mL or bottle."""
    if card.per_bottle is not None:
        return float(card.per_bottle * card.there)
    return float((card.per_ml or 0) * card.there * 1000)


def _shares(book: Played, lot: str, jar: Jar) -> Iterator[str]:
    behind = traced(book.keeper.book, lot, forward=False).behind
    if set(behind) != jar.ever:
        yield f"{lot}: made of {sorted(behind)} by the book, of {sorted(jar.ever)} by the model"
    for source in jar.ever & set(behind):
        yield from _share(lot, source, behind[source], jar)


def _ahead(book: Played, jars: dict[str, Jar]) -> Iterator[str]:
    for source in (*book.deliveries, *jars):
        ahead = traced(book.keeper.book, source, back=False).ahead
        into = {lot for lot, jar in jars.items() if source in jar.ever}
        if set(ahead) != into:
            yield f"{source}: in {sorted(ahead)} by the book, in {sorted(into)} by the model"
        for lot in into & set(ahead):
            yield from _share(lot, source, ahead[lot], jars[lot])


def _share(lot: str, source: str, share: Share, jar: Jar) -> Iterator[str]:
    noted = jar.told.lots.get(source, Noted())
    ours = noted.amount / (jar.told.ul / jar.per_unit or 1)
    theirs = share.amount / (share.whole or 1)
    # The whole is told in whole units, which in a jar of a few mL is more than the sums are off by.
    if not isclose(ours, theirs, rel_tol=max(1e-5, 0.6 / (share.whole or 1)), abs_tol=1e-9):
        yield f"{lot}: {source} is {theirs} of it in the book, {ours} by the model"
    if share.is_all is noted.in_doubt:
        yield f"{lot}: {source} is all measured: {share.is_all} in the book"


def _on_hand_and_worth(book: Played, jars: dict[str, Jar]) -> Iterator[str]:
    lots = stock(book.keeper.book, everything=True)
    worth = values_left(book.keeper.book, lots)
    for lot in lots:
        if lot.code in jars:
            jar = jars[lot.code]
            there = jar.there.ul / jar.per_unit
            if abs(there - lot.on_hand) > NEAR_UNITS:
                yield f"{lot.code} holds {lot.on_hand} in the book, {there} by the model"
            ours, theirs = jars[lot.code].money, worth.get(lot.seq, 0)
            if abs(ours - theirs) > 0.51:
                yield f"{lot.code} is worth {theirs} in the book, {float(ours)} by the model"
