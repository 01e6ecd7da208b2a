"""Which map a table goes by: the one that is asked for, a verb's own words, or a shipped form.

Guarantees: a table goes by a part that is named as it, or by the only part whose columns it all
has. Refuses: to take a table by a map that nothing points to.
"""

from collections.abc import Sequence
from functools import cache
from importlib.resources import files

from msgspec import Struct

from ledger.domain.tables.grid import Found, Table
from ledger.domain.tables.option_words import word_of
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import (
    HOW,
    ActMap,
    ColumnMap,
    TableMap,
    folded,
    read_map,
)
from ledger.service.copies.season_files import ORDER, words_of
from ledger.service.copies.season_verbs import VERBS

FORMS = ("batch-sheet", "stall-sheet")
"""Shipped maps of which a table is known by its columns alone."""
SHIPPED = (*FORMS, "german-season", "french-season")
"""The maps that come with pottle."""
UNUSED = ("recorded", "as")
"""Columns of a verb's file that are none of its words."""


class Mapped(Struct, frozen=True):
    """A table with the part of a map that it goes by."""

    table: Table
    """The table."""
    told: TableMap | None
    """How its rows become acts; None: it is left out."""
    map: ColumnMap | None
    """The map of that part; None: its columns are a verb's own words."""
    place: int
    """Which of the parts comes first on one day."""


@cache
def shipped_map(name: str) -> ColumnMap:
    """Return a map that comes with pottle.

    Raises:
        InputError: There is none of that name.
    """
    if name not in SHIPPED:
        raise InputError(
            f"There is no map {name}, neither as a file nor with pottle.",
            f"Name a file, or one of: {', '.join(SHIPPED)}.",
        )
    return read_map(name, shipped_text(name))


def shipped_text(name: str) -> str:
    """Return the text of a map that comes with pottle."""
    return files("ledger").joinpath("maps", f"{name}.toml").read_text(encoding="utf-8")


def mapped(tables: Sequence[Table], asked: ColumnMap | None) -> tuple[list[Mapped], list[Found]]:
    """Return each table with the part it goes by, and what is wrong with their headings."""
    parts: list[Mapped] = []
    found: list[Found] = []
    for table in tables:
        verb = folded(table.name)
        if asked is not None:
            part = _part(asked, table, is_alone=len(tables) == 1)
            place = asked.tables.index(part) if part else 0
            parts.append(Mapped(table, part, asked, place))
        elif verb in VERBS:
            found += _unknown(table, verb)
            place = ORDER.index(verb) if verb in ORDER else len(ORDER)
            parts.append(Mapped(table, map_of_verb(verb, table.head), None, place))
        else:
            parts.append(_of_form(table))
    return parts, found


def map_of_verb(verb: str, head: Sequence[str]) -> TableMap:
    """Return the map of a table that is named after a verb and its columns after its words.

    The options of its command are its words too; of two columns for one word the first counts.
    """
    known = (*HOW, "as", *words_of(VERBS[verb]))
    words: dict[str, str] = {}
    for name in head:
        word = word_of(verb, name, known)
        if word:
            words.setdefault(word, f"{{{name}}}")
    return TableMap(verb, (ActMap(verb, words, frozenset()),))


def _of_form(table: Table) -> Mapped:
    for name in FORMS:
        form = shipped_map(name)
        part = _part(form, table, is_alone=False)
        if part:
            return Mapped(table, part, form, form.tables.index(part))
    return Mapped(table, None, None, 0)


def _part(asked: ColumnMap, table: Table, *, is_alone: bool) -> TableMap | None:
    named = [part for part in asked.tables if folded(part.name) == folded(table.name)]
    heads = {folded(head) for head in table.head}
    fits = [part for part in asked.tables if heads >= {folded(name) for name in part.needed}]
    if named:
        return named[0]
    # One table and one part are meant for each other; what is missing is told by its columns.
    alone = asked.tables if is_alone and len(asked.tables) == 1 else ()
    return next(iter(fits if len(fits) == 1 else alone), None)


def _unknown(table: Table, verb: str) -> list[Found]:
    known = (*HOW, *UNUSED, *sorted(words_of(VERBS[verb])))
    todo = f"Its columns are: {', '.join(known)}."
    return [
        Found(table.file, 1, name, f'It has an unknown column "{name}".', todo)
        for name in table.head
        if name and word_of(verb, name, known) is None
    ]
