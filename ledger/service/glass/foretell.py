"""Foretell: whether spirit will carry the oil, and how syrup and glass will look.

Guarantees: of a lot it is kept as an entry, sealed with all others before anybody looks; of a
formula nothing is recorded; every gap is named and the rest is still told. Refuses: to foretell an
oil of which neither the book nor a publication says what is in it.
"""

from ledger.domain.amounts.pours import read_pour
from ledger.domain.entries import Foretold, Look, Start
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import LotState, latest, name
from ledger.errors import RefusedError
from ledger.science.contents.composition import Contents
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.account.contents import contents_on
from ledger.service.account.state import lot_state
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.control import formula_of
from ledger.service.desk.foresight import Ahead
from ledger.service.glass.doses import dose_of
from ledger.service.glass.haze import Asked, Haze, haze_of
from ledger.service.glass.recipe import added_to, essence_by_formula, essence_in, recipe
from ledger.service.glass.sizes import soda_parts
from ledger.service.glass.warmth import read_warmth
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries
from ledger.store.read.made import kinds_made
from ledger.store.read.received import materials


def foretell_formula(
    book: Book, code: str, pour: str | None = None, temp: str | None = None
) -> Haze | None:
    """Return what is foretold of a formula; None when there is none of that code."""
    with book.reading() as connection:
        versions = queries.formulas(connection, code.lower())
        if not versions:
            return None
        formula = max(versions, key=lambda item: item.version)
        made, gaps = recipe(connection, formula)
        label = f"{formula.code} version {formula.version}"
        parts = soda_parts(read_pour(pour) or formula.pour_parts, None)
        asked = Asked(
            label,
            formula.product,
            formula.product_kind,
            dose_of(formula),
            essence_by_formula(connection, formula),
            read_warmth(temp),
        )
        return haze_of(connection, asked, made, parts, gaps)


def foretell_lot(
    book: Book, text: str, by: str | None, pour: str | None = None, temp: str | None = None
) -> Haze:
    """Return what is foretold of the lot that `text` names, without recording it."""
    with book.reading() as connection:
        return _foretold(connection, text, by, pour, temp)


def _foretold(
    connection: Connection, text: str, by: str | None, pour: str | None, temp: str | None
) -> Haze:
    code = resolve_lot(connection, text, by)
    if known_lot(connection, code).opened.lot_type is LotType.RECEIVED:
        raise RefusedError(
            f"{code} is a received lot, which nobody pours as it is.",
            "Name a lot that was made, or a formula.",
        )
    state = lot_state(connection, code, is_whole=False)
    start = latest(state.bulk or state, Start)
    made = contents_on(connection, code)
    kind = start.product_kind if start else None
    parts = soda_parts(read_pour(pour), start)
    dose = dose_of(formula_of(connection, start) if start else None)
    poured = state.bulk or state
    foresee(connection, lambda foreseen: _ahead(foreseen, poured, made.contents))
    essence_ul = essence_in(connection, poured)
    asked = Asked(code, name(state), kind, dose, essence_ul, read_warmth(temp))
    return haze_of(connection, asked, made.contents, parts, made.missing)


def _ahead(foreseen: Foreseen, lot: LotState, made: Contents) -> None:
    """Foretell what is asked of what went into a lot, and of its oils."""
    foreseen.asks(kinds_made, added_to(lot))
    foreseen.asks(materials, made.oils())


@act
def foretell(book: Book, how: How, *, lot: str, pour: str | None = None) -> Recorded[Foretold]:
    """Record what is foretold of a lot, before anybody looks."""
    return _recorded(book, how, lot, pour, None)[1]


@act
def record_lot(
    book: Book, how: How, lot: str, pour: str | None = None, temp: str | None = None
) -> tuple[Haze, int]:
    """Record what is foretold of a lot; return it with the number of its entry."""
    haze, done = _recorded(book, how, lot, pour, temp)
    return haze, done.entry.seq


def _recorded(
    book: Book, how: How, lot: str, pour: str | None, temp: str | None
) -> tuple[Haze, Recorded[Foretold]]:
    also = (queries.entries_of_kind, Foretold), (queries.entries_of_kind, Look)
    with at_desk(book, how, Ahead(lot, is_packed=True, also=also)) as desk:
        haze = _foretold(desk.connection, lot, how.by, pour, temp)
        return haze, desk.record(facts_of(haze), haze.code)


def facts_of(haze: Haze) -> Foretold:
    """Return what is kept of a forecast."""
    band = haze.clear_by
    low, likely, high = (_milli(end) for end in band) if band else (None, None, None)
    return Foretold(
        oils=", ".join(haze.kinds) or "none",
        carried=haze.carried,
        spirit_mpct=_milli(haze.spirit_abv),
        clear_low_mpct=low,
        clear_likely_mpct=likely,
        clear_high_mpct=high,
        neat_low_milli=_milli(haze.neat.low if haze.neat else None),
        neat_high_milli=_milli(haze.neat.high if haze.neat else None),
        syrup_low_milli=_milli(haze.syrup.low if haze.syrup else None),
        syrup_high_milli=_milli(haze.syrup.high if haze.syrup else None),
        glass_low_milli=_milli(haze.glass.low if haze.glass else None),
        glass_high_milli=_milli(haze.glass.high if haze.glass else None),
        dose_ul=_milli(haze.dose_ml_per_litre.low if haze.dose_ml_per_litre else None),
        own_readings=haze.narrowed.readings if haze.narrowed else None,
        own_least_micro=_milli(1000 * haze.narrowed.least if haze.narrowed else None),
        own_most_micro=_milli(1000 * haze.narrowed.most if haze.narrowed else None),
    )


def _milli(value: float | None) -> int | None:
    return None if value is None else round(1000 * value)
