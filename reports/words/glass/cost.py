"""The cost of a lot in words and plain values.

Guarantees: the lines add up to the total to the hundredth; a price that is missing is said before
any sum it is missing from; what costs too little by the mL is told by the litre. Refuses: to round
a price to nothing, or to show one as a row of noughts.
"""

from decimal import Decimal
from fractions import Fraction
from typing import TypeVar

from ledger.domain.amounts.money import TWO, coins, digits_of
from ledger.domain.amounts.quantity import Measure, reckoned, show
from ledger.domain.masters.weighing import weighable
from ledger.service.glass.cost import CostCard, CostLine
from reports.kit.format import money, poured, scaled

PriceT = TypeVar("PriceT", Fraction, Fraction | None)


LEAST = Fraction(1, 100)
"""Price in hundredths below which nobody reads it."""


LEAST_WORDS = "0.0001"
"""The same in units of the currency."""


def head(card: CostCard) -> list[str]:
    """Return what a lot cost, in lines for people."""
    amount = show(card.there, card.measure)
    amount += " bottles" if card.measure is Measure.UEACH else ""
    total = money(card.total_minor, card.currency, card.digits)
    return [
        f"{card.code}, {card.name}: {total} for {amount}.",
        *_what_one_costs(card),
        *_lost(card),
        *_asked_price(card),
    ]


def _what_one_costs(card: CostCard) -> list[str]:
    glass = f"a glass of {show(card.glass_ul, Measure.UL)} at {poured(card.pour_parts)}"
    told = (_by_volume(card.per_ml), ("a bottle", card.per_bottle), (glass, card.per_glass))
    return [
        f"{what[0].upper()}{what[1:]}: {price(value, card.currency)}."
        for what, value in told
        if value is not None
    ]


def _lost(card: CostCard) -> list[str]:
    if not card.lost_share:
        return []
    went_in = show(card.went_in, card.measure)
    return [
        f"Of that {percent_figure(card.lost_share)} % pays for what was lost: {went_in} went in."
    ]


def _asked_price(card: CostCard) -> list[str]:
    if card.price is None or card.margin_mpct is None:
        return []
    is_bottled = card.per_bottle is not None
    of, value = ("a bottle", card.price) if is_bottled else _by_volume(card.price)
    margin = scaled(card.margin_mpct, 1000, "%")
    return [f"Price of {of} for a margin of {margin}: {price(value, card.currency)}."]


def price_lines(card: CostCard) -> list[str]:
    """Return what a lot costs, in a line, or none when nothing of it has a price."""
    prices = (_by_volume(card.per_ml), ("a bottle", card.per_bottle), ("a glass", card.per_glass))
    told = [f"{price(value, card.currency)} {what}" for what, value in prices if value]
    if not told:
        return []
    lacking = f", {len(card.missing)} without a price" if card.missing else ""
    return [f"Cost: {', '.join(told)}{lacking}."]


def _by_volume(per_ml: PriceT) -> tuple[str, PriceT]:
    """Return the price of a mL, or of a litre where a mL costs too little to be read."""
    if per_ml and per_ml < LEAST:
        return "a litre", 1000 * per_ml
    return "a mL", per_ml


WHOLE = 100
"""Hundredths in one of the currency."""


HEADS = ("what", "lot", "amount", "cost")
"""Heads of the table of a cost."""


def rows(card: CostCard) -> list[list[str]]:
    """Return the table of a cost, its total last."""
    sums = [(line.what, line.lot, _drawn(line), line.minor) for line in card.lines]
    if card.duty_minor:
        sums.append(("Spirit duty", "", "", card.duty_minor))
    if card.labour_minor:
        sums.append(("Work", "", "", card.labour_minor))
    sums.append(("Total", "", "", card.total_minor))
    return [[*what, coins(minor, card.digits)] for *what, minor in sums]


def _drawn(line: CostLine) -> str:
    """Return how much of a lot is in the cost; a part of a thing that is counted is reckoned."""
    is_part = line.measure is Measure.UEACH and line.drawn % 10**6
    rounded = reckoned(line.drawn) if is_part else weighable(line.drawn, line.measure)
    return show(rounded, line.measure)


def tail(card: CostCard) -> list[str]:
    """Return what is missing and what is not counted, in lines for people."""
    lines = [f"Missing: {what} {todo}" for what, todo in card.missing]
    if card.labour_minor is None:
        lines.append("Work is not counted: pottle house --hour PRICE says what an hour costs.")
    return lines


def step(card: CostCard) -> str:
    """Return what comes after a cost: the first price that is missing, else a price to sell at."""
    if card.to_price:
        return card.to_price[0]
    if card.margin_mpct is None and (card.per_bottle or card.per_ml):
        return f"pottle cost {card.code} --margin PERCENT"
    return f"pottle lot {card.code}"


def price(value: Fraction, currency: str) -> str:
    """Return a price, given in hundredths: to the smallest coin, below one to four figures.

    >>> price(Fraction(1111, 100), "EUR"), price(Fraction(713, 1) + Fraction(1, 7), "EUR")
    ('0.1111 EUR', '7.13 EUR')
    >>> price(Fraction(123_456, 1000), "KWD"), price(Fraction(33_786), "JPY")
    ('1.235 KWD', '338 JPY')
    >>> price(Fraction(1, 10_000), "EUR")
    'under 0.0001 EUR'
    """
    if 0 < value < LEAST:
        return f"under {LEAST_WORDS} {currency}".strip()
    digits = digits_of(currency)
    if abs(value) < WHOLE:
        told = figures(value, digits)
    else:
        told = coins(round(value * 10**digits / WHOLE), digits)
    return f"{told} {currency}".strip()


def figures(value: Fraction, digits: int = TWO) -> str:
    """Return a price in units of the currency, without its name: four figures or more.

    Args:
        value: The price in hundredths.
        digits: Digits after the point of the currency, of which none is left out.

    >>> figures(Fraction(1, 3)), figures(Fraction(33_786), 0)
    ('0.003333', '337.9')
    """
    units = Decimal(value.numerator) / Decimal(value.denominator) / 100
    if not units:
        return coins(0, digits)
    # So many decimals that four figures stand after the noughts.
    places = max(digits, 3 - units.adjusted())
    return f"{units:.{places}f}"


def percent_figure(share: Fraction) -> str:
    """Return a share in per cent, to a tenth, without the sign."""
    return f"{float(100 * share):.1f}"
