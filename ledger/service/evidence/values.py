"""Values of the fields of an entry, read as a correction gives them.

Guarantees: a value is read as the field's own verb reads it. Refuses: nothing for a field that must
be there, and another measure for what a lot is counted in.
"""

from collections.abc import Mapping
from datetime import date, datetime
from enum import StrEnum
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.money import TWO, digits_of, digits_told
from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Entry, Facts
from ledger.domain.entries.fields import SCALES, FieldSpec, scale_ending, specs
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk
from ledger.service.desk.times import read_when

MONEY, DIGITS = "_minor", "_digits"
"""Endings of the names of fields of money, and of the field that says how finely it is counted."""
YES_OR_NO = {"yes": True, "true": True, "1": True, "no": False, "false": False, "0": False}
"""How it is said whether something is so."""


def read_value(desk: Desk, old: Entry, spec: FieldSpec, text: str) -> object:
    """Return the new value of a field of an entry; None for what may be left empty.

    Raises:
        InputError: It is empty, or cannot be read.
        RefusedError: It is in another measure than the lot that the entry opened.
    """
    if not text:
        if spec.is_optional:
            return None
        raise InputError(f"The {spec.plain_name} cannot be left empty.", "Give its right value.")
    if spec.shape is Quantity:
        amount = desk.words.pieces(text, may_be_nothing=spec.may_be_nothing)
        return _same_measure(old, spec, amount)
    if spec.refers_to == "lot":
        return desk.words.lot(text)
    if spec.shape is bool:
        return _yes_or_no(text, spec.plain_name)
    if spec.shape is int:
        ending = scale_ending(spec.name)
        scale, unit = SCALES[ending] if ending else (1, "")
        scale = 10 ** digits_of(desk.currency) if ending == MONEY else scale
        return desk.words.scaled(text, scale, unit, spec.plain_name)
    if spec.shape is date:
        return desk.words.day(text)
    if spec.shape is datetime:
        return read_when(text, desk.now, desk.zone).at
    if issubclass(spec.shape, StrEnum):
        return desk.words.needed(text, spec.shape, spec.plain_name)
    return desk.words.text(text, spec.plain_name)


def with_digits(facts: Facts, changed: Mapping[str, Any], digits: int) -> dict[str, Any]:
    """Return the money of facts that change, and what goes with it, each as finely as it was.

    Args:
        facts: The facts as they were.
        changed: The fields that change, money in the digits of the house's currency.
        digits: Those digits.
    """
    field = next((spec.name for spec in specs(type(facts)) if spec.name.endswith(DIGITS)), None)
    money = [spec.name for spec in specs(type(facts)) if spec.name.endswith(MONEY)]
    if field is None or not changed.keys() & set(money):
        return {}
    was = getattr(facts, field)
    old = TWO if was is None else was
    kept = {name: getattr(facts, name) for name in money if name not in changed}
    # What stays must keep its value, so the finer of both scales counts for all.
    most = max(digits, old) if any(kept.values()) else digits
    scaled = {name: value * 10 ** (most - old) for name, value in kept.items() if value}
    new = {name: changed[name] * 10 ** (most - digits) for name in money if changed.get(name)}
    return {**scaled, **new, field: digits_told(most)}


def _yes_or_no(text: str, what: str) -> bool:
    word = text.lower()
    if word not in YES_OR_NO:
        raise InputError(
            f'The {what} must be yes or no, and "{text}" is neither.', "Write yes or no."
        )
    return YES_OR_NO[word]


def _same_measure(old: Entry, spec: FieldSpec, amount: Quantity) -> Quantity:
    was: Quantity | None = getattr(old.facts, spec.name)
    opens = old.draft.opens
    if opens and spec.name == "amount" and was and was.measure is not amount.measure:
        raise RefusedError(
            f"{opens.code} is counted in the measure of {was.written}, so it cannot become "
            f"{amount.written}.",
            f"Strike entry {old.seq} and receive it again.",
        )
    # Nothing has no unit of its own, and is counted as the field was.
    if was and amount.amount == 0:
        return replace(amount, measure=was.measure)
    return amount
