"""A season: a maker's book as data, and its player.

Guarantees: the same files make the same book, entry by entry and time by time; nothing is left to
chance or to today's clock. Refuses: files with anything wrong in them, before the first entry.
"""

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from hashlib import sha256
from itertools import count
from pathlib import Path
from zoneinfo import ZoneInfo

from msgspec import Struct, field
from msgspec.structs import replace

from ledger.domain.entries import Start
from ledger.errors import InputError, LedgerError
from ledger.service.copies.season_files import (
    EITHER,
    ENTRIES,
    FILES,
    HOW,
    MAY_NAME,
    REFERENCES,
    Problem,
    Row,
    either,
    read_rows,
)
from ledger.service.copies.season_house import SeasonHouse, Story, read_house, story_problems
from ledger.service.desk.book import Book, How, Recorded

_DAY = re.compile(r"\b\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])\b")
"""A day as every file of a season writes it."""
TYPING = timedelta(minutes=1)
"""How long an entry takes to type."""
ABOUT_AN_ENTRY = frozenset({"correct", "strike"})
"""Verbs whose time is that of typing: a time told with a correction moves the corrected entry."""


class Season(Struct, frozen=True):
    """A season that has been read."""

    house: SeasonHouse
    """Whose book it is."""
    story: Story
    """What it tells of."""
    rows: tuple[Row, ...]
    """Its entries in the order in which they were typed."""


@dataclass(slots=True)
class SeasonClock:
    """A clock that stands where the season stands; give it to the book that is played into."""

    now: datetime = datetime(1970, 1, 1, tzinfo=UTC)
    """The moment it shows."""

    def __call__(self) -> datetime:
        """Return the moment it shows."""
        return self.now


class Played(Struct, frozen=True):
    """What a played season has become."""

    codes: dict[str, str] = field(default_factory=dict)
    """Code of the lot of each nickname that opened one."""
    entries: dict[str, int] = field(default_factory=dict)
    """Number of the entry of each nickname."""
    levels: dict[str, frozenset[str]] = field(default_factory=dict)
    """What a jar of a planned trial was drawn to, by its nickname: jars/1."""


def read_season(folder: Path) -> Season:
    """Read a season's house, story and rows.

    Raises:
        InputError: Anything in its files is wrong; all of it is told.
    """
    from ledger.service.copies.season_verbs import VERBS

    house, story, problems = read_house(folder)
    rows, wrong_rows = read_rows(folder, VERBS)
    problems += wrong_rows
    problems += story_problems(story, {row.nickname for row in rows})
    if problems or house is None or story is None:
        raise InputError.of(problems)
    return Season(house, story, rows)


def moved(season: Season, until: date) -> Season:
    """Return a season with all its days moved by whole weeks, so that it ends by a day.

    Days of the week stay as they are. Whatever is written as 2026-02-03 is a day, in any cell.

    Args:
        season: The season.
        until: The day, at most six days after the moved season's last entry.
    """
    weeks = (until - season.rows[-1].typed.date()).days // 7
    rows = (_moved_row(row, timedelta(weeks=weeks)) for row in season.rows)
    return replace(season, rows=tuple(rows)) if weeks else season


def _moved_row(row: Row, by: timedelta) -> Row:
    # The way to a file may lead through a folder that is named after a day.
    cells = {
        name: cell if name in FILES else _DAY.sub(lambda told: _later(told[0], by), cell)
        for name, cell in row.cells.items()
    }
    return replace(row, cells=cells, typed=row.typed + by)


def _later(day: str, by: timedelta) -> str:
    return f"{date.fromisoformat(day) + by}"


def start_time(season: Season) -> datetime:
    """Return a moment just before the season's first entry, for the book to be made at."""
    zone = ZoneInfo(season.house.time_zone)
    return _instant(season.rows[0].typed, zone) - TYPING


def play(
    season: Season,
    book: Book,
    clock: SeasonClock,
    on_row: Callable[[int, int], None] = lambda _done, _total: None,
) -> Played:
    """Make every entry of a season in a book, each at its time.

    Args:
        season: What to play.
        book: The book, with its house in it and `clock` as its clock.
        clock: The clock that is moved on.
        on_row: Called after each entry with how many are made and how many there are.

    Raises:
        LedgerError: An entry is not taken by the book; its file and line are named.
    """
    from ledger.service.copies.season_verbs import VERBS

    played, kept, number = Played(), book.salt, count(1)
    zone = ZoneInfo(season.house.time_zone)
    # Nobody's secret: its people are invented, and the same files make the same book.
    book.salt = lambda: sha256(f"season {next(number)}".encode()).digest()
    try:
        for done, row in enumerate(season.rows, 1):
            clock.now = _instant(row.typed, zone) + TYPING
            _play_row(row, VERBS[row.verb], book, played)
            on_row(done, len(season.rows))
    finally:
        book.salt = kept
    return played


def _play_row(row: Row, verb: Callable[..., Recorded], book: Book, played: Played) -> None:
    try:
        recorded = verb(book, _how(row), **_words(row, played))
    except LedgerError as error:
        raise type(error).of(_placed(row, error)) from error
    _remember(row, recorded, played)


def _instant(typed: datetime, zone: ZoneInfo) -> datetime:
    return typed.replace(tzinfo=zone).astimezone(UTC)


def _how(row: Row) -> How:
    told = {name: row.cells.get(name) for name in ("by", "because", "origin", "sheet")}
    return How(at=None if row.verb in ABOUT_AN_ENTRY else row.cells["at"], **told)


def _words(row: Row, played: Played) -> dict[str, str]:
    return {
        name: _meant(row, name, cell, played) for name, cell in row.cells.items() if name not in HOW
    }


def _meant(row: Row, column: str, cell: str, played: Played) -> str:
    levels = played.levels.get(row.cells.get("lot", ""))
    if levels and EITHER in cell:
        cell = _drawn(cell, levels, played)
    if column in ENTRIES:
        return str(played.entries[cell])
    if column in MAY_NAME:
        return played.codes.get(cell, cell)
    if column not in REFERENCES:
        return cell
    if cell not in played.codes:
        raise InputError(
            f'The column {column} has "{cell}", which is the nickname of a row that opens no lot.',
            "Name a lot there.",
        )
    return played.codes[cell]


def _drawn(cell: str, levels: Collection[str], played: Played) -> str:
    """Return what a cell says for the level that the jar of its row was drawn to."""
    for level, told in either(cell).items():
        if played.codes.get(level, level) in levels:
            return told
    raise InputError(
        f'"{cell}" says nothing for the levels of that jar: {", ".join(sorted(levels))}.',
        "Name one of them before each //, with what it comes to: LEVEL: WORDS",
    )


def _placed(row: Row, error: LedgerError) -> list[Problem]:
    (what, todo), *others = error.problems
    return [(f"{row.place}: {what}", todo), *others]


def _remember(row: Row, recorded: Recorded, played: Played) -> None:
    if row.nickname:
        played.entries[row.nickname] = recorded.seq
        if recorded.code:
            played.codes[row.nickname] = recorded.code
        # The lots that one act opens are numbered: jars/1, jars/2 and so on.
        for number, each in enumerate((recorded, *recorded.others), 1):
            if recorded.others and each.code:
                _remember_jar(f"{row.nickname}/{number}", each, played)


def _remember_jar(nickname: str, opened: Recorded, played: Played) -> None:
    played.codes[nickname] = opened.code or ""
    facts = opened.entry.facts
    if isinstance(facts, Start):
        played.levels[nickname] = frozenset(factor.planned for factor in facts.factors)
