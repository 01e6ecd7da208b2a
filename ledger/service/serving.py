"""The serving card: what a glass of a lot delivers.

Guarantees: every figure follows from the lot as it was made; limits come with their sources; what
is missing is named and the rest is still told. Refuses: to say that anything is safe or lawful.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from ledger.domain.entries import Bottle, Limit, Material, Start
from ledger.domain.entries.words import LotType, MaterialKind, ProductKind
from ledger.domain.lots import LotState, latest, name
from ledger.domain.quantity import Measure, Quantity, parse_quantity
from ledger.errors import InputError, RefusedError
from ledger.science.composition import Contents, scaled
from ledger.science.louche import Forecast, forecast
from ledger.science.serving import (
    ADULT_KG,
    CHILD_KG,
    Compared,
    Concern,
    Daily,
    Glass,
    compared,
    concerns,
    daily,
    dosed,
    poured,
    strength_markers,
    substances,
)
from ledger.service.batches import read_pour
from ledger.service.book import Book
from ledger.service.contents import LotContents, contents_on
from ledger.service.costing import GLASS_UL, POURED, SODA_PARTS, read_glass
from ledger.service.known import known_lot
from ledger.service.scenes import lot_state
from ledger.service.shipped import limits_on, solubilities, usual_concerns
from ledger.service.words import read_scaled, resolve_lot
from ledger.store import queries
from ledger.store.engine import Connection

DOSE_UL = 30_000
"""What of an essence flavours a syrup (common practice, no source)."""
DOSED_INTO = (("1 L", 1_000_000), ("1 US gal", 3_785_412))
"""The syrups that an essence is dosed into in the trade (common practice, no source)."""
SWIG_UL = 5_000
"""A teaspoon, the amount that somebody may drink of an essence by mistake."""


@dataclass(frozen=True, slots=True)
class OilServed:
    """One oil in a glass."""

    material: str
    """Code of the material."""
    name: str
    """Its name."""
    mg_per_glass: float
    """How much of it is in a glass, in mg."""
    mg_per_litre: float
    """How much of it is in the drink, in mg/L."""
    forecast: Forecast
    """Whether it clouds the drink."""


@dataclass(frozen=True, slots=True)
class ConcernServed:
    """One substance of concern in a glass, with its ceilings."""

    concern: Concern
    """How much of it there is."""
    daily: tuple[Daily, ...]
    """Its daily ceilings by body weight."""
    limits: tuple[Compared, ...]
    """Its limits as served and as sold."""


@dataclass(frozen=True, slots=True)
class Pouring:
    """One way to pour a lot."""

    said: str
    """How, in words."""
    glass: Glass
    """The glass."""
    syrup_abv: float
    """Strength of the syrup, in % vol."""
    oils: tuple[OilServed, ...]
    """The oils in it, most first."""
    concerns: tuple[ConcernServed, ...]
    """The substances of concern in it."""
    markers: tuple[Compared, ...]
    """Limits and markers of alcohol."""


@dataclass(frozen=True, slots=True)
class ServingCard:
    """What a glass of a lot delivers."""

    code: str
    """The lot's code."""
    name: str
    """What it is."""
    product_kind: ProductKind | None
    """What kind of thing it is."""
    made: LotContents
    """What it contains."""
    glass_ul: int
    """Size of the glass."""
    soda_parts: int
    """Parts of soda water to one."""
    pourings: tuple[Pouring, ...]
    """Ways to pour it: one for a syrup, by the litre and the gallon for an essence."""
    is_essence: bool
    """Whether it is dosed into a syrup first."""
    glasses_a_bottle: int | None
    """Glasses in a bottle, for a packed lot."""
    glasses_there: int
    """Glasses in what is on hand."""
    unrecorded: tuple[tuple[str, tuple[str, ...]], ...]
    """Oils whose constituents are not recorded, with what such oils usually carry."""
    swig_mg: Mapping[str, float]
    """Substances of concern in a teaspoon of an essence, in mg."""
    bodies: tuple[tuple[str, int], ...]
    """Whom the daily ceilings are told for, with body weights in kg."""


def serving(
    book: Book,
    text: str,
    *,
    by: str | None = None,
    glass: str | None = None,
    pour: str | None = None,
    dose: str | None = None,
    adult: str | None = None,
    child: str | None = None,
) -> ServingCard:
    """Return the serving card of the lot that `text` names.

    Args:
        book: The book.
        text: The lot, as a person names it.
        by: Whose lot in hand.
        glass: Size of the glass; None: 240 mL.
        pour: How it is poured, such as 1:7; None: as the batch says.
        dose: How much of an essence goes into a litre or a gallon; None: 30 mL.
        adult: Body weight of an adult in kg.
        child: Body weight of a child in kg.
    """
    glass_ul, dose_ul = read_glass(glass), _dose(dose)
    bodies = (
        ("adult", _weight(adult, ADULT_KG)),
        ("child", _weight(child, CHILD_KG)),
    )
    with book.reading() as connection:
        code = resolve_lot(connection, text, by)
        if known_lot(connection, code).opened.lot_type is LotType.RECEIVED:
            raise RefusedError(
                f"{code} is a received lot, which nobody pours as it is.",
                f"Name a lot that was made of it; pottle trace {code} --forward shows them.",
            )
        return card_on(connection, code, glass_ul, read_pour(pour), dose_ul, bodies)


def card(book: Book, code: str) -> ServingCard | None:
    """Return the serving card of a made, rinse or packed lot by its code, with what is usual.

    Of a received lot it is None: what it contains stands in its papers.
    """
    with book.reading() as connection:
        if known_lot(connection, code).opened.lot_type is LotType.RECEIVED:
            return None
        return card_on(connection, code, GLASS_UL)


def card_on(
    connection: Connection,
    code: str,
    glass_ul: int,
    parts: int | None = None,
    dose_ul: int = DOSE_UL,
    bodies: tuple[tuple[str, int], ...] = (("adult", ADULT_KG), ("child", CHILD_KG)),
) -> ServingCard:
    """Return a serving card in an open transaction, by the lot's whole code."""
    state = lot_state(connection, code, is_whole=False)
    made = contents_on(connection, code)
    start = latest(state.bulk or state, Start)
    kind = start.product_kind if start else None
    soda = parts or (start.pour_parts if start else None) or SODA_PARTS
    known = _materials(connection, made.contents)
    limits = limits_on(connection)
    is_essence = kind not in POURED
    ways = _ways(made.contents, is_essence, dose_ul)
    pourings = tuple(
        _pouring(said, syrup, made.contents, glass_ul, soda, known, limits, bodies)
        for said, syrup in ways
    )
    return ServingCard(
        code=code,
        name=name(state),
        product_kind=kind,
        made=made,
        glass_ul=glass_ul,
        soda_parts=soda,
        pourings=pourings,
        is_essence=is_essence,
        glasses_a_bottle=_a_bottle(state, pourings[0].glass) if not is_essence else None,
        glasses_there=_there(state, pourings[0].glass, is_essence, dose_ul),
        unrecorded=_unrecorded(made.contents, known),
        swig_mg=_swig(made.contents, known) if is_essence else {},
        bodies=bodies,
    )


def _ways(contents: Contents, is_essence: bool, dose_ul: int) -> list[tuple[str, Contents]]:
    if not is_essence:
        return [("as it is", contents)]
    return [
        (f"{dose_ul / 1000:g} mL in {said}", dosed(contents, dose_ul, base_ul))
        for said, base_ul in DOSED_INTO
    ]


def _pouring(
    said: str,
    syrup: Contents,
    lot: Contents,
    glass_ul: int,
    soda: int,
    known: Mapping[str, Material],
    limits: tuple[Limit, ...],
    bodies: tuple[tuple[str, int], ...],
) -> Pouring:
    glass = poured(syrup, glass_ul, soda)
    litres = glass.volume_ul / 1_000_000
    oils = [
        OilServed(
            material=code,
            name=known[code].name if code in known else code,
            mg_per_glass=part.mass_mg,
            mg_per_litre=part.mass_mg / litres,
            forecast=forecast(part.mass_mg / litres, known.get(code), solubilities()),
        )
        for code, part in glass.syrup.oils().items()
    ]
    return Pouring(
        said=said,
        glass=glass,
        syrup_abv=syrup.abv,
        oils=tuple(sorted(oils, key=lambda oil: -oil.mg_per_glass)),
        concerns=tuple(
            ConcernServed(item, daily(item, limits, bodies), compared(item, limits))
            for item in concerns(glass, lot, known)
        ),
        markers=strength_markers(syrup.abv, glass.abv, limits),
    )


def _a_bottle(state: LotState, glass: Glass) -> int | None:
    if state.opened.lot_type is not LotType.PACKED:
        return None
    filled = latest(state, Bottle)
    return int(filled.size.amount // glass.syrup_ul) if filled else None


def _there(state: LotState, glass: Glass, is_essence: bool, dose_ul: int) -> int:
    volume_ul: float = state.on_hand
    if state.measure is Measure.UEACH:
        filled = latest(state, Bottle)
        volume_ul = state.on_hand * (filled.size.amount if filled else 0) / 1_000_000
    if is_essence:
        volume_ul = volume_ul / dose_ul * (DOSED_INTO[0][1] + dose_ul)
    return max(0, int(volume_ul // glass.syrup_ul))


def _materials(connection: Connection, contents: Contents) -> dict[str, Material]:
    codes = {key.material for key in contents.parts}
    found = {code: queries.material(connection, code) for code in sorted(codes)}
    return {code: item for code, item in found.items() if item}


def _unrecorded(
    contents: Contents, known: Mapping[str, Material]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    return tuple(
        (code, usual_concerns(known[code].name))
        for code in sorted(contents.oils())
        if code in known and known[code].sort is MaterialKind.OIL and not known[code].constituents
    )


def _swig(contents: Contents, known: Mapping[str, Material]) -> dict[str, float]:
    if contents.volume_ul <= 0:
        return {}
    return substances(scaled(contents, SWIG_UL / contents.volume_ul), known)


def _dose(text: str | None) -> int:
    if not text:
        return DOSE_UL
    found: Quantity = parse_quantity(text)
    if found.measure is not Measure.UL:
        raise InputError(f'"{text}" is not a dose of essence.', "Write a volume, such as 30mL.")
    return found.amount


def _weight(text: str | None, usual: int) -> int:
    if not text:
        return usual
    weight = read_scaled(text, 1, "kg", "body weight")
    if not 1 <= weight <= 300:
        raise RefusedError(f"A body weight of {text} cannot be.", "Write it in kg, from 1 to 300.")
    return weight
