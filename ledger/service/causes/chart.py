"""Chart: how the batches of a product, or of a kind, turned out one after the other.

Guarantees: figures in the order in which batches were begun; limits, intervals and the time until
haze only where there is enough, each from what the book holds in force. Refuses: to say why a
figure lies outside; it is a reason to look, and no accusation.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from enum import StrEnum
from fractions import Fraction
from math import inf

from msgspec import Struct

from ledger.domain.entries import Entry, Measurement, entries_of
from ledger.domain.entries.choices import Measured, ProductKind, Purpose
from ledger.domain.entries.house import House
from ledger.domain.lots.readings import Taken
from ledger.errors import RefusedError
from ledger.science.statistics.charts import Chart, chart
from ledger.science.statistics.intervals import Ahead, ahead, share_interval
from ledger.science.statistics.survival import Part, Span, turned
from ledger.service.causes.failed import GRADES, bad_look, wanted_of
from ledger.service.causes.figures import loss_in_pass, ntu_at_end, share_of_target, yield_of
from ledger.service.causes.makings import Versions
from ledger.service.desk.book import Book
from ledger.service.desk.claims import readings_beside
from ledger.service.evidence.seal import Seal, seal_on
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.reach import entries_of_lots
from ledger.store.read.runs import Found, Run, Seen, found, runs

MOST = 200
"""So many batches are charted at most, the newest."""
KINDS = ("start", "add", "makeup", "filter", "finish", "look", "measure")
"""Kinds of entry that a chart reads."""
DISSOLVED = frozenset({ProductKind.SYRUP, ProductKind.BASE_SYRUP})
"""Kinds of product of which much is dissolved in what is put in."""
PASSES = 3
"""Passes through a filter that are charted."""
DAY = 86_400
"""Seconds of a day."""


class Figure(StrEnum):
    """What is charted."""

    YIELD = "yield"
    TARGET = "of target"
    NTU = "NTU"
    ABV = "strength"
    BRIX = "sugar"
    LOSS = "loss"


DIFFERENCES = frozenset({Figure.ABV, Figure.BRIX})
"""Figures that can be below 0."""


class Point(Struct, frozen=True):
    """One figure of one batch."""

    code: str
    """Code of the batch."""
    day: str
    """When it was begun."""
    value: Fraction
    """The figure."""


class Series(Struct, frozen=True):
    """One figure of batch after batch."""

    figure: Figure
    """Which figure."""
    pass_no: int
    """Of which pass through a filter; 0 where it is of none."""
    points: tuple[Point, ...]
    """The batches it is known of, in order."""
    chart: Chart | None
    """Limits; None where there are too few."""
    ahead: Ahead | None
    """Between which figures the next lies; None where there are too few."""


class Charts(Struct, frozen=True):
    """How the batches of a product or of a kind turned out."""

    of: str
    """The product or the kind."""
    kind: str
    """The kind of product."""
    batches: int
    """How many were made for sale."""
    series: tuple[Series, ...]
    """Each figure that is known of any of them."""
    failed: int
    """How many looked worse than wanted, or came back."""
    seen: int
    """How many were looked at or sent."""
    share: tuple[float, float] | None
    """Between which shares the failing lies; None where none was seen."""
    turned: int
    """How many turned worse than wanted at a look."""
    haze: tuple[tuple[Part, int], ...]
    """At which ages in days they turned, with how many were watched so long; empty of too few."""
    house: House | None
    """The house."""
    seal: Seal
    """The seal of the book as it was read."""


def chart_of(book: Book, asked: str) -> Charts:
    """Return how the batches of a product, or of a kind of product, turned out.

    Raises:
        RefusedError: Nothing of that name was made for sale.
    """
    with book.reading() as connection:
        every = [run for run in runs(connection) if run.purpose is Purpose.SALE]
        made = _made(every, asked)[-MOST:]
        said = entries_of_lots(connection, [run.lot for run in made], KINDS)
        known = found(connection)
        versions = {(item.code, item.version): item for item in queries.formulas(connection)}
        seen = [run for run in made if _was_seen(run, known)]
        failed = sum(_is_bad(run, versions, known) for run in seen)
        spans = tuple(_spans(made, versions, known))
        return Charts(
            of=_name(made, asked),
            kind=str(made[-1].product_kind),
            batches=len(made),
            series=tuple(_series(connection, made, said)),
            failed=failed,
            seen=len(seen),
            share=share_interval(failed, len(seen)) if seen else None,
            turned=sum(span.by < inf for span in spans),
            haze=tuple((part, _watched(spans, part)) for part in turned(spans)),
            house=queries.house(connection),
            seal=seal_on(connection),
        )


def chartable(book: Book) -> tuple[tuple[str, str, int], ...]:
    """Return each product that was made for sale, its kind, and how many batches of it."""
    with book.reading() as connection:
        counts: dict[tuple[str, str], int] = {}
        for run in runs(connection):
            if run.purpose is Purpose.SALE:
                key = run.product, str(run.product_kind)
                counts[key] = counts.get(key, 0) + 1
    return tuple((product, kind, count) for (product, kind), count in counts.items())


def _made(every: Sequence[Run], asked: str) -> list[Run]:
    wanted = " ".join(asked.split()).lower()
    made = [run for run in every if run.product.lower() == wanted]
    made = made or [run for run in every if run.product_kind == wanted]
    if not made:
        known = ", ".join(dict.fromkeys(run.product for run in every))
        raise RefusedError(
            f'No batch of "{" ".join(asked.split())}" was made for sale.'
            + (f" Made were: {known}." if known else ""),
            "Name a product, or a kind such as essence or syrup.",
        )
    return made


def _name(made: Sequence[Run], asked: str) -> str:
    products = {run.product for run in made}
    return products.pop() if len(products) == 1 else " ".join(asked.split()).lower()


def _is_bad(run: Run, versions: Versions, known: Found) -> bool:
    came_back = any(known.complaints.get(lot) for lot in _lots(run, known))
    return came_back or bad_look(run, known, versions) is not None


def _was_seen(run: Run, known: Found) -> bool:
    return any(lot in known.looks or lot in known.sent for lot in _lots(run, known))


def _lots(run: Run, known: Found) -> tuple[int, ...]:
    return run.lot, *known.packed.get(run.lot, ())


def _is_worse(seen: Seen, run: Run, versions: Versions) -> bool:
    wanted = wanted_of(run, versions, looked_at=seen.looked_at)
    return GRADES.index(seen.grade) > GRADES.index(wanted)


def _spans(made: Sequence[Run], versions: Versions, known: Found) -> Iterator[Span]:
    """Yield between which of its looks each batch turned, in days since its making ended."""
    for run in made:
        end = known.finished_at.get(run.lot)
        if not end:
            continue
        looks = sorted(
            (_days(end, seen.at), _is_worse(seen, run, versions))
            for lot in _lots(run, known)
            for seen in known.looks.get(lot, ())
            if seen.at >= end
        )
        bad = next((age for age, is_bad in looks if is_bad), inf)
        good = max((age for age, is_bad in looks if not is_bad and age < bad), default=0.0)
        if looks:
            yield Span(good, bad)


def _watched(spans: Sequence[Span], part: Part) -> int:
    """Return how many were looked at beyond the beginning of a part."""
    return sum(max(span.after, span.by if span.by < inf else 0) > part.after for span in spans)


def _days(end: str, at: str) -> float:
    gone = datetime.fromisoformat(at) - datetime.fromisoformat(end)
    return float(round(gone.total_seconds() / DAY, 1))


def _series(
    connection: Connection, made: Sequence[Run], said: Mapping[int, Sequence[Entry]]
) -> Iterator[Series]:
    told = [(run, said.get(run.lot, ())) for run in made]
    # Sugar is no liquid that was put in, so a syrup is held against what was aimed at.
    drawn = [(run, facts) for run, facts in told if run.product_kind not in DISSOLVED]
    aimed = [(run, facts) for run, facts in told if run.product_kind in DISSOLVED]
    yield from _one(Figure.YIELD, 0, ((run, yield_of(facts)) for run, facts in drawn))
    yield from _one(Figure.TARGET, 0, ((run, share_of_target(facts)) for run, facts in aimed))
    yield from _one(Figure.NTU, 0, ((run, ntu_at_end(facts)) for run, facts in told))
    for what, figure in ((Measured.ABV, Figure.ABV), (Measured.BRIX, Figure.BRIX)):
        yield from _one(figure, 0, _beside(connection, made, said, what))
    for number in range(1, PASSES + 1):
        losses = ((run, loss_in_pass(facts, number)) for run, facts in told)
        yield from _one(Figure.LOSS, number, losses)


def _one(
    figure: Figure, pass_no: int, pairs: Iterator[tuple[Run, Fraction | None]]
) -> Iterator[Series]:
    points = tuple(
        Point(run.code, run.began_at[:10], value) for run, value in pairs if value is not None
    )
    values = [float(point.value) for point in points]
    if points:
        least = -inf if figure in DIFFERENCES else 0.0
        yield Series(figure, pass_no, points, chart(values, least), ahead(values))


def _beside(
    connection: Connection,
    made: Sequence[Run],
    said: Mapping[int, Sequence[Entry]],
    what: Measured,
) -> Iterator[tuple[Run, Fraction | None]]:
    """Yield by how much the last reading of each batch lies above what is reckoned."""
    taken = [
        Taken(run.code, readings[-1].facts, readings[-1].draft.happened.at, readings[-1].seq)
        for run in made
        if (
            readings := [
                entry
                for entry in entries_of(said.get(run.lot, ()), Measurement)
                if entry.facts.what is what
            ]
        )
    ]
    apart = {
        reading.lot: Fraction(reading.beside.measured - reading.beside.reckoned).limit_denominator(
            10**6
        )
        for reading in readings_beside(connection, taken)
    }
    yield from ((run, apart.get(run.code)) for run in made)
