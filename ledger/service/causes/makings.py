"""Gathering how runs were made, from the book.

Guarantees: a constant number of statements for a chunk of lots; a run has all that went into it and
into the lots filled from it, at any depth.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from ledger.domain.entries import Formula, Material
from ledger.domain.entries.choices import LotType, ProductKind
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.process import Figures, figures_of, source_of
from ledger.science.statistics.suspects import Observed
from ledger.service.account.lots import lots_by_number
from ledger.service.account.shares import lots_behind
from ledger.service.causes.settings import Making, settings_of
from ledger.store.engine.connections import Connection
from ledger.store.read.reach import entries_of_lots
from ledger.store.read.received import materials
from ledger.store.read.runs import Run

STEPS = ("receipt", "measure", "add", "rest", "filter")
"""Kinds of entry that say how a lot was made."""
BASES = (ProductKind.BASE_SYRUP, ProductKind.SYRUP)
"""Kinds of product that are no essence though they may be filtered."""
Versions = Mapping[tuple[str, int], Formula]
"""Formulas by code and version."""


class Gathered(Struct, frozen=True):
    """How runs were made."""

    observed: tuple[Observed, ...]
    """Each run with all that it had."""
    lots: Mapping[str, Lot]
    """What every lot that went in is, by code."""


def gather(
    connection: Connection,
    made: Sequence[Run],
    failed: Sequence[Run],
    clear: Sequence[Run],
    packed: Mapping[int, Sequence[int]],
    versions: Versions,
    *,
    is_by_kind: bool,
) -> Gathered:
    """Return how failed and clear runs were made.

    Args:
        connection: A connection in a transaction.
        made: Every run of the book.
        failed: Those that failed.
        clear: Those they are compared with.
        packed: For each bulk the lots filled from it.
        versions: The formulas of the book.
        is_by_kind: Whether products are compared with each other; the product is then a setting.
    """
    compared = [*failed, *clear]
    inputs = _inputs(connection, compared, packed)
    met = sorted({lot for lots in inputs.values() for lot in lots})
    known = lots_by_number(connection, met)
    makings = _makings(connection, made, compared, inputs, known, versions)
    levels, made_of = settings_of(makings), {making.code: making for making in makings}
    bad = {run.lot for run in failed}
    return Gathered(
        observed=tuple(
            Observed(
                lot=run.code,
                is_failed=run.lot in bad,
                inputs=frozenset(known[lot].code for lot in inputs[run.lot]),
                settings=levels[run.code] | ({"product": run.product} if is_by_kind else {}),
                product=str(run.product_kind) if is_by_kind else run.product,
                maker=run.maker,
                batch=" ".join(made_of[run.code].batches),
                bases=" ".join(made_of[run.code].bases),
                begun=run.began_at,
            )
            for run in compared
        ),
        lots={brief.code: brief for brief in known.values()},
    )


def _inputs(
    connection: Connection, compared: Sequence[Run], packed: Mapping[int, Sequence[int]]
) -> dict[int, frozenset[int]]:
    own = {run.lot: (run.lot, *packed.get(run.lot, ())) for run in compared}
    behind = lots_behind(connection, [lot for lots in own.values() for lot in lots])
    return {
        lot: frozenset(part for each in lots for part in behind[each]).difference(lots)
        for lot, lots in own.items()
    }


def _makings(
    connection: Connection,
    made: Sequence[Run],
    compared: Sequence[Run],
    inputs: Mapping[int, frozenset[int]],
    known: Mapping[int, Lot],
    versions: Versions,
) -> list[Making]:
    by_lot = {run.lot: run for run in made}
    figures = _figures(connection, {*inputs, *known}, known)
    return [_making(run, inputs[run.lot], by_lot, figures, versions) for run in compared]


def _making(
    run: Run,
    inputs: frozenset[int],
    by_lot: Mapping[int, Run],
    figures: Mapping[int, Figures],
    versions: Versions,
) -> Making:
    lots = [lot for lot in sorted({run.lot, *inputs} & by_lot.keys()) if lot in figures]
    # Where neither oil nor a filter was met, no setting can be behind a haze.
    told = [lot for lot in lots if figures[lot].is_oiled or figures[lot].is_filtered]
    names = [name for lot in told if (name := by_lot[lot].formula)]
    behind = [lot for lot in sorted(inputs & by_lot.keys()) if lot != run.lot]
    batches = [lot for lot in behind if lot in told and by_lot[lot].product_kind not in BASES]
    return Making(
        code=run.code,
        figures=tuple(figures[lot] for lot in told),
        formulas=tuple(versions[name] for name in names if name in versions),
        maker=run.maker,
        batches=tuple(by_lot[lot].code for lot in batches),
        bases=tuple(by_lot[lot].code for lot in behind if lot not in batches),
        essence_makers=tuple(
            sorted({by_lot[lot].maker for lot in told if lot != run.lot and figures[lot].is_oiled})
        ),
    )


def _figures(
    connection: Connection, lots: Iterable[int], known: Mapping[int, Lot]
) -> dict[int, Figures]:
    entries = entries_of_lots(connection, lots, STEPS)
    materials = _materials(connection, known.values())
    sources = {
        known[lot].code: source_of(said, materials)
        for lot, said in entries.items()
        if lot in known and known[lot].lot_type is LotType.RECEIVED
    }
    return {lot: figures_of(said, sources) for lot, said in entries.items()}


def _materials(connection: Connection, known: Iterable[Lot]) -> dict[str, Material]:
    return materials(connection, (brief.material for brief in known if brief.material))
