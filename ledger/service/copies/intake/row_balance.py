"""What of a row must add up, and where it does not.

Guarantees: a difference is found with its line and by how much; a row of which nothing stands on
the right yet is not done and is not held to it. Refuses: to put a difference anywhere.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from ledger.domain.tables.grid import Found, Line, Table
from ledger.domain.tables.numerals import plain_number
from ledger.errors import InputError, visible

_SUM = re.compile(r"\{([^{}]+)\} = (\{[^{}]+\}(?: \+ \{[^{}]+\})+)")

# No fraction and no exponent: of these a few letters may come to more than a memory holds.
_NUMBER = re.compile(r"[+-]?\d{1,15}(?:\.\d{1,6})?", re.ASCII)


class Balance(Struct, frozen=True):
    """A column that is the sum of others."""

    whole: str
    """The column."""
    parts: tuple[str, ...]
    """The others; what is empty in them, or is no column of a table, counts as nothing."""


def read_balance(text: str) -> Balance | None:
    """Return what must add up, or None where it is not said as it should be.

    >>> read_balance("{out} = {sold} + {back}")
    Balance(whole='out', parts=('sold', 'back'))
    """
    told = _SUM.fullmatch(" ".join(text.split()))
    if told is None:
        return None
    return Balance(told[1].strip(), tuple(re.findall(r"\{ *([^{}]+?) *\}", told[2])))


def off_balance(
    table: Table, line: Line, told: Balance, cell: Callable[[str], str], sign: str | None
) -> Iterator[Found]:
    """Yield what is wrong with the sum of a row.

    Args:
        table: Its table.
        line: Where it stands.
        told: What must add up.
        cell: The row's cell in a column.
        sign: The sign that parts the decimals.
    """
    shown = [name for name in told.parts if cell(name)]
    if not shown or not cell(told.whole):
        return
    numbers: dict[str, Fraction] = {}
    for name in (told.whole, *shown):
        try:
            numbers[name] = _number(cell(name), sign)
        except InputError as error:
            yield Found(table.file, line.number, name, error.what, error.todo)
    if len(numbers) == len(shown) + 1:
        yield from _difference(table, line, told, numbers)


def _number(text: str, sign: str | None) -> Fraction:
    plain = plain_number(text, sign)
    if not _NUMBER.fullmatch(plain):
        raise InputError(
            f'"{visible(text)}" is no number, and the row must add up.', "Write the number alone."
        )
    return Fraction(plain)


def _difference(
    table: Table, line: Line, told: Balance, numbers: dict[str, Fraction]
) -> Iterator[Found]:
    whole = numbers[told.whole]
    parts = {name: number for name, number in numbers.items() if name != told.whole}
    off = whole - sum(parts.values())
    if not off:
        return
    added = " and ".join(f"{name} {_plain(number)}" for name, number in parts.items())
    how = f"{_plain(off)} less" if off > 0 else f"{_plain(-off)} more"
    what = f"{added} come to {how} than {told.whole}, {_plain(whole)}."
    yield Found(table.file, line.number, told.whole, what, _todo(told.parts))


def _plain(number: Fraction) -> str:
    return f"{float(number):.3f}".rstrip("0").rstrip(".")


def _todo(parts: Sequence[str]) -> str:
    return f"Count again, or write the rest under {', '.join(parts[:-1])} or {parts[-1]}."
