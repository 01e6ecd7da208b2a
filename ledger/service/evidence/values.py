"""Values of the fields of an entry, read as a correction gives them.

Guarantees: a value is read as the field's own verb reads it. Refuses: nothing for a field that must
be there, and another measure for what a lot is counted in.
"""

from datetime import date, datetime
from enum import StrEnum

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Entry
from ledger.domain.entries.fields import SCALES, FieldSpec, scale_ending
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk
from ledger.service.desk.times import read_when

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
        return desk.words.scaled(text, scale, unit, spec.plain_name)
    if spec.shape is date:
        return desk.words.day(text)
    if spec.shape is datetime:
        return read_when(text, desk.now, desk.zone).at
    if issubclass(spec.shape, StrEnum):
        return desk.words.needed(text, spec.shape, spec.plain_name)
    return desk.words.text(text, spec.plain_name)


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
