"""Reading the files of a season: one CSV file a verb, one row an entry.

Guarantees: all that is wrong in all files is told at once, each with its file and line; rows come
out in the order in which they were typed. Refuses: unknown verbs and columns, rows without a time
or a word that their verb needs, or of another width than their heading, and nicknames that no
earlier row gives.
"""

import csv
import inspect
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from datetime import date, datetime, time
from io import StringIO
from pathlib import Path

from msgspec import Struct

from ledger.errors import InputError
from ledger.service.desk.times import FIRST_YEAR, LAST_YEAR
from ledger.text_files import bytes_of

Verbs = Mapping[str, Callable[..., object]]
"""The verbs of the book by their names."""
Problem = tuple[str, str]
"""What is wrong, and what to do."""

MOST_BYTES = 50_000_000
"""How large a file of a season may be."""
_DAY = len("2026-02-03")
HOW = ("at", "recorded", "by", "as", "because", "origin", "sheet")
"""Columns that every file may have."""
ENTRIES = frozenset({"entry", "complaint"})
"""Columns in which a nickname stands for the number of an entry."""
REFERENCES = frozenset({"lot", "source", "bottles", "caps", "cake_of"}) | ENTRIES
"""Columns in which a nickname stands for a lot or an entry."""
EITHER = " // "
"""Stands between what a cell says for the levels of a planned jar: oil-1: clear // oil-2: hazy."""
MAY_NAME = frozenset({"tries"})
"""Columns in which a nickname may stand for a lot, and other words for themselves."""
FILES = frozenset({"file"})
"""Columns that name a file, by its place in the season's folder."""
ORDER = (
    *("house", "person", "party", "material", "limit", "formula", "withdraw", "receive", "start"),
    *("add", "rest", "filter", "rinse", "decant", "measure", "foretell", "look", "makeup"),
    *("finish", "bottle", "labels", "cases", "judge", "send", "complain", "answer", "recall"),
    *("contact", "close", "check", "plan", "jars", "clean", "equipment", "count", "note"),
    *("correct", "strike", "forget"),
)
"""Verbs in the order in which rows of one minute are taken; others come last."""


class Row(Struct, frozen=True):
    """One entry to be made."""

    file: str
    """Name of its file."""
    line: int
    """Its line there, 1 for the heading."""
    verb: str
    """The verb."""
    cells: Mapping[str, str]
    """What is written in it, by column; empty cells are left out."""
    typed: datetime
    """When it was typed, on the house's clock."""

    @property
    def place(self) -> str:
        """Where it stands, for people."""
        return f"{self.file} line {self.line}"

    @property
    def nickname(self) -> str | None:
        """The nickname it gives."""
        return self.cells.get("as")


def read_rows(folder: Path, verbs: Verbs) -> tuple[tuple[Row, ...], list[Problem]]:
    """Return all rows in the order in which they were typed, and all that is wrong.

    Nicknames are only looked into when every row could be read, as a lost row may give them.
    """
    rows_read: list[Row | None] = []
    problems: list[Problem] = []
    # Sorted, since a folder has no order of its own and the book must come out the same.
    for path in sorted(folder.glob("*.csv")):
        if path.stem in verbs:
            rows_read += _read_file(path, verbs[path.stem], problems)
        else:
            what = f"{path.name} is named after no verb of the book."
            problems.append((what, f"Name it after one of: {', '.join(sorted(verbs))}."))
    rows = tuple(sorted((row for row in rows_read if row), key=_turn))
    problems += [] if None in rows_read else _nickname_problems(rows)
    return rows, problems


def words_of(verb: Callable[..., object]) -> dict[str, bool]:
    """Return the names of the words that a verb takes, and whether it needs them."""
    parameters = inspect.signature(verb).parameters.values()
    own = (word for word in parameters if word.kind is word.KEYWORD_ONLY)
    return {word.name: word.default is word.empty for word in own}


def _turn(row: Row) -> tuple[datetime, int, int]:
    place = ORDER.index(row.verb) if row.verb in ORDER else len(ORDER)
    return row.typed, place, row.line


def _read_file(
    path: Path, verb: Callable[..., object], problems: list[Problem]
) -> list[Row | None]:
    words = words_of(verb)
    try:
        lines = list(_lines(path))
    except InputError as error:
        problems += error.problems
        return [None]
    except (csv.Error, UnicodeDecodeError) as error:
        what = f"{path.name} cannot be read as CSV: {error}."
        problems.append((what, "Save it again as CSV in UTF-8."))
        return [None]
    heading = lines[0][1] if lines else []
    problems += _heading_problems(path.name, heading, words)
    needed = [name for name in words if words[name]]
    return [_row(path, heading, needed, line, cells, problems) for line, cells in lines[1:]]


def _row(
    path: Path,
    heading: Sequence[str],
    needed: Sequence[str],
    line: int,
    cells: Sequence[str],
    problems: list[Problem],
) -> Row | None:
    place = f"{path.name} line {line}"
    if len(cells) != len(heading):
        what = f"{place} has {len(cells)} cells, but the heading has {len(heading)}."
        problems.append((what, "Put text that holds a comma in double quotes."))
    elif "at" in heading:
        told = {name: cell for name, cell in zip(heading, cells, strict=True) if cell}
        for name in needed:
            if name not in told:
                what = f"{place} has nothing in the column {name}."
                problems.append((what, "Write it there; no entry of this kind is without it."))
        told |= {name: str(path.parent / told[name]) for name in FILES & told.keys()}
        typed = _typed(place, told, problems)
        return Row(path.name, line, path.stem, told, typed) if typed else None
    return None


def _lines(path: Path) -> Iterator[tuple[int, list[str]]]:
    # A spreadsheet may put a mark before its UTF-8.
    text = bytes_of(path, MOST_BYTES).decode("utf-8-sig")
    reader = csv.reader(StringIO(text, newline=""), strict=True)
    for cells in reader:
        if cells:
            yield reader.line_num, [cell.strip() for cell in cells]


def _heading_problems(
    file: str, heading: Sequence[str], words: Collection[str]
) -> Iterator[Problem]:
    if "at" not in heading:
        yield f"{file} line 1 has no column at.", "Add it, with when each entry happened."
    for name in heading:
        if name not in words and name not in HOW:
            what = f'{file} line 1 has an unknown column "{name}".'
            yield what, f"Its columns are: {', '.join((*HOW, *sorted(words)))}."
    for name in sorted({name for name in heading if heading.count(name) > 1}):
        yield f'{file} line 1 has the column "{name}" more than once.', "Keep one of them."


def _typed(place: str, cells: Mapping[str, str], problems: list[Problem]) -> datetime | None:
    """Return when a row was typed, or None when its times are wrong."""
    happened = _moment(place, cells, "at", problems)
    if "recorded" not in cells:
        return happened
    typed = _moment(place, cells, "recorded", problems)
    if happened and typed and typed < happened:
        # A day alone counts as its last minute: what was typed earlier on it is not before it.
        is_day_alone = len(cells["at"]) == _DAY
        if not is_day_alone or typed.date() < happened.date():
            what = f"{place} was recorded on {typed:%Y-%m-%d %H:%M}, before it happened."
            problems.append((what, "Put right whichever time is wrong."))
    return typed if happened else None


def _moment(
    place: str, cells: Mapping[str, str], column: str, problems: list[Problem]
) -> datetime | None:
    """Return a time of a row; a day alone counts as its last minute."""
    text = cells.get(column, "")
    try:
        return _of_our_age(_read_moment(text))
    except ValueError:
        told = f'"{text}", which is no time,' if text else "nothing"
        what = f"{place} has {told} in the column {column}."
        problems.append((what, "Write it as 2026-02-03 10:15, or a day as 2026-02-03."))
        return None


def _read_moment(text: str) -> datetime:
    if len(text) == _DAY:
        return datetime.combine(date.fromisoformat(text), time(23, 59))
    return datetime.strptime(text, "%Y-%m-%d %H:%M")  # noqa: DTZ007 - the house's clock


def _of_our_age(moment: datetime) -> datetime:
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise ValueError("There is no reckoning with such a year.")
    return moment


def either(cell: str) -> dict[str, str]:
    """Return what a cell says for each level of a planned jar; empty where it says one thing.

    >>> either("oil-1: clear // oil-2: hazy"), either("oil-1 // oil-2"), either("clear")
    ({'oil-1': 'clear', 'oil-2': 'hazy'}, {'oil-1': 'oil-1', 'oil-2': 'oil-2'}, {})
    """
    if EITHER not in cell:
        return {}
    parts = (part.partition(": ") for part in cell.split(EITHER))
    return {level.strip(): (told or level).strip() for level, _, told in parts}


def _names_in(row: Row) -> Iterator[tuple[str, str]]:
    """Yield every nickname that a row stands on, with its column."""
    for column in sorted(REFERENCES & row.cells.keys()):
        cell = row.cells[column]
        for name in either(cell).values() or (cell,):
            yield column, name


def _nickname_problems(rows: Sequence[Row]) -> Iterator[Problem]:
    given: dict[str, Row] = {}
    for row in rows:
        for column, name in _names_in(row):
            if name not in given and name.rpartition("/")[0] not in given:
                what = f'{row.place} has "{name}" in the column {column}, which no earlier row'
                yield f"{what} gives as its nickname.", "Put right the nickname or the times."
        if row.nickname in given:
            what = f'{row.place} gives the nickname "{row.nickname}", which'
            yield f"{what} {given[row.nickname].place} has given already.", "Choose another."
        elif row.nickname:
            given[row.nickname] = row
