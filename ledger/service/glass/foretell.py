"""Foretell: whether spirit will carry the oil, and how syrup and glass will look.

Guarantees: of a lot it is kept as an entry, sealed with all others before anybody looks; of a
formula nothing is recorded; every gap is named and the rest is still told. Refuses: to foretell an
oil of which neither the book nor a publication says what is in it.
"""

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.pours import read_pour
from ledger.domain.entries import Foretold, Start
from ledger.domain.entries.choices import LotType, ProductKind
from ledger.domain.entries.forecasts import Carried, narrowed_band
from ledger.domain.lots.state import latest, name
from ledger.errors import RefusedError
from ledger.science.contents.composition import Contents, scaled
from ledger.science.contents.serving import dosed, poured
from ledger.science.haze.drops import Range, index_of_spirit
from ledger.science.haze.narrowed import Narrowed, narrowed
from ledger.science.haze.outlook import (
    SYRUP_BRIX,
    Diluted,
    clear_by,
    compared,
    diluted_turbidity,
    held,
    neat_turbidity,
)
from ledger.science.haze.strength import Band
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3
from ledger.science.liquids.sps4 import density as sugar_density
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.account.contents import contents_on
from ledger.service.account.mixed import Mixed, mixed_of
from ledger.service.account.oils import calibration
from ledger.service.account.state import lot_state
from ledger.service.desk.act import at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.control import formula_of
from ledger.service.glass.doses import Dose, dose_of
from ledger.service.glass.recipe import recipe
from ledger.service.glass.scores import own_ratios
from ledger.service.glass.sizes import GLASS_UL, POURED, soda_parts
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

RESTS_ON = (
    "Solubility: log-linear cosolvency, calibrated on published statements of oils in spirit.",
    "Drink: Raoult's law; sugar and cold bring the cloud nearer, by how much is not published.",
    "Haze: Mie, drops of 0.1 to 3 µm; NTU from one published emulsion, in order of magnitude only.",
)
"""What every forecast rests on."""


class Haze(Struct, frozen=True):
    """What is foretold of a lot or a formula; None where it cannot be."""

    code: str
    """The lot, or the formula with its version."""
    name: str
    """What it is."""
    kinds: tuple[str, ...]
    """The kinds of oil in it."""
    oil_share: float
    """Which share of oil and spirit the oil is by volume."""
    spirit_abv: float | None
    """Strength of its spirit without the oil; None for what is poured as it is."""
    is_syrup: bool
    """Whether it is poured as it is."""
    soda_parts: int
    """Parts of soda water to one of syrup."""
    rests_on: tuple[str, ...]
    """What it rests on, a sentence each."""
    gaps: tuple[tuple[str, str], ...]
    """What is missing, and what to do about it."""
    clear_by: Band | None = None
    """The least strength that carries the oil clear."""
    carried: Carried | None = None
    """Whether its spirit does."""
    neat: Range | None = None
    """Turbidity neat, in NTU."""
    syrup: Range | None = None
    """Turbidity of the syrup."""
    glass: Range | None = None
    """Turbidity of the glass."""
    glass_against_syrup: Range | None = None
    """How many times more the same drops scatter in the glass than in the syrup."""
    dose_ml_per_litre: Range | None = None
    """The most of an essence in a litre of syrup that leaves a glass bright, at worst and best."""
    narrowed: Narrowed | None = None
    """How the maker's own readings narrowed the bands; None while they are too few."""

    @property
    def shown(self) -> tuple[Range | None, Range | None, Range | None]:
        """The bands neat, in syrup and in the glass, as own readings narrow them."""
        own = self.narrowed
        neat, syrup, glass = (
            Range(*narrowed_band(*band, own.least, own.most)) if band and own else band
            for band in (self.neat, self.syrup, self.glass)
        )
        return neat, syrup, glass


def foretell_formula(book: Book, code: str, pour: str | None = None) -> Haze | None:
    """Return what is foretold of a formula; None when there is none of that code."""
    with book.reading() as connection:
        versions = queries.formulas(connection, code.lower())
        if not versions:
            return None
        formula = max(versions, key=lambda item: item.version)
        made, gaps = recipe(connection, formula)
        label = f"{formula.code} version {formula.version}"
        parts = soda_parts(read_pour(pour) or formula.pour_parts, None)
        told = (label, formula.product, formula.product_kind, dose_of(formula))
        return _haze(connection, told, made, parts, gaps)


def foretell_lot(book: Book, text: str, by: str | None, pour: str | None = None) -> Haze:
    """Return what is foretold of the lot that `text` names, without recording it."""
    with book.reading() as connection:
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
        told = (code, name(state), kind, dose)
        return _haze(connection, told, made.contents, parts, made.missing)


def foretell(book: Book, how: How, *, lot: str, pour: str | None = None) -> Recorded[Foretold]:
    """Record what is foretold of a lot, before anybody looks."""
    return _recorded(book, how, foretell_lot(book, lot, how.by, pour))


def record_lot(book: Book, how: How, lot: str, pour: str | None = None) -> tuple[Haze, int]:
    """Record what is foretold of a lot; return it with the number of its entry."""
    haze = foretell_lot(book, lot, how.by, pour)
    return haze, _recorded(book, how, haze).entry.seq


def _recorded(book: Book, how: How, haze: Haze) -> Recorded[Foretold]:
    with at_desk(book, how) as desk:
        return desk.record(facts_of(haze), desk.words.lot(haze.code))


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


def _haze(
    connection: Connection,
    told: tuple[str, str, ProductKind | None, Dose],
    made: Contents,
    parts: int,
    missing: Sequence[tuple[str, str]],
) -> Haze:
    code, called, kind, dose = told
    mixed = mixed_of(connection, made)
    is_syrup = kind in POURED
    share, spirit = _spirit(made, mixed)
    gaps = (*missing, *mixed.gaps, *_lacking(mixed, spirit, is_syrup))
    empty = Haze(
        code=code,
        name=called,
        kinds=mixed.kinds,
        oil_share=share,
        spirit_abv=spirit if spirit and not is_syrup else None,
        is_syrup=is_syrup,
        soda_parts=parts,
        rests_on=(*mixed.rests_on, *RESTS_ON),
        gaps=gaps,
    )
    if not mixed.mass_mg or made.volume_ul <= 0 or not mixed.oil.shares:
        return empty
    ratios = own_ratios(connection)
    return _filled(empty, made, mixed, None if is_syrup else dose, ratios)


def _lacking(mixed: Mixed, spirit: float, is_syrup: bool) -> list[tuple[str, str]]:
    """Return that there is no oil or no spirit, and what to do about it."""
    gaps = []
    if not mixed.mass_mg:
        gaps.append(("There is no oil in it.", "Add it first, or name another."))
    if not spirit and not is_syrup:
        gaps.append(("There is no spirit in it.", "Add it first, or record its strength."))
    return gaps


def _filled(
    haze: Haze, made: Contents, mixed: Mixed, dose: Dose | None, ratios: Sequence[float]
) -> Haze:
    fit, oil = calibration(), mixed.oil
    syrup, glass = _served(made, mixed, dose, haze.soda_parts)
    band, carried = (
        (None, None)
        if haze.spirit_abv is None
        else clear_by(oil, haze.oil_share, haze.spirit_abv, fit)
    )
    mg_per_l = 1e6 * mixed.mass_mg / made.volume_ul
    medium = index_of_spirit(_mass_percent(made))
    own = narrowed(ratios)
    return replace(
        haze,
        clear_by=band,
        carried=carried,
        neat=diluted_turbidity(oil, syrup, fit)
        if haze.is_syrup
        else neat_turbidity(oil, mg_per_l, carried, medium),
        syrup=diluted_turbidity(oil, syrup, fit),
        glass=diluted_turbidity(oil, glass, fit),
        glass_against_syrup=compared(oil, syrup, glass),
        dose_ml_per_litre=None
        if haze.is_syrup
        else _dose(held(oil, glass, fit), mg_per_l, haze.soda_parts),
        narrowed=own,
    )


def _spirit(made: Contents, mixed: Mixed) -> tuple[float, float]:
    """Return the share of the oil by volume, and the strength of the rest."""
    rest_ul = made.volume_ul - mixed.volume_ul
    if rest_ul <= 0:
        return 1.0, 0.0
    strength = 100 * made.ethanol_mg / (ETHANOL_KG_PER_M3 / 1000) / rest_ul
    return mixed.volume_ul / made.volume_ul, min(100.0, strength)


def _mass_percent(made: Contents) -> float:
    spirit = made.ethanol_mg + made.water_mg
    return 100 * made.ethanol_mg / spirit if spirit else 0.0


def _served(made: Contents, mixed: Mixed, dose: Dose | None, parts: int) -> tuple[Diluted, Diluted]:
    """Return the syrup and the glass that a lot comes to."""
    syrup = made if dose is None else dosed(made, dose.dose_ul, dose.into[0][1])
    brix = made.sugar_percent_mass if dose is None else SYRUP_BRIX
    share = 1.0 if dose is None else dose.dose_ul / made.volume_ul
    mg_per_l = 1e6 * mixed.mass_mg * share / syrup.volume_ul
    glass = poured(scaled(syrup, GLASS_UL / syrup.volume_ul), GLASS_UL, parts)
    # By mass: a litre of syrup weighs more than one of soda water.
    heavy = sugar_density(brix / 100, 20.0)
    thinned = brix * heavy / (heavy + parts * sugar_density(0, 20.0))
    return (
        Diluted(mg_per_l, syrup.abv, brix),
        Diluted(mg_per_l / (parts + 1), glass.abv, thinned),
    )


def _dose(most: Range, mg_per_l: float, parts: int) -> Range:
    """Return the most of an essence in a litre of syrup for so many mg/L in a glass, in mL."""
    doses = []
    for held_mg_per_l in most:
        in_syrup = held_mg_per_l * (parts + 1)
        # What goes in makes the syrup more: d/(1000 + d) of the essence.
        doses.append(1000 * in_syrup / (mg_per_l - in_syrup) if mg_per_l > in_syrup else 1000.0)
    return Range(*doses)
