"""What a lot cost, for machines: money as decimal strings of the currency."""

from fractions import Fraction

from ledger.domain.amounts.money import coins
from ledger.service.glass.cost import CostCard, CostLine
from reports.json.kit.answer import (
    Amount,
    Answer,
    Code,
    Figure,
    Told,
    amount_of,
    scaled_or_none,
    told,
)
from reports.kit.amounts import decimal_amount
from reports.words.glass.cost import figures, percent_figure


class CostLineTold(Answer, frozen=True):
    """What one received lot contributed."""

    code: Code
    """Its code."""
    what: str
    """What it is."""
    amount: Amount
    """How much of it is in the lot."""
    cost: Figure
    """What that cost, duty apart."""


class CostAnswer(Answer, frozen=True):
    """The cost of a lot."""

    code: Code
    """Code of the lot."""
    name: str
    """What it is."""
    currency: str
    """ISO 4217 code of the money."""
    amount: Amount
    """How much of the lot the sums are for."""
    went_in: Amount
    """How much went in, losses not taken off."""
    lines: tuple[CostLineTold, ...]
    """What it is made of, dearest first."""
    duty: Figure
    """Spirit duty in it."""
    labour: Figure | None
    """Work in it; null: no cost of an hour is known."""
    total: Figure
    """All of it; the lines, duty and work add up to this."""
    per_ml: Figure | None
    """Of a mL."""
    per_bottle: Figure | None
    """Of a bottle, for a packed lot."""
    per_glass: Figure | None
    """Of a glass, for what is poured."""
    glass_ml: Figure
    """How large the glass is."""
    pour_parts: int
    """Parts of soda water to one part."""
    lost_percent: Figure | None
    """How much of the price of a mL pays for what was lost."""
    margin_percent: Figure | None
    """The wanted margin, of the price."""
    price: Figure | None
    """Of a bottle, else of a mL, so that the wanted margin is left."""
    missing: tuple[Told, ...]
    """What has no price."""


def cost_answer(card: CostCard) -> CostAnswer:
    """Return the cost of a lot."""
    lost, work = card.lost_share, card.labour_minor
    return CostAnswer(
        code=card.code,
        name=card.name,
        currency=card.currency,
        amount=amount_of(card.there, card.measure),
        went_in=amount_of(card.went_in, card.measure),
        lines=tuple(_line(line, card.digits) for line in card.lines),
        duty=coins(card.duty_minor, card.digits),
        labour=None if work is None else coins(work, card.digits),
        total=coins(card.total_minor, card.digits),
        per_ml=_or_none(card.per_ml, card.digits),
        per_bottle=_or_none(card.per_bottle, card.digits),
        per_glass=_or_none(card.per_glass, card.digits),
        glass_ml=decimal_amount(card.glass_ul),
        pour_parts=card.pour_parts,
        lost_percent=None if lost is None else percent_figure(lost),
        margin_percent=scaled_or_none(card.margin_mpct, 3),
        price=_or_none(card.price, card.digits),
        missing=told(card.missing),
    )


def _line(line: CostLine, digits: int) -> CostLineTold:
    amount = amount_of(line.drawn, line.measure)
    return CostLineTold(line.lot, line.what, amount, coins(line.minor, digits))


def _or_none(value: Fraction | None, digits: int) -> Figure | None:
    return None if value is None else figures(value, digits)
