"""Reading the words of one entry: lots, amounts, numbers and closed lists of words.

Guarantees: all that is wrong with the words of one entry is told at once. Refuses: to guess; a lot
is named by its code or an unambiguous ending, a number has the unit its field asks for.
"""

from collections.abc import Callable
from datetime import date
from typing import TypeVar

from ledger.domain.amounts.packs import Pack, parse_pack
from ledger.domain.amounts.quantity import Measure, Quantity, parse_quantity, show_exactly
from ledger.domain.amounts.scaled import read_scaled
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.texts import WordT, read_text, read_word
from ledger.errors import (
    InputError,
    LedgerError,
    RefusedError,
    attempt,
    did_you_mean,
    together,
)
from ledger.service.account.codes import first_of_material, resolve_lot, whole_code
from ledger.service.account.state import lot_state
from ledger.service.desk.times import read_day, read_minutes
from ledger.store.engine.connections import Connection
from ledger.store.read import queries

ValueT = TypeVar("ValueT")


COUNTED = frozenset(
    {MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.LABEL, MaterialKind.FILTER}
)
"""Kinds of material for which a bare number means pieces."""


_NOTHING = Quantity(1, Measure.UL, "")
ALL = "all"
"""The word for all that is there of a lot."""


class Words:
    """Reads the words of one entry and keeps what is wrong with them.

    Each reader returns its value, or a stand-in after noting the problem; `done` then raises, so
    no stand-in is ever recorded.
    """

    def __init__(
        self,
        connection: Connection,
        fluid_ounce: str,
        by: str | None,
        today: date = date.min,
    ) -> None:
        """Begin an entry by a person whose house has this fluid ounce and this day."""
        self._connection = connection
        self._fluid_ounce = fluid_ounce
        self._by = by
        self._today = today
        self.errors: list[LedgerError] = []
        self.notes: list[str] = []

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

    def source(self, text: str) -> str:
        """Return the whole code of the lot that is drawn on.

        It is named by its whole code, by its material, or by an ending of its code, in this order:
        for an ending all lots of the book are looked through.
        """
        return self.read(lambda: self._source(text), "")

    def source_or_none(self, text: str | None) -> str | None:
        """Return the whole code of the lot that is drawn on, or None when none is named."""
        return self.source(text) if text else None

    def _source(self, text: str) -> str:
        if whole := whole_code(self._connection, text):
            return whole.opened.code
        code = text.strip().lower()
        if not queries.material(self._connection, code):
            return self._lot_or_hint(text, code)
        lot, is_choice = first_of_material(self._connection, code, self._today)
        until = f", best before {lot.best_before}" if lot.best_before else ""
        chosen = "the first to expire of several lots" if is_choice else "the one lot on hand"
        self.notes.append(f"{code} was taken from {lot.code}{until}, {chosen}.")
        return lot.code

    def _lot_or_hint(self, text: str, code: str) -> str:
        # What is near to it is looked for among all lots, so only where it is no material.
        try:
            return resolve_lot(self._connection, text, self._by)
        except LedgerError as error:
            known = queries.material_codes(self._connection)
            hint = "" if any(map(str.isdigit, code)) else did_you_mean(code, known)
            if hint:
                raise RefusedError(
                    f"{code} is neither a lot nor a material of the book.{hint}",
                    "pottle stock lists the lots that are.",
                ) from error
            raise

    def lot_or_none(self, text: str | None) -> str | None:
        """Return the whole code of a lot, or None when none is named."""
        return self.lot(text) if text else None

    def amount(self, text: str, sort: MaterialKind | None = None) -> Quantity:
        """Return an amount; a bare number counts pieces of counted materials."""
        return self.read(
            lambda: parse_quantity(text, counted=sort in COUNTED, fluid_ounce=self._fluid_ounce),
            _NOTHING,
        )

    def amount_of(self, code: str, text: str, *, counted: bool = False) -> Quantity:
        """Return an amount of a lot, by its whole code; "all" is what the book says is there."""
        if text.strip().casefold() != ALL:
            return self.pieces(text) if counted else self.amount(text)
        # Of a lot that was not found that is all there is to say.
        return self.read(lambda: _all_of(self._connection, code), _NOTHING) if code else _NOTHING

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


def _all_of(connection: Connection, code: str) -> Quantity:
    state = lot_state(connection, code, is_whole=False)
    if state.on_hand <= 0:
        raise RefusedError(
            f"By the book nothing is left of {code}, so all of it is no amount.",
            f"Write how much it was, or count what is there: pottle count {code} AMOUNT.",
        )
    return Quantity(state.on_hand, state.measure, show_exactly(state.on_hand, state.measure))
