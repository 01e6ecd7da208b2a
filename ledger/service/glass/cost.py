"""What a lot cost, a mL of it, a bottle and a glass.

Guarantees: reckoned from the receipts really drawn; what has no price is named, with how to record
it, and the rest is still reckoned. Refuses: a glass of what is not poured; that is None.
"""

from fractions import Fraction

from msgspec import Struct

from ledger.domain.amounts.money import digits_of, in_hundredths
from ledger.domain.amounts.pours import read_pour
from ledger.domain.amounts.quantity import Measure
from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries import Bottle, House, Receipt, Start
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import LotState, latest, name, opener
from ledger.errors import LedgerError, RefusedError, attempt, together
from ledger.science.contents.cost import (
    DUTY,
    LABOUR,
    NANO,
    Cost,
    in_coins,
    price_for_margin,
)
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.account.lots import lots_by_number
from ledger.service.account.money import hour_of, reckoner
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.service.glass.sizes import GLASS_UL, POURED, ounce_of, read_glass, soda_parts
from ledger.store.engine.connections import Connection
from ledger.store.read import queries


class CostLine(Struct, frozen=True):
    """What one received lot contributed."""

    lot: str
    """Its code."""
    what: str
    """What it is."""
    drawn: int
    """How much of it is in the lot, rounded, in its measure."""
    measure: Measure
    """In what it is counted."""
    minor: int
    """What that cost, in the smallest coin of the currency, duty apart."""


class CostCard(Struct, frozen=True):
    """The cost of a lot; prices as exact fractions of one hundredth, sums in whole coins."""

    code: str
    """The lot's code."""
    name: str
    """What it is."""
    currency: str
    """ISO 4217 code of the money."""
    digits: int
    """Digits after the point that its smallest coin has."""
    measure: Measure
    """In what the lot is counted."""
    there: int
    """How much of the lot the sums are for."""
    went_in: int
    """How much went in, losses not taken off."""
    lines: tuple[CostLine, ...]
    """What it is made of, dearest first."""
    duty_minor: int
    """Spirit duty in it."""
    labour_minor: int | None
    """Work in it; None: no cost of an hour is known."""
    total_minor: int
    """All of it; the lines, duty and work add up to this."""
    per_ml: Fraction | None
    """Of a mL."""
    per_bottle: Fraction | None
    """Of a bottle, for a packed lot."""
    per_glass: Fraction | None
    """Of a glass, for what is poured."""
    glass_ul: int
    """How large the glass is."""
    pour_parts: int
    """Parts of soda water to one part."""
    lost_share: Fraction | None
    """Which share of the price of a mL pays for what was lost."""
    price: Fraction | None
    """Of a bottle, else of a mL, so that the wanted margin is left."""
    margin_mpct: int | None
    """The wanted margin in thousandths of a per cent of the price."""
    missing: tuple[tuple[str, str], ...]
    """What has no price: what, and how to record it."""
    to_price: tuple[str, ...]
    """The commands that record these prices."""


def cost(
    book: Book,
    text: str,
    *,
    by: str | None = None,
    glass: str | None = None,
    pour: str | None = None,
    hour: str | None = None,
    margin: str | None = None,
) -> CostCard:
    """Return the cost of the lot that `text` names.

    Args:
        book: The book.
        text: The lot, as a person names it.
        by: Whose lot in hand.
        glass: Size of a glass, such as 240mL.
        pour: How it is poured, such as 1:7.
        hour: What an hour of work costs; None: as the house says.
        margin: The wanted margin in per cent of the price.
    """
    with book.reading() as connection:
        house, wrong = queries.house(connection), list[LedgerError]()
        currency = house.currency if house else ""
        code = attempt(wrong, lambda: resolve_lot(connection, text, by), "")
        glass_ul = attempt(wrong, lambda: read_glass(glass, ounce_of(house)), GLASS_UL)
        told_parts = attempt(wrong, lambda: read_pour(pour), None)
        hour_cost = attempt(wrong, lambda: _hour(hour, house), None)
        margin_mpct = attempt(wrong, lambda: read_margin(margin), None)
        if wrong:
            raise together(wrong)
        digits = digits_of(currency)
        found = reckoner(connection, [known_lot(connection, code).seq], hour_cost).cost(code)
        state = lot_state(connection, code, is_whole=False)
        parts = soda_parts(told_parts, latest(state.bulk or state, Start))
        per_ml, per_bottle = _per_ml(state, found), _per_bottle(state, found)
        coins = in_coins(found.money, digits)
        unpriced = tuple(_unpriced(connection, lot) for lot in sorted(found.unpriced))
        return CostCard(
            code=code,
            name=name(state),
            currency=currency,
            digits=digits,
            measure=state.measure,
            there=found.there,
            went_in=found.went_in,
            lines=_lines(connection, found, coins),
            duty_minor=coins.get(DUTY, 0),
            labour_minor=None if hour_cost is None else coins.get(LABOUR, 0),
            total_minor=sum(coins.values()),
            per_ml=per_ml,
            per_bottle=per_bottle,
            per_glass=_per_glass(state, per_ml, glass_ul, parts),
            glass_ul=glass_ul,
            pour_parts=parts,
            lost_share=_lost(found),
            price=_price(per_bottle or per_ml, margin_mpct),
            margin_mpct=margin_mpct,
            missing=tuple((what, f"Record it: {command}") for what, command in unpriced),
            to_price=tuple(command for _, command in unpriced),
        )


def _hour(told: str | None, house: House | None) -> Fraction | None:
    """Return what an hour of work costs in hundredths: as told, else as the house says."""
    if not told:
        return hour_of(house)
    digits = digits_of(house.currency if house else "")
    return in_hundredths(read_scaled(told, 10**digits, "", "cost of an hour"), digits)


def _per_ml(state: LotState, found: Cost) -> Fraction | None:
    volume_ul = found.there
    if state.measure is Measure.UEACH:
        filled = latest(state, Bottle)
        volume_ul = found.there * filled.size.amount // 10**6 if filled else 0
    if state.measure is Measure.MG or not volume_ul:
        return None
    return Fraction(found.total * 1000, volume_ul * NANO)


def _per_bottle(state: LotState, found: Cost) -> Fraction | None:
    if state.opened.lot_type is not LotType.PACKED or not found.there:
        return None
    return Fraction(found.total * 10**6, found.there * NANO)


def _per_glass(
    state: LotState, per_ml: Fraction | None, glass_ul: int, parts: int
) -> Fraction | None:
    """Return the price of what is poured into a glass; None for what is not poured as it is."""
    start = latest(state.bulk or state, Start)
    if not per_ml or start is None or start.product_kind not in POURED:
        return None
    return per_ml * glass_ul / 1000 / (parts + 1)


def _lost(found: Cost) -> Fraction | None:
    if found.went_in <= 0 or found.there >= found.went_in:
        return None
    return 1 - Fraction(found.there, found.went_in)


def _price(cost: Fraction | None, margin_mpct: int | None) -> Fraction | None:
    if cost is None or margin_mpct is None:
        return None
    return Fraction(price_for_margin(int(cost * NANO), margin_mpct), NANO)


def _lines(connection: Connection, found: Cost, coins: dict[str, int]) -> tuple[CostLine, ...]:
    rows = {code: queries.lot_by_code(connection, code) for code in found.drawn}
    known = lots_by_number(connection, [row.seq for row in rows.values() if row])
    lines = [
        CostLine(
            lot=code,
            what=known[row.seq].name,
            drawn=round(Fraction(found.drawn[code], NANO)),
            measure=row.opened.measure,
            minor=coins.get(code, 0),
        )
        for code, row in rows.items()
        if row and found.drawn[code]
    ]
    return tuple(sorted(lines, key=lambda line: (-line.minor, line.lot)))


def _unpriced(connection: Connection, code: str) -> tuple[str, str]:
    """Return that a lot has no price, and the command that records it."""
    state = lot_state(connection, code, is_whole=False)
    entry, receipt = opener(state), latest(state, Receipt)
    what = f"{code}, {name(state)}, was received without a price, so it counts as nothing here."
    number = entry.seq if entry and receipt else "NUMBER"
    return what, f'pottle correct {number} --set cost=PRICE --because "from the invoice"'


def read_margin(text: str | None) -> int | None:
    """Return a margin in thousandths of a per cent of the price, or None when none is given.

    Raises:
        RefusedError: It is not from 0 to less than 100 %.
    """
    if not text:
        return None
    margin = read_scaled(text, 1000, "%", "margin")
    if not 0 <= margin < 100_000:
        raise RefusedError(
            f"A margin of {text} cannot be: it is a share of the price, from 0 to below 100 %.",
            "A price of twice the cost is a margin of 50 %.",
        )
    return margin
