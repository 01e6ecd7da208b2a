"""A table of a formula's file, read value by value.

Guarantees: what is wrong with a value is kept with the line on which it stands. Refuses: figures of
which no sum could be made, figures below zero, and ends that are the wrong way round.
"""

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.amounts.scaled import with_article
from ledger.domain.entries.texts import read_text
from ledger.domain.masters.toml import Place
from ledger.errors import InputError, LedgerError
from ledger.service.desk.reader import Words

ValueT = TypeVar("ValueT")
LONGEST_BITS = 63
"""Bits of the longest whole number that TOML promises to read, without its sign."""
LONGEST_DAYS = 100 * 365
"""The longest time that anything keeps."""
TIMES, TEMPS = ("at-least", "at-most"), ("temp-min", "temp-max")
"""Keys of a step that are ends of a time and of a temperature."""
CALLED = {
    **dict.fromkeys(("best-before-days", "days", "opened-days"), "number of days"),
    "passes-min": "number of passes",
    "pore-max": "pore size",
    "brix-min": "sugar content",
    **dict.fromkeys(TEMPS, "temperature"),
    **dict.fromkeys(("yield-min", "yield-max"), "yield"),
    **dict.fromkeys(("abv-min", "abv-max"), "strength"),
}
"""What a number is, where its key does not say it as a maker would."""
PAIRS = {
    "": (("yield-min", "yield-max"), ("abv-min", "abv-max")),
    "step": (TIMES, TEMPS),
}
"""Keys of which the first is never more than the second."""


class Table(Struct, frozen=True):
    """One table of a file, read word by word."""

    words: Words
    """Reads single words and keeps what is wrong."""
    file: str
    """Name of the file."""
    lines: dict[Place, int]
    """Where everything stands."""
    name: str
    """Name of the table; empty for the head."""
    number: int
    """Which of that name it is, from 0."""
    cells: dict[str, Any]
    """Its values."""
    wrong: list[tuple[int, LedgerError]]
    """What is wrong with the file, each with its line."""

    def say(self, key: str, error: LedgerError) -> None:
        """Keep an error about a key, with the line where the key or its table stands."""
        line = self.lines.get((self.name, self.number, key))
        line = line or self.lines.get((self.name, self.number, ""), 1)
        placed = [(f"{self.file} line {line}: {what}", todo) for what, todo in error.problems]
        self.wrong.append((line, type(error).of(placed)))

    def cell(self, key: str) -> str | None:
        """Return a value as text, or None when the key is not there."""
        value = self.cells.get(key)
        if isinstance(value, list | dict):
            self.say(key, InputError(f'"{key}" is not a single value.', 'Write it in "quotes".'))
            return None
        if isinstance(value, int) and value.bit_length() > LONGEST_BITS:
            self.say(key, InputError(f'"{key}" is too long a number.', "Check the number."))
            return None
        return None if value is None else str(value)

    def read(self, key: str, reader: Callable[[str | None], ValueT]) -> ValueT:
        """Read a value; what is wrong with it is kept with its line."""
        before = len(self.words.errors)
        text = self.cell(key)
        value = reader(text)
        wrong = self.words.errors[before:]
        if not wrong and isinstance(value, int) and value < 0 and key not in TEMPS:
            wrong = [InputError(f'"{key}" is below zero.', "Write a number from zero up.")]
        # The words know no lines, so what they keep is taken over here with its line.
        del self.words.errors[before:]
        for error in wrong:
            self.say(key, error)
        return value

    def text(self, key: str) -> str:
        """Return a text that must be given."""
        what = key.replace("-", " ")
        return self.read(key, lambda text: self.words.read(lambda: read_text(text or "", what), ""))

    def text_or_none(self, key: str) -> str | None:
        """Return a text, or None."""
        return self.read(key, lambda text: self.words.text_or_none(text, key))

    def number_of(self, key: str, scale: int, unit: str) -> int | None:
        """Return a number in a smaller unit, or None."""
        what = CALLED.get(key, key.replace("-", " "))
        return self.read(key, lambda text: self.words.scaled(text, scale, unit, what))

    def days(self, key: str) -> int | None:
        """Return a number of days that can be added to a date, or None."""
        days = self.number_of(key, 1, "")
        if days is not None and days > LONGEST_DAYS:
            error = InputError(f'"{key}" is more than a hundred years.', "Check the number.")
            self.say(key, error)
        return days

    def needs(self, key: str) -> None:
        """Keep an error when a key is not there."""
        if key not in self.cells:
            what = f'{with_article(self.name or "formula").capitalize()} has no "{key}".'
            self.say(key, InputError(what, f"Write {key} = and its value."))

    def amount(self, key: str, measure: Measure | None) -> Quantity | None:
        """Return an amount in a measure; None when it is not given."""
        amount = self.read(key, self.words.amount_or_none)
        if amount and amount.written and measure and amount.measure is not measure:
            kind = "volume" if measure is Measure.UL else "weight"
            such = "480mL" if measure is Measure.UL else "4g"
            error = InputError(
                f'{amount.written} is not a {kind}, so it cannot be the "{key}".',
                f"Write a {kind}, such as {such}.",
            )
            self.say(key, error)
        return amount

    def known(self, keys: Sequence[str], where: str) -> None:
        """Keep an error for each key that is not one of `keys`."""
        for key in self.cells:
            if key not in keys:
                todo = f"Choose from: {', '.join(keys)}." if keys else "Leave it out."
                self.say(key, InputError(f'"{key}" is not known in {where}.', todo))

    def in_order(self, values: dict[str, int | None]) -> None:
        """Keep an error for each pair of ends that are the wrong way round."""
        for low, high in PAIRS[self.name]:
            least, most = values.get(low), values.get(high)
            if least is not None and most is not None and least > most:
                what = f'"{low}" {self.cell(low)} is more than "{high}" {self.cell(high)}.'
                self.say(high, InputError(what, "Exchange them, or put right whichever is wrong."))
