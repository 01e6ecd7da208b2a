"""All that the service answers of one book, field by field, as lines of text.

Guarantees: every reading act of a room is asked of every lot, and what each answer reckons of its
fields is told with them. Refuses: what the domain itself tells, such as an entry, beyond its name.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from functools import partial
from typing import Any

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Complaint
from ledger.errors import LedgerError
from ledger.service.account import (
    codes,
    contents,
    dates,
    density,
    mixed,
    oils,
    shipped,
    state,
    undeclared,
)
from ledger.service.account import shares as in_lots
from ledger.service.bench import draws, grid, hand, slip
from ledger.service.causes import chart, compare, layout, suspects
from ledger.service.desk import clock
from ledger.service.desk.book import Book
from ledger.service.glass import cost, foretell, scores, serving, spirit
from ledger.service.goods.triage import triage
from ledger.service.lots import complaints, dossier, due, journal, packet, sales, shares, stock
from ledger.service.lots.trace import trace
from ledger.service.masters import formula, limits, material, party
from ledger.service.masters.shelf import starter_shelf
from ledger.service.recall import events, forget, standing, story, trail
from ledger.service.verdicts import gate
from ledger.store.engine.connections import Connection
from tests.kept.fields import Told

Acts = Mapping[str, Callable[[], Any]]
"""What is asked of a book, by how it is called."""


def told_in(room: str, book: Book) -> Iterator[str]:
    """Yield what a room answers: what is asked, and below it field by field what is said."""
    lots = [lot.code for lot in stock.stock(book, everything=True)]
    told = Told()
    for name, act in sorted(ROOMS[room](book, lots).items()):
        yield name
        try:
            yield from (f"  {line}" for line in told.lines(name, "", act()))
        except LedgerError as error:
            yield from (f"  refused: {what} {todo}" for what, todo in error.problems)


def _of_each(lots: Sequence[str], **acts: Callable[[str], Any]) -> dict[str, Callable[[], Any]]:
    return {f"{name} {lot}": partial(act, lot) for name, act in acts.items() for lot in lots}


def _account(book: Book, lots: Sequence[str]) -> Acts:
    today = clock.today(book)

    def on(act: Callable[..., Any], *asked: object) -> Callable[[], Any]:
        def answer() -> Any:
            with book.reading() as connection:
                return act(connection, *asked)

        return answer

    def row(connection: Connection, lot: str) -> Any:
        return codes.known_lot(connection, lot)

    return {
        **_of_each(
            lots,
            state=lambda lot: on(state.lot_state, lot)(),
            contents=lambda lot: on(contents.contents_on, lot)(),
            undeclared=lambda lot: on(undeclared.undeclared, lot)(),
            mixed=lambda lot: on(
                lambda c: mixed.mixed_of(c, contents.contents_on(c, lot).contents)
            )(),
            ending=lambda lot: on(codes.resolve_lot, lot[-5:].lower())(),
            behind=lambda lot: on(lambda c: in_lots.shares_behind(c, row(c, lot)))(),
            ahead=lambda lot: on(lambda c: in_lots.shares_ahead(c, row(c, lot)))(),
        ),
        **{
            f"density {lot} by {measure}": on(
                lambda c, lot=lot, measure=measure: (
                    density.with_density(c, state.lot_state(c, lot), measure).reckoned_mg_per_l
                )
            )
            for lot in lots
            for measure in Measure
        },
        "dates": on(lambda c: dates.dates_of(c, [row(c, lot).seq for lot in lots])),
        "lots behind": on(lambda c: in_lots.lots_behind(c, [row(c, lot).seq for lot in lots])),
        "base syrups": on(lambda c: contents.base_syrups(c, [row(c, lot).seq for lot in lots])),
        "limited": on(shipped.limited_on, today),
        "limits in force": on(lambda c: [item.code for item in shipped.limits_on(c, today)]),
        "beside": lambda: {item.code: shipped.beside(item.code) for item in shipped.shipped()},
        "said": lambda: {item.code: shipped.label_words(item.code) for item in shipped.shipped()},
        **{
            f"{name} {item.code}": partial(act, item)
            for item in material.materials(book)
            for name, act in (
                ("known", oils.known_oil),
                ("not told", shipped.not_told),
                ("caution", shipped.usual_caution),
            )
        },
    }


def _bench(book: Book, lots: Sequence[str]) -> Acts:
    return {
        **_of_each(
            lots,
            propose=lambda lot: draws.propose(book, lot),
            lacking=lambda lot: draws.lacking(book, lot),
            hand=lambda lot: hand.hand(book, lot, None),
            measure=lambda lot: hand.measure_of(book, lot, None),
        ),
        "jars": lambda: grid.trial_jars(book, "pores"),
        "slip": lambda: slip.last_slip(book, None),
        "first lot": lambda: hand.first_lot(book, "spirit"),
        **{
            f"in hand after {seq}": partial(hand.in_hand_after, book, [seq]) for seq in range(1, 20)
        },
    }


def _causes(book: Book, lots: Sequence[str]) -> Acts:
    made = [lot for lot in lots if not lot.startswith(("NS", "W-"))]
    return {
        **_of_each(
            [*lots, "orange-essence", "pores"], chart=lambda asked: chart.chart_of(book, asked)
        ),
        **_of_each(["pores", "pores again", "nothing"], planned=lambda n: layout.planned(book, n)),
        **_of_each(
            ["pores", "pores again", "orange-essence", "none"],
            compare=lambda n: compare.compare(book, n),
        ),
        "suspects": lambda: suspects.suspects(book, made[:2]),
        "suspects of complaints": lambda: suspects.suspects(book, (), complaints=True),
        "chartable": lambda: chart.chartable(book),
    }


def _glass(book: Book, lots: Sequence[str]) -> Acts:
    return {
        **_of_each(
            lots,
            cost=lambda lot: cost.cost(book, lot, hour="20", margin="60"),
            serving=lambda lot: serving.serving(book, lot, adult="60kg", child="20kg"),
            card=lambda lot: serving.card(book, lot),
            foretell=lambda lot: foretell.foretell_lot(book, lot, None, "1 part to 9", "4"),
        ),
        "formula": lambda: foretell.foretell_formula(book, "orange-essence"),
        "scores": lambda: scores.scores(book),
        "spirit": lambda: spirit.spirit_account(book, None, None),
        "spirit of days": lambda: spirit.spirit_account(book, "2026-01-01", "2026-12-31"),
    }


def _goods(book: Book, _lots: Sequence[str]) -> Acts:
    found = journal.entries_of_kind(book, Complaint)
    return {f"triage {one.seq}": partial(triage, book, one) for one in found}


def _lots(book: Book, lots: Sequence[str]) -> Acts:
    whole = sales.Period(date(2026, 1, 1), date(2026, 12, 31))
    return {
        **_of_each(
            lots,
            dossier=lambda lot: dossier.dossier(book, lot),
            brief=lambda lot: dossier.brief_of(book, lot),
            journal=lambda lot: journal.journal(book, lot=lot),
            packet=lambda lot: packet.packet_of_lot(book, lot, None),
            trace=lambda lot: trace(book, lot, back=True, forward=True),
            shares=lambda lot: shares.with_days(
                book, shares.traced(book, lot, back=True, forward=True)
            ),
        ),
        "complaints": lambda: complaints.complaints(book),
        "due": lambda: due.due(book),
        "journal, the last": lambda: journal.journal(book, last=5),
        "packet of days": lambda: packet.packet_of_period(book, *(whole.first, whole.last)),
        "sales": lambda: sales.sales(book, whole),
        "stock": lambda: stock.stock(book),
        "values": lambda: stock.values_left(book, stock.stock(book, everything=True)),
    }


def _masters(book: Book, _lots: Sequence[str]) -> Acts:
    return {
        "formulas": lambda: formula.versions(book),
        "formula": lambda: formula.version(book, "orange-essence"),
        "withdrawn": lambda: formula.withdrawn(book),
        "limits": lambda: limits.limits(book),
        "materials": lambda: material.materials(book),
        "parties": lambda: party.parties(book),
        "shelf": starter_shelf,
        "today": lambda: clock.today(book),
        "written": lambda: clock.written_at(book),
    }


def _recall(book: Book, lots: Sequence[str]) -> Acts:
    whole = sales.Period(date(2026, 1, 1), date(2026, 12, 31))
    return {
        **_of_each(
            lots,
            recall=lambda lot: standing.with_days(book, standing.recall_of(book, lot)),
            trail=lambda lot: trail.trail_of(book, lot),
        ),
        "events": lambda: events.events_of(book, whole),
        "story": lambda: story.story_of(book),
        **_of_each(
            ["AB", "Bridge Street Stall", "nobody"],
            forgettable=lambda who: forget.forgettable(book, who),
        ),
    }


def _verdicts(book: Book, lots: Sequence[str]) -> Acts:
    return _of_each(lots, gate=lambda lot: gate.in_the_way(book, lot))


ROOMS: Mapping[str, Callable[[Book, Sequence[str]], Acts]] = {
    "account": _account,
    "bench": _bench,
    "causes": _causes,
    "glass": _glass,
    "goods": _goods,
    "lots": _lots,
    "masters": _masters,
    "recall": _recall,
    "verdicts": _verdicts,
}
