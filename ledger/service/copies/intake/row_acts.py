"""Rows of tables as acts: what verb, with what words, from where.

Guarantees: words come out as the book reads them: days year first, numbers with a point; all that
cannot be read so is told with its column. A code that the book has no letters for is kept in those
it has. Refuses: to guess; what has two readings is found.
"""

import hashlib
import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from ledger.domain.entries.canonical import canonical_text
from ledger.domain.tables.currency_marks import parted, plain_money
from ledger.domain.tables.days import DayOrder, plain_day
from ledger.domain.tables.grid import Found, Line, Table
from ledger.domain.tables.numerals import decimal_sign, plain_number
from ledger.domain.tables.templates import columns_of, filled
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import ActMap, TableMap, folded
from ledger.service.copies.intake.heading_words import kept_code, kept_name, plain_unit
from ledger.service.copies.intake.row_balance import off_balance
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS

DAYS = frozenset({"at", "started", "until", "best_before"})
"""Words that are days, or times of a day."""
NUMBERS = frozenset(
    {
        *("amount", "target", "volume", "volume_in", "volume_out", "drawn", "heel", "waste"),
        *("cost", "duty", "density", "density_temp", "abv", "temp", "ntu", "reading", "pack"),
        *("fill_check", "labour", "minutes", "precoat", "first_runnings", "in_cake", "vacuum"),
        *("used", "printed", "spoiled", "shaken", "triturated", "age", "pore", "hour"),
    }
)
"""Words that are numbers, with or without a unit."""
MONEY = frozenset({"cost", "duty"})
"""Words of these that are money."""
CODES = frozenset({"code", "lot", "source", "bottles", "caps", "cake_of", "paper", "wetted_with"})
"""Words that are codes of lots."""
OPENS = frozenset({"receive", "start", "bottle", "rinse"})
"""Verbs of which the code is that of a lot."""
_MOMENT = re.compile(r"\d{4}-\d{2}-\d{2}(?: \d{2}:\d{2})?", re.ASCII)
HASH_LETTERS = 16
"""How many letters of a row's hash are kept: two rows of a million agree once in 10^7 books."""


class Act(Struct, frozen=True):
    """One act that a row tells of."""

    verb: str
    """The verb of the book."""
    words: Mapping[str, str]
    """Its words, as the book reads them."""
    columns: Mapping[str, tuple[str, ...]]
    """Of each word, the columns that it came from."""
    file: str
    """Name of its file."""
    line: int
    """Its line there."""
    row: str
    """The hash of its row, by which it is known again."""
    turn: tuple[str, int, int, int]
    """When it takes its turn: by its moment, then by table, line and place in the row."""
    is_once: bool = False
    """Whether it is done once only for each code or name."""
    is_summed: bool = False
    """Whether that once is of all rows of its code together."""
    is_broken: bool = False
    """Whether a word of it could not be read, so that it cannot be tried."""

    def found(self, what: str, todo: str) -> Found:
        """Return something wrong with it, in the column of the word that it quotes."""
        quoted = [word for word, value in self.words.items() if f'"{value}"' in what]
        columns = [name for word in quoted for name in self.columns.get(word, ())]
        return Found(self.file, self.line, next(iter(columns), None), what, todo)


class Reading(Struct, frozen=True):
    """How the cells of one table are read."""

    dates: DayOrder | None
    """In which order days are written."""
    decimal: str | None
    """The sign that parts the decimals, as told or as the cells show it."""
    words: Mapping[str, Mapping[str, str]]
    """What stands for what, by the word it is for."""
    currency: str = ""
    """The currency of the book."""
    at: str | None = None
    """When it happened, where a row does not say."""
    folder: str = ""
    """Where files that rows name are looked for."""

    def meant(self, text: str, word: str = "") -> str | None:
        """Return what a cell stands for in a word of the book, or None where the map says nothing.

        >>> Reading(None, None, {"": {"klar": "clear"}, "kind": {"öl": "oil"}}).meant("Klar")
        'clear'
        """
        own, everywhere = self.words.get(word, {}), self.words.get("", {})
        return own.get(folded(text), everywhere.get(folded(text)))


def acts_of_table(
    table: Table, told: TableMap, reading: Reading, place: int
) -> tuple[list[Act], list[Found], int]:
    """Return the acts that a table's rows tell of, what is wrong, and how many rows were left out.

    Args:
        table: The table.
        told: How its rows become acts.
        reading: How its cells are read.
        place: Which of the tables it is: acts of one moment are taken in that order.
    """
    heads = {folded(head): head for head in table.head if head}
    missing = [name for name in told.needed if folded(name) not in heads]
    if missing:
        return [], list(_missing(table, missing)), 0
    acts: list[Act] = []
    found: list[Found] = []
    seen: Counter[str] = Counter()
    left_out = 0
    for line in table.lines:
        cell = _cells(table, line, heads)
        if told.condition and not _holds(told.condition, cell, reading):
            left_out += 1
            continue
        if told.balance:
            found += off_balance(table, line, told.balance, cell, reading.decimal)
        row = _hash(told, cell, seen)
        for number, act in enumerate(told.acts):
            if _is_told(act, cell, reading):
                turn = (place, line.number, number)
                acts.append(_act(table, line, act, cell, reading, row, turn, found))
    return acts, found, left_out


def shown_sign(table: Table, told: TableMap) -> str | None:
    """Return the decimal sign that the cells of a table show, in its columns of numbers."""
    heads = {folded(head): head for head in table.head if head}
    columns = {
        folded(name)
        for act in told.acts
        for word in act.words.keys() & NUMBERS
        for name in columns_of(act.words[word])
    }
    places = [table.head.index(heads[name]) for name in sorted(columns) if name in heads]
    cells = (line.cells[place] for line in table.lines for place in places)
    return decimal_sign(parted(cell)[0] for cell in cells)


def _missing(table: Table, names: Iterable[str]) -> Iterator[Found]:
    for name in names:
        what = f'The map names the column "{name}", which the heading does not have.'
        todo = f"It has: {', '.join(filter(None, table.head))}."
        yield Found(table.file, None, None, what, todo)


def _cells(table: Table, line: Line, heads: Mapping[str, str]) -> Callable[[str], str]:
    return lambda name: table.cell(line, heads[folded(name)]) if folded(name) in heads else ""


def _hash(told: TableMap, cell: Callable[[str], str], seen: Counter[str]) -> str:
    """Return a row's hash: of what it says under the columns of the map, wherever it stands."""
    says = {name: cell(name) for name in told.columns if cell(name)}
    plain = [told.name, *(f"{name}={says[name]}" for name in sorted(says))]
    text = canonical_text({"row": plain})
    seen[text] += 1
    # The same words twice in a table are two rows: two sales of a day to one customer.
    whole = canonical_text({"row": plain, "time": seen[text]})
    return hashlib.sha256(whole.encode()).hexdigest()[:HASH_LETTERS]


def _holds(condition: str, cell: Callable[[str], str], reading: Reading) -> bool:
    """Tell whether a row is meant: by the word in its cell, or by what that stands for."""
    left, is_pair, right = condition.partition(" = ")

    def meant(name: str) -> str:
        return reading.meant(cell(name)) or cell(name)

    told = {folded(filled(left, said) or "") for said in (cell, meant)}
    return folded(right) in told if is_pair else any(told)


def _is_told(act: ActMap, cell: Callable[[str], str], reading: Reading) -> bool:
    if act.condition and not _holds(act.condition, cell, reading):
        return False
    return not act.tells or any(cell(name) for name in act.tells)


def _act(
    table: Table,
    line: Line,
    told: ActMap,
    cell: Callable[[str], str],
    reading: Reading,
    row: str,
    turn: tuple[int, int, int],
    found: list[Found],
) -> Act:
    """Return the act, broken where a word cannot be read; what is wrong joins `found`."""
    words: dict[str, str] = {}
    before = len(found)
    for word, template in told.words.items():
        try:
            value = _value(told.verb, word, template, cell, reading)
        except InputError as error:
            column = next(iter(columns_of(template)), None)
            found += [Found(table.file, line.number, column, *each) for each in error.problems]
            continue
        if value:
            words[word] = value
    columns = {word: columns_of(told.words[word]) for word in told.words}
    words.setdefault("at", reading.at or "")
    found += _lacking(table, line, told, words, columns, found[before:])
    return Act(
        told.verb,
        words,
        columns,
        table.file,
        line.number,
        row,
        # A day alone counts as its last minute, after what has an hour on it.
        ((words["at"] + " 23:59")[:16], *turn),
        told.is_once,
        told.is_summed,
        is_broken=len(found) > before,
    )


def _value(
    verb: str, word: str, template: str, cell: Callable[[str], str], reading: Reading
) -> str | None:
    def meant(name: str) -> str:
        text = cell(name)
        told = reading.meant(text, word)
        if told is not None:
            return told
        if word in MONEY and text:
            return plain_money(text, reading.decimal, reading.currency, name)
        return plain_number(text, reading.decimal) if word in NUMBERS and text else text

    value = filled(template, meant)
    if value and word in NUMBERS:
        value = plain_unit(value)
    if value and word == "file":
        return f"{reading.folder}/{value}"
    if value and word in DAYS:
        return plain_day(value, reading.dates)
    if value and (word == "material" or (word, verb) == ("code", "material")):
        return kept_name(value)
    if value and word in CODES and (word != "code" or verb in OPENS):
        return kept_code(value)
    return value


def _lacking(
    table: Table,
    line: Line,
    told: ActMap,
    words: Mapping[str, str],
    columns: Mapping[str, tuple[str, ...]],
    before: Sequence[Found],
) -> Iterator[Found]:
    unread = {each.column for each in before}
    needed = ["at", *(word for word, must in words_of(VERBS[told.verb]).items() if must)]
    for word in needed:
        column = next(iter(columns.get(word, ())), None)
        if words.get(word) or (column and column in unread):
            continue
        if column is None and word == "at":
            what, todo = "It does not say when it happened.", "Add a column, or give --at."
        else:
            called = {"at": "time"}.get(word, word.replace("_", " "))
            what = f"It is empty, and {told.verb} needs it as the {called}."
            todo = "Write it there."
        yield Found(table.file, line.number, column, what, todo)
    at = words.get("at", "")
    if at and not _MOMENT.fullmatch(at):
        what = f'"{at}" is no day and no time.'
        yield Found(
            table.file,
            line.number,
            next(iter(columns.get("at", ())), None),
            what,
            "Write it as 2026-02-03 or 2026-02-03 10:15.",
        )
