"""How a lot was made, in figures, folded from its entries.

Guarantees: what was not recorded is None, and a step that was not made counts as none of it.
Refuses: to mix lots; each is folded by itself.
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Add,
    Entry,
    Facts,
    FactsT,
    Filter,
    Material,
    Measurement,
    Receipt,
    Rest,
)
from ledger.domain.entries.choices import MaterialKind, Measured, RestFor
from ledger.domain.lots.state import in_measure


class Source(Struct, frozen=True):
    """What is known of a lot that goes into others."""

    sort: MaterialKind | None
    """Kind of its material; None for a lot that was made here."""
    abv_mpct: int | None
    """Strength: as measured, else as received, else its material's."""
    density_mg_per_l: int | None
    """Density: as measured, else as received, else its material's."""


class Figures(Struct, frozen=True):
    """How one lot was made."""

    is_oiled: bool
    """Whether oil went into it."""
    is_filtered: bool
    """Whether it was filtered."""
    contact_h: Fraction | None
    """Hours of maceration in all; None where oil never stood."""
    chill_h: Fraction
    """Hours of chilling in all."""
    chill_degc: Fraction | None
    """Warmest temperature of a chill."""
    passes: Fraction
    """How many passes through a filter."""
    pore_um: Fraction | None
    """Finest pore size, by its coarser end."""
    filter_degc: Fraction | None
    """Warmest temperature of the liquid at a filter."""
    spirit_abv: Fraction | None
    """Weakest spirit that went in, % vol."""
    carbonate_g_per_ml: Fraction | None
    """Grams of clarifier to a millilitre of oil; None where one was not measured so."""


def source_of(entries: Iterable[Entry], materials: Mapping[str, Material]) -> Source:
    """Return what is known of a received lot from its entries."""
    sort, abv, density = None, None, None
    for facts in (entry.facts for entry in entries):
        if isinstance(facts, Receipt):
            material = materials.get(facts.material)
            sort = material.sort if material else None
            abv = facts.abv_mpct or (material.abv_mpct if material else None)
            density = facts.density_mg_per_l or (material.density_mg_per_l if material else None)
        elif isinstance(facts, Measurement) and facts.what is Measured.ABV:
            # Millionths of a per cent by volume as thousandths; of a g/mL, below, as mg/L.
            abv = facts.reading_micro // 1000
        elif isinstance(facts, Measurement) and facts.what is Measured.DENSITY:
            density = facts.reading_micro
    return Source(sort, abv, density)


def figures_of(entries: Iterable[Entry], sources: Mapping[str, Source]) -> Figures:
    """Return how a lot was made.

    Args:
        entries: Its entries in force.
        sources: What went in, by code; lots made here may be left out.
    """
    facts = [entry.facts for entry in entries]
    adds = [(item, sources[item.source]) for item in _of(facts, Add) if item.source in sources]
    filters = list(_of(facts, Filter))
    rests = list(_of(facts, Rest))
    chills = [item for item in rests if item.purpose is RestFor.CHILL]
    contact = [item for item in rests if item.purpose is RestFor.MACERATE]
    is_oiled = any(source.sort is MaterialKind.OIL for _, source in adds)
    return Figures(
        is_oiled=is_oiled,
        is_filtered=bool(filters),
        contact_h=_hours(contact) if is_oiled else None,
        chill_h=_hours(chills),
        chill_degc=_warmest(item.temp_mdegc for item in chills),
        passes=Fraction(len(filters)),
        pore_um=_least(item.pore_high_nm or item.pore_low_nm for item in filters),
        filter_degc=_warmest(item.temp_mdegc for item in filters),
        spirit_abv=_least(
            source.abv_mpct for _, source in adds if source.sort is MaterialKind.ETHANOL
        ),
        carbonate_g_per_ml=_dose(adds) if is_oiled else None,
    )


def _of(facts: Iterable[Facts], kind: type[FactsT]) -> Iterable[FactsT]:
    return (item for item in facts if isinstance(item, kind))


def _hours(rests: Iterable[Rest]) -> Fraction:
    spans = (item.ended_at - item.started_at for item in rests if item.ended_at)
    return sum((Fraction(int(span.total_seconds()), 3600) for span in spans), Fraction(0))


def _warmest(temps_mdegc: Iterable[int | None]) -> Fraction | None:
    known = [Fraction(temp, 1000) for temp in temps_mdegc if temp is not None]
    return max(known, default=None)


def _least(thousandths: Iterable[int | None]) -> Fraction | None:
    known = [Fraction(item, 1000) for item in thousandths if item]
    return min(known, default=None)


def _dose(adds: Iterable[tuple[Add, Source]]) -> Fraction | None:
    oil, carbonate = Fraction(0), Fraction(0)
    for add, source in adds:
        if source.sort not in (MaterialKind.CLARIFIER, MaterialKind.OIL):
            continue
        measure = Measure.UL if source.sort is MaterialKind.OIL else Measure.MG
        amount = in_measure(add.amount, measure, source.density_mg_per_l)
        if amount is None:
            return None
        if measure is Measure.UL:
            oil += Fraction(amount, 1000)
        else:
            carbonate += Fraction(amount, 1000)
    return carbonate / oil if oil else None
