"""What a lot cost, for machines: money as decimals in text."""

from fractions import Fraction
from typing import Any

from ledger.service.glass.cost import CostCard, CostLine
from reports.kit.format import money, scaled
from reports.words.glass.cost import figures, percent_words


def plain(card: CostCard) -> dict[str, Any]:
    """Return a cost as plain values; money as decimal strings of the currency."""
    return {
        "lot": card.code,
        "name": card.name,
        "currency": card.currency,
        "amount": str(card.there),
        "unit": str(card.measure),
        "went_in": str(card.went_in),
        "lines": [_plain_line(line) for line in card.lines],
        "duty": money(card.duty_minor, "").strip(),
        "labour": None if card.labour_minor is None else money(card.labour_minor, "").strip(),
        "total": money(card.total_minor, "").strip(),
        "per_ml": _or_none(card.per_ml),
        "per_bottle": _or_none(card.per_bottle),
        "per_glass": _or_none(card.per_glass),
        "glass_ml": scaled(card.glass_ul, 1000),
        "pour_parts": card.pour_parts,
        "lost_percent": None if card.lost_share is None else percent_words(card.lost_share)[:-2],
        "margin_percent": None if card.margin_mpct is None else scaled(card.margin_mpct, 1000),
        "price": _or_none(card.price),
        "missing": [f"{what} {todo}" for what, todo in card.missing],
    }


def _plain_line(line: CostLine) -> dict[str, str]:
    return {
        "lot": line.lot,
        "what": line.what,
        "amount": str(line.drawn),
        "unit": str(line.measure),
        "cost": money(line.minor, "").strip(),
    }


def _or_none(value: Fraction | None) -> str | None:
    return None if value is None else figures(value)
