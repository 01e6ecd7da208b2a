"""The serving card: what a glass of a lot delivers.

Guarantees: every figure follows from the lot as it was made; limits come with their sources; what
is missing is named and the rest is still told. Refuses: to say that anything is safe or lawful.
"""

from collections.abc import Collection, Mapping
from datetime import date

from ledger.domain.amounts.pours import read_pour
from ledger.domain.amounts.quantity import Measure
from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries import Bottle, Material, Start
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import LotState, latest, name
from ledger.domain.masters.doubts import doubts
from ledger.domain.masters.substances import counted
from ledger.errors import LedgerError, RefusedError, attempt, together
from ledger.science.contents.composition import Contents, scaled
from ledger.science.contents.serving import ADULT_KG, CHILD_KG, Glass
from ledger.science.contents.serving import substances as masses
from ledger.science.liquids.flammable import Flammable, flammable
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.account.contents import LotContents, contents_on
from ledger.service.account.shipped import TELLING, limits_on, not_told, substances
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of, today_on
from ledger.service.desk.control import formula_of
from ledger.service.glass.card import Pouring, ServingCard
from ledger.service.glass.declaration import Sold, declaration
from ledger.service.glass.doses import Dose, dose_of, read_dose
from ledger.service.glass.doubted import Off, inputs_of, with_doubts
from ledger.service.glass.pours import HeldAgainst, pourings, ways
from ledger.service.glass.sizes import GLASS_UL, POURED, ounce_of, read_glass, soda_parts
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.received import materials

SWIG_UL = 5_000
"""A teaspoon, the amount that somebody may drink of an essence by mistake."""


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
        dose: How much of an essence goes into a syrup; None: as its formula says, else 30 mL.
        adult: Body weight of an adult in kg.
        child: Body weight of a child in kg.
    """
    ounce, wrong = ounce_of(house_of(book)), list[LedgerError]()
    glass_ul = attempt(wrong, lambda: read_glass(glass, ounce), GLASS_UL)
    parts = attempt(wrong, lambda: read_pour(pour), None)
    asked = attempt(wrong, lambda: read_dose(dose, ounce), None)
    bodies = (
        ("adult", attempt(wrong, lambda: _weight(adult, ADULT_KG), ADULT_KG)),
        ("child", attempt(wrong, lambda: _weight(child, CHILD_KG), CHILD_KG)),
    )
    with book.reading() as connection:
        code = attempt(wrong, lambda: resolve_lot(connection, text, by), "")
        if wrong:
            raise together(wrong)
        if known_lot(connection, code).opened.lot_type is LotType.RECEIVED:
            raise RefusedError(
                f"{code} is a received lot, which nobody pours as it is.",
                f"Name a lot that was made of it; pottle trace {code} --forward shows them.",
            )
        on = today_on(connection, book.clock())
        return card_on(connection, code, on, glass_ul, parts, asked, bodies)


def card(book: Book, code: str) -> ServingCard | None:
    """Return the serving card of a made, rinse or packed lot by its code, with what is usual.

    Of a received lot it is None: what it contains stands in its papers.
    """
    with book.reading() as connection:
        if known_lot(connection, code).opened.lot_type is LotType.RECEIVED:
            return None
        return card_on(connection, code, today_on(connection, book.clock()), GLASS_UL)


def card_on(
    connection: Connection,
    code: str,
    on: date,
    glass_ul: int,
    parts: int | None = None,
    asked: tuple[str, int] | None = None,
    bodies: tuple[tuple[str, int], ...] = (("adult", ADULT_KG), ("child", CHILD_KG)),
) -> ServingCard:
    """Return a serving card in an open transaction, by the lot's whole code.

    Args:
        connection: A connection in a transaction.
        code: The lot's whole code.
        on: The day whose limits count.
        glass_ul: Size of the glass in µL.
        parts: Parts of soda water to one of syrup; None: as the batch says.
        asked: What of an essence goes into a syrup, in words and in µL; None: as its formula says.
        bodies: Whom the daily ceilings are told for, with body weights in kg.
    """
    state, made = lot_state(connection, code, is_whole=False), contents_on(connection, code)
    start = latest(state.bulk or state, Start)
    kind, soda = start.product_kind if start else None, soda_parts(parts, start)
    is_essence = kind not in POURED
    formula = formula_of(connection, start) if start else None
    dose = dose_of(formula, asked)
    known = _materials(connection, made.contents)
    against = HeldAgainst(known, limits_on(connection, on), bodies)

    def pour(off: Off) -> tuple[Pouring, ...]:
        dosed = ways(off.lot, dose if is_essence else None, off.dose)
        return pourings(off.lot, dosed, glass_ul, soda, against)

    house = queries.house(connection)
    inputs = inputs_of(made.contents, made.received, doubts(house.doubts if house else None))
    poured = with_doubts(pour(Off(made.contents, 1.0)), made.contents, inputs, pour)
    used = _received_materials(connection, made)
    return ServingCard(
        code=code,
        name=name(state),
        product_kind=kind,
        made=made,
        glass_ul=glass_ul,
        soda_parts=soda,
        pourings=poured,
        is_essence=is_essence,
        glasses_a_bottle=None if is_essence else _a_bottle(state, poured[0].glass),
        glasses_there=_there(state, poured[0].glass, dose if is_essence else None),
        unrecorded=_unrecorded(made.contents, known),
        swig_mg=_swig(made.contents, known) if is_essence else {},
        bodies=bodies,
        flammable=_flammable(made.contents) if is_essence else None,
        declaration=declaration(Sold(made, name(state), used, is_essence), house, poured),
        claim=formula.claim if formula else None,
    )


def _flammable(contents: Contents) -> Flammable | None:
    """Return what a lot is as a flammable liquid, by the ethanol and the water in it."""
    spirit_mg = contents.ethanol_mg + contents.water_mg
    return flammable(contents.ethanol_mg / spirit_mg, contents.abv) if spirit_mg else None


def _a_bottle(state: LotState, glass: Glass) -> int | None:
    if state.opened.lot_type is not LotType.PACKED:
        return None
    filled = latest(state, Bottle)
    return int(filled.size.amount // glass.syrup_ul) if filled else None


def _there(state: LotState, glass: Glass, dose: Dose | None) -> int:
    volume_ul: float = state.on_hand
    if state.measure is Measure.UEACH:
        filled = latest(state, Bottle)
        volume_ul = state.on_hand * (filled.size.amount if filled else 0) / 1_000_000
    if dose:
        # An essence counts as the syrup that it would flavour, the first that its dose goes into.
        volume_ul = volume_ul / dose.dose_ul * (dose.into[0][1] + dose.dose_ul)
    return max(0, int(volume_ul // glass.syrup_ul))


def _materials(connection: Connection, contents: Contents) -> dict[str, Material]:
    return _by_code(connection, {key.material for key in contents.parts})


def _received_materials(connection: Connection, made: LotContents) -> dict[str, Material]:
    """Return the materials of all received lots that a lot is made of."""
    return _by_code(connection, {lot.material for lot in made.received.values()})


def _by_code(connection: Connection, codes: Collection[str]) -> dict[str, Material]:
    known = materials(connection, sorted(codes))
    return {code: counted(item, substances()) for code, item in known.items()}


def _unrecorded(
    contents: Contents, known: Mapping[str, Material]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    codes = sorted({key.material for key in contents.parts} & known.keys())
    return tuple(
        (code, not_told(known[code]))
        for code in codes
        if known[code].sort in TELLING and not known[code].constituents
    )


def _swig(contents: Contents, known: Mapping[str, Material]) -> dict[str, float]:
    if contents.volume_ul <= 0:
        return {}
    return masses(scaled(contents, SWIG_UL / contents.volume_ul), known)


def _weight(text: str | None, usual: int) -> int:
    if not text:
        return usual
    weight = read_scaled(text, 1, "kg", "body weight")
    if not 1 <= weight <= 300:
        raise RefusedError(f"A body weight of {text} cannot be.", "Write it in kg, from 1 to 300.")
    return weight
