"""Reading the words of one entry: lots, amounts, numbers and closed lists of words.

Guarantees: all that is wrong with the words of one entry is told at once. Refuses: to guess; a lot
is named by its code or an unambiguous ending, a number has the unit its field asks for.
"""

import re
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import TypeVar

from ledger.domain.amounts.packs import Pack, parse_pack
from ledger.domain.amounts.quantity import Measure, Quantity, parse_quantity
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.codes import check_code, clean_code, nearest
from ledger.errors import InputError, LedgerError, RefusedError, attempt, together
from ledger.service.desk.times import read_day, read_minutes
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

WordT = TypeVar("WordT", bound=StrEnum)
ValueT = TypeVar("ValueT")
COUNTED = frozenset(
    {MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.LABEL, MaterialKind.FILTER}
)
"""Kinds of material for which a bare number means pieces."""
LONGEST_TEXT = 2000
"""Most characters of any free text."""
_NOTHING = Quantity(1, Measure.UL, "")
_NUMBER = re.compile(r"([-−+]?\d+(?:[.,]\d+)?) ?(.*)", re.ASCII)


class Words:
    """Reads the words of one entry and keeps what is wrong with them.

    Each reader returns its value, or a stand-in after noting the problem; `done` then raises, so
    no stand-in is ever recorded.
    """

    def __init__(self, connection: Connection, fluid_ounce: str, by: str | None) -> None:
        """Begin an entry by a person whose house has this fluid ounce."""
        self._connection = connection
        self._fluid_ounce = fluid_ounce
        self._by = by
        self.errors: list[LedgerError] = []

    def done(self) -> None:
        """Raise all problems together, if there are any."""
        if self.errors:
            raise together(self.errors)

    def read(self, reader: Callable[[], ValueT], stand_in: ValueT) -> ValueT:
        """Return what `reader` returns, or the stand-in when it raises."""
        return attempt(self.errors, reader, stand_in)

    def lot(self, text: str) -> str:
        """Return the whole code of the lot that `text` names."""
        return self.read(lambda: resolve_lot(self._connection, text, self._by), "")

    def lot_or_none(self, text: str | None) -> str | None:
        """Return the whole code of a lot, or None when none is named."""
        return self.lot(text) if text else None

    def amount(self, text: str, sort: MaterialKind | None = None) -> Quantity:
        """Return an amount; a bare number counts pieces of counted materials."""
        return self.read(
            lambda: parse_quantity(text, counted=sort in COUNTED, fluid_ounce=self._fluid_ounce),
            _NOTHING,
        )

    def needed_amount(self, text: str | None, what: str) -> Quantity:
        """Return an amount that must be given."""
        if text and text.strip():
            return self.amount(text)
        todo = "Write a number and a unit, such as 480mL."
        self.errors.append(InputError(f"The {what} is missing.", todo))
        return _NOTHING

    def pieces(self, text: str, *, may_be_nothing: bool = False) -> Quantity:
        """Return an amount of things counted, or another amount when a unit is given."""
        return self.read(
            lambda: parse_quantity(
                text,
                counted=True,
                fluid_ounce=self._fluid_ounce,
                may_be_nothing=may_be_nothing,
            ),
            _NOTHING,
        )

    def amount_or_none(self, text: str | None) -> Quantity | None:
        """Return an amount, or None when none is given."""
        return self.amount(text) if text else None

    def pack(self, text: str) -> Pack:
        """Return a number of bottles and their size."""
        return self.read(lambda: parse_pack(text, fluid_ounce=self._fluid_ounce), Pack(1, _NOTHING))

    def one_of(self, text: str | None, words: type[WordT], what: str) -> WordT | None:
        """Return one of a closed list of words, or None when none is given."""
        if not text:
            return None
        return self.read(lambda: read_word(text, words, what), None)

    def needed(self, text: str | None, words: type[WordT], what: str) -> WordT:
        """Return one of a closed list of words that must be given."""
        return self.read(lambda: read_word(text or "", words, what), next(iter(words)))

    def text(self, text: str | None, what: str) -> str:
        """Return free text that must be given."""
        return self.read(lambda: read_text(text or "", what), "")

    def text_or_none(self, text: str | None, what: str) -> str | None:
        """Return free text, or None when none is given."""
        return self.read(lambda: read_text(text, what), "") if text and text.strip() else None

    def scaled(self, text: str | None, scale: int, unit: str, what: str) -> int | None:
        """Return a decimal number in a smaller unit, or None when none is given."""
        return self.read(lambda: read_scaled(text, scale, unit, what), None) if text else None

    def number(self, text: str | None, scale: int, unit: str, what: str) -> int:
        """Return a decimal number in a smaller unit that must be given."""
        return self.read(lambda: read_scaled(text or "", scale, unit, what), 0)

    def whole(self, text: str | None, what: str) -> int | None:
        """Return a whole number, or None when none is given."""
        return self.scaled(text, 1, "", what)

    def day(self, text: str | None) -> date | None:
        """Return a date, or None when none is given."""
        return self.read(lambda: read_day(text), None) if text else None

    def minutes(self, text: str | None) -> int | None:
        """Return a duration in minutes, or None when none is given; bare numbers are minutes."""
        if not text:
            return None
        return self.read(lambda: read_minutes(f"{text}m" if text.isdecimal() else text), None)


def resolve_lot(connection: Connection, text: str, by: str | None = None) -> str:
    """Return the whole code of the lot that `text` names.

    Args:
        connection: A connection in a transaction.
        text: A code, an unambiguous ending of one, or "." for the lot in hand.
        by: Whose lot in hand.

    Raises:
        InputError: It cannot be a code.
        RefusedError: No lot or several lots have it; the nearest are named.
    """
    if text.strip() == ".":
        return _lot_in_hand(connection, by)
    code = clean_code(text)
    if queries.lot_by_code(connection, code):
        return code
    endings = queries.codes_ending_in(connection, code)
    if len(endings) == 1:
        return endings[0]
    if endings:
        shown = ", ".join(endings[:5]) + (" and more" if len(endings) > 5 else "")
        raise RefusedError(
            f"{code} is the ending of {len(endings)} lots: {shown}.", "Give more of the code."
        )
    raise _unknown(connection, code)


def _unknown(connection: Connection, code: str) -> RefusedError:
    near = nearest(code, queries.all_codes(connection))
    hint = f" Near to it: {', '.join(near)}." if near else ""
    if slip := check_code(code):
        return RefusedError(f"{slip}{hint}", "pottle stock lists the lots that are.")
    return RefusedError(
        f"There is no lot {code} in the book.{hint}", "pottle stock lists the lots that are."
    )


def _lot_in_hand(connection: Connection, by: str | None) -> str:
    code = queries.last_lot_of(connection, by) if by else None
    if code is None:
        raise RefusedError(
            "There is no lot in hand yet for a dot to stand for.", "Name the lot by its code."
        )
    return code


def with_article(what: str) -> str:
    """Return a noun with its article.

    >>> with_article("origin"), with_article("lot")
    ('an origin', 'a lot')
    """
    return f"{'an' if what[:1].lower() in set('aeio') else 'a'} {what}"


def read_word(text: str, words: type[WordT], what: str) -> WordT:
    """Return one of a closed list of words.

    Raises:
        InputError: It is not in the list, which is named.
    """
    found = next((word for word in words if _folded(word) == _folded(text)), None)
    if found is None:
        raise InputError(
            f'"{text}" is not {with_article(what)}.' if text else f"The {what} is missing.",
            f"Choose one of: {', '.join(words)}.",
        )
    return found


def _folded(word: str) -> str:
    return "-".join(word.strip().lower().replace("_", " ").split())


def read_text(text: str, what: str) -> str:
    """Return free text on one line, as it will be stored.

    Raises:
        InputError: It is empty, too long, or holds characters nobody can see.
    """
    folded = " ".join(text.split())
    if not folded:
        raise InputError(f"The {what} is missing.", f"Give the {what} in words.")
    if len(folded) > LONGEST_TEXT:
        raise InputError(
            f"The {what} has {len(folded)} characters; at most {LONGEST_TEXT} are kept.",
            "Say it in fewer words, or in several notes.",
        )
    hidden = next((letter for letter in folded if not letter.isprintable()), None)
    if hidden:
        raise InputError(
            f"The {what} holds the invisible character U+{ord(hidden):04X}.",
            "Type it again without it.",
        )
    return folded


def read_scaled(text: str, scale: int, unit: str, what: str) -> int:
    """Return a decimal number times `scale` as a whole number.

    Args:
        text: The number, with or without its unit.
        scale: How many of the smaller unit make one.
        unit: The unit people write, or "" for none.
        what: What the number is, for the sentence.

    Raises:
        InputError: It is missing or no number, has another unit or too many decimals.
    """
    found = _NUMBER.fullmatch(text.strip())
    wanted = f" in {unit}" if unit else ""
    if not text.strip():
        raise InputError(f"The {what} is missing.", f"Write a number{wanted}.")
    if not found or not _same_unit(found[2], unit):
        raise InputError(
            f'"{text}" is not {with_article(what)}{wanted}.', f"Write a number{wanted}."
        )
    number = Fraction(Decimal(found[1].replace(",", ".").replace("−", "-"))) * scale
    if number.denominator != 1:
        raise InputError(
            f'"{text}" is a finer {what} than the book keeps.', "Round it and write it again."
        )
    if abs(number) > 10**15:
        raise InputError(f'"{text}" is too large for a {what}.', "Check the number.")
    return int(number)


def _same_unit(written: str, unit: str) -> bool:
    plain = written.strip().lower().replace("μ", "µ").replace("µ", "u").lstrip("°")
    wanted = unit.lower().replace("µ", "u").lstrip("°")
    return plain in ("", wanted)
