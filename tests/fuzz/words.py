"""Targets: amounts, numerals, packs, codes and times, as they are typed after a command."""

import re
from datetime import UTC, datetime, timedelta, timezone
from functools import partial
from zoneinfo import ZoneInfo

from ledger.domain.amounts.numerals import LONGEST_TEXT, fold_text, read_number, spread_fractions
from ledger.domain.amounts.packs import parse_pack
from ledger.domain.amounts.quantity import MOST, Measure, Quantity, parse_quantity, show, tidy
from ledger.domain.entries import When
from ledger.domain.entries.canonical import MAX_INTEGER
from ledger.domain.lots.codes import (
    LONGEST_CODE,
    check_code,
    clean_code,
    make_code,
    nearest,
    stem_for,
)
from ledger.errors import LedgerError
from ledger.service.desk.times import read_day, read_minutes, read_when
from tests.fuzz.laws import attempt, check_error, check_sentence, holds, same, text_of

NOW = datetime(2026, 3, 29, 9, 0, tzinfo=UTC)
"""The present moment: the morning of a day on which summer time begins."""
ZONE = ZoneInfo("Europe/Dublin")
COARSEST_SHOWN = 500
"""Half of the last digit shown of a large amount, in the smallest unit."""


def quantities(data: bytes) -> None:
    """An amount is kept in bounds and read again the same, as written, tidied and shown."""
    text = text_of(data)
    for counted, fluid_ounce in ((False, "US"), (False, "imperial"), (True, "US")):
        read = partial(parse_quantity, counted=counted, fluid_ounce=fluid_ounce)
        if found := attempt(partial(read, text)):
            holds(1 <= found.amount <= MOST, "an amount is in bounds", found)
            same("an amount is read again as it was written", read(found.written), found)
            if len(tidy(found.written)) <= LONGEST_TEXT:
                again = read(tidy(found.written))
                same("a tidied amount is the same", again.amount, found.amount)
            _shown(found)


def _shown(found: Quantity) -> None:
    shown = show(found.amount, found.measure)
    again = parse_quantity(shown, counted=found.measure is Measure.UEACH)
    is_exact = found.measure is Measure.UEACH or found.amount < 10**6
    off = abs(again.amount - found.amount)
    holds(again.measure is found.measure, "a shown amount has its measure", shown, found)
    holds(off <= (0 if is_exact else COARSEST_SHOWN), "an amount is shown as it is", shown, found)


def numerals(data: bytes) -> None:
    """Folding and spreading twice is as once; a number is exact and never below zero."""
    folded = attempt(lambda: fold_text(text_of(data)))
    if folded is None:
        return
    same("folding twice is folding once", fold_text(folded), folded)
    spread = spread_fractions(folded)
    same("spreading twice is spreading once", spread_fractions(spread), spread)
    number = attempt(lambda: read_number(spread, piece=folded))
    if number is not None:
        holds(number >= 0, "no number is below zero", number)
        plain = f"{number.numerator}/{number.denominator}"
        same("a number is read again the same", read_number(plain, piece=plain), number)


def packs(data: bytes) -> None:
    """A pack holds at least one container of a volume, and is read again the same."""
    pack = attempt(lambda: parse_pack(text_of(data)))
    if pack is None:
        return
    holds(pack.count >= 1 and pack.count * pack.size.amount <= MOST, "a pack is in bounds", pack)
    holds(pack.size.measure is Measure.UL, "a container holds a volume", pack)
    plain = f"{pack.count} x {pack.size.written}"
    if len(plain) <= LONGEST_TEXT:
        same("a pack is read again the same", parse_pack(plain), pack)


def codes(data: bytes) -> None:
    """A code cleaned twice is cleaned once; whatever words name a lot, its code is a good one."""
    text = text_of(data)
    stem = stem_for(text)
    made = make_code(stem, len(data) + 1)
    holds(bool(re.fullmatch("[A-Z]{2,4}", stem)), "a stem is two to four letters", stem)
    same("a code that was made is clean", clean_code(made), made)
    same("a code that was made has its check character", check_code(made), None)
    attempt(lambda: make_code(text, len(data)))
    code = attempt(lambda: clean_code(text))
    if code is None:
        return
    holds(len(code) <= LONGEST_CODE, "a code is short", code)
    same("cleaning twice is cleaning once", clean_code(code), code)
    if slip := check_code(code):
        check_sentence(slip)
    same("a known code is the nearest to itself", nearest(code, [made, code])[0], code)


def times(data: bytes) -> None:
    """A time, a day and a duration are read again the same from the way the book writes them."""
    text = text_of(data)
    if when := attempt(lambda: read_when(text, NOW, ZONE)):
        _moment(when)
    if day := attempt(lambda: read_day(text)):
        same("a day is read again the same", read_day(day.isoformat()), day)
    minutes = attempt(lambda: read_minutes(text))
    if minutes is not None:
        holds(0 <= minutes <= MAX_INTEGER, "a duration is in bounds", minutes)
        same("a duration is read again the same", read_minutes(f"{minutes}min"), minutes)


def _moment(when: When) -> None:
    holds(when.at.tzinfo is UTC and not when.at.microsecond, "a moment is a whole second", when)
    offset = timedelta(minutes=when.offset_min)
    local = when.at.astimezone(timezone(offset))
    again = read_when(local.isoformat(), NOW, ZONE)
    same(
        "a moment is read again the same", (again.at, again.offset_min), (when.at, when.offset_min)
    )
    try:
        house = read_when(f"{when.at.astimezone(ZONE):%Y-%m-%d %H:%M}", NOW, ZONE)
    except LedgerError as error:
        check_error(error)
    else:
        off = abs(house.at - when.at)
        holds(off <= timedelta(hours=1), "a moment on the house's clock is the same", house, when)
