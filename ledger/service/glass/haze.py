"""What is foretold of a lot or a formula, reckoned from what is in it.

Guarantees: every gap is named and the rest is still told; a band that says nothing is told as one
that cannot be foretold. Refuses: an oil of which neither the book nor a publication says what is
in it.
"""

from collections.abc import Sequence
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.forecasts import Carried, narrowed_band
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
from ledger.service.account.mixed import Mixed, mixed_of
from ledger.service.account.oils import calibration
from ledger.service.glass.doses import Dose
from ledger.service.glass.scores import own_ratios
from ledger.service.glass.sizes import GLASS_UL, POURED
from ledger.service.glass.warmth import at_temp
from ledger.store.engine.connections import Connection

RESTS_ON = (
    "Solubility: log-linear cosolvency, fitted to published statements.",
    "Drink: Raoult's law; sugar brings the cloud nearer, nobody says how far.",
    "Haze: Mie, drops of 0.1 to 3 µm; NTU by one emulsion, in magnitude only.",
)
"""What every forecast rests on."""
TOO_WIDE = 60.0
"""Points of strength from which a band says nothing any more (common practice, no source)."""


class Asked(NamedTuple):
    """What is to be foretold."""

    code: str
    """The lot, or the formula with its version."""
    name: str
    """What it is."""
    kind: ProductKind | None
    """Its kind."""
    dose: Dose
    """How much of it goes into a syrup."""
    essence_ul: int
    """How much essence went into it, of a syrup."""
    temp_mdegc: int
    """The temperature it is asked for."""


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


def haze_of(
    connection: Connection,
    asked: Asked,
    made: Contents,
    parts: int,
    missing: Sequence[tuple[str, str]],
) -> Haze:
    """Return what is foretold.

    Args:
        connection: A connection in a transaction.
        asked: What of.
        made: What is in it.
        parts: Parts of soda water to one of syrup.
        missing: What is missing of it already.
    """
    mixed = mixed_of(connection, made)
    is_syrup = asked.kind in POURED
    share, spirit = _spirit(made, mixed)
    beyond, cold_or_warm = at_temp(asked.temp_mdegc)
    gaps = (*missing, *mixed.gaps, *_lacking(mixed, spirit, is_syrup), *beyond)
    empty = Haze(
        code=asked.code,
        name=asked.name,
        kinds=mixed.kinds,
        oil_share=share,
        spirit_abv=spirit if spirit and not is_syrup else None,
        is_syrup=is_syrup,
        soda_parts=parts,
        rests_on=(*mixed.rests_on, *RESTS_ON, *cold_or_warm),
        gaps=gaps,
    )
    if not mixed.mass_mg or made.volume_ul <= 0 or not mixed.oil.shares:
        return empty
    return _filled(empty, made, mixed, asked, own_ratios(connection))


def _lacking(mixed: Mixed, spirit: float, is_syrup: bool) -> list[tuple[str, str]]:
    """Return that there is no oil or no spirit, and what to do about it."""
    gaps = []
    if not mixed.mass_mg:
        gaps.append(("There is no oil in it.", "Add it first, or name another."))
    if not spirit and not is_syrup:
        gaps.append(("There is no spirit in it.", "Add it first, or record its strength."))
    return gaps


def _filled(
    haze: Haze, made: Contents, mixed: Mixed, asked: Asked, ratios: Sequence[float]
) -> Haze:
    fit, oil = calibration(), mixed.oil
    dose = None if haze.is_syrup else asked.dose
    syrup, glass = _served(made, mixed, dose, haze.soda_parts)
    band, carried = (
        (None, None)
        if haze.spirit_abv is None
        else clear_by(oil, haze.oil_share, haze.spirit_abv, fit)
    )
    too_wide = band is not None and band.high - band.low > TOO_WIDE
    if band and too_wide:
        haze = replace(haze, gaps=(*haze.gaps, _says_nothing(band)))
        band = carried = None
    mg_per_l = 1e6 * mixed.mass_mg / made.volume_ul
    # What is dosed into a syrup is its essence, not the syrup itself.
    dosed_ul = asked.essence_ul if haze.is_syrup else made.volume_ul
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
        dose_ml_per_litre=_dose(
            held(oil, glass, fit), mg_per_l * made.volume_ul / dosed_ul, haze.soda_parts
        )
        if dosed_ul
        else None,
        narrowed=own,
    )


def _says_nothing(band: Band) -> tuple[str, str]:
    return (
        "By which strength it is clear cannot be foretold: the band would be "
        f"{band.high - band.low:.0f} points wide.",
        'Record what is in the oil: pottle material change CODE --constituents "NAME SHARE%"',
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
