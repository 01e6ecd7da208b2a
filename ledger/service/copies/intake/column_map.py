"""A map from a maker's own columns to entries, as a file in TOML says it.

Guarantees: all that is wrong in a map is told at once, before any row is read. Refuses: verbs and
words the book does not know, verbs without a word that they need, and tables without acts.

A map has one part for each table, and in it one line for each act::

    dates = "dmy"
    [words]
    "klar" = "clear"
    [table.Chargen]
    at = "{Datum}"
    lot = "{Charge}"
    acts = [
      {do = "start", code = "{Charge}", product = "{Sorte}", kind = "essence", target = "{ml} mL"},
      {do = "look", grade = "{Klarheit}"},
    ]
"""

import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from ledger.domain.masters.toml import toml_values
from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.numerals import SIGNS
from ledger.domain.tables.templates import columns_of
from ledger.errors import InputError
from ledger.service.copies.intake.row_balance import Balance, read_balance
from ledger.service.copies.season_files import Problem, words_of
from ledger.service.copies.season_verbs import VERBS

HOW = ("at", "by", "because", "origin", "sheet")
"""Words that every verb takes: when, who, why, how it is known."""
OWN = ("do", "if", "once")
"""Words of an act that are for the map itself."""


class ActMap(Struct, frozen=True):
    """How one act is made of a row."""

    verb: str
    """The verb of the book."""
    words: Mapping[str, str]
    """Its words, each as a template; those of the table that it takes among them."""
    tells: frozenset[str]
    """Columns that this act names itself: where all are empty, it was not done."""
    condition: str | None = None
    """A template that must come to something, or "{column} = word"."""
    is_once: bool = False
    """Whether it is done once only for each code or name."""
    is_summed: bool = False
    """Whether that once is of all rows of one code together, amounts and costs summed."""


class TableMap(Struct, frozen=True):
    """How the rows of one table become acts."""

    name: str
    """What the table is called."""
    acts: tuple[ActMap, ...]
    """The acts of a row, in their order."""
    condition: str | None = None
    """Which rows are taken; None: all."""
    balance: Balance | None = None
    """What of a row must add up."""
    optional: frozenset[str] = frozenset()
    """Columns that a table may lack."""

    @property
    def needed(self) -> tuple[str, ...]:
        """The columns that a table must have."""
        return tuple(name for name in self.columns if name not in self.optional)

    @property
    def columns(self) -> tuple[str, ...]:
        """The columns it names, each once."""
        told = [word for act in self.acts for word in act.words.values()]
        conditions = [act.condition for act in self.acts if act.condition]
        whole = [*told, *conditions, *([self.condition] if self.condition else [])]
        added = (self.balance.whole, *self.balance.parts) if self.balance else ()
        return tuple(
            dict.fromkeys((*(name for each in whole for name in columns_of(each)), *added))
        )


class ColumnMap(Struct, frozen=True):
    """How a maker's tables become entries."""

    name: str
    """What the map is called, for people."""
    tables: tuple[TableMap, ...]
    """Its tables, in the order in which acts of one day are taken."""
    words: Mapping[str, Mapping[str, str]]
    """What stands for what where a whole cell says it, by the word it is for; "": everywhere."""
    dates: DayOrder | None
    """In which order days are written."""
    decimal: str | None
    """The sign that parts the decimals."""


def read_map(name: str, text: str) -> ColumnMap:
    """Return the map that a text says.

    Raises:
        InputError: Anything in it is wrong; all of it is told.
    """
    try:
        told = toml_values(text)
    except tomllib.TOMLDecodeError as error:
        raise InputError(
            f"The map {name} cannot be read as TOML: {error}.", "Put right the line it names."
        ) from error
    problems = list(_problems(told))
    tables = told.get("table")
    if not isinstance(tables, dict) or not tables:
        problems.append(("It has no table.", 'Begin one with: [table."NAME"]'))
        tables = {}
    made = [_table(str(key), value, problems) for key, value in tables.items()]
    if problems:
        raise InputError.of([(f"The map {name}: {what}", todo) for what, todo in problems])
    words = _words(told.get("words", {}))
    dates = DayOrder(told["dates"]) if "dates" in told else None
    return ColumnMap(name, tuple(made), words, dates, told.get("decimal"))


def folded(text: str) -> str:
    """Return a head or a word as it is compared: blanks and capitals do not matter.

    >>> folded(" Öl  ML ")
    'öl ml'
    """
    return " ".join(text.split()).casefold()


def _problems(told: Mapping[str, Any]) -> Iterator[Problem]:
    for key in told:
        if key not in ("table", "words", "dates", "decimal"):
            yield f'It has "{key}", which no map has.', "A map has: dates, decimal, words, table."
    if told.get("dates", "dmy") not in list(DayOrder):
        yield "Its dates are in no known order.", f"Write one of: {', '.join(DayOrder)}."
    if told.get("decimal", ",") not in SIGNS:
        yield "Its decimal is no sign that parts decimals.", 'Write decimal = "," or ".".'
    words = told.get("words", {})
    parts = (
        [words, *(part for part in words.values() if isinstance(part, dict))]
        if isinstance(words, dict)
        else []
    )
    plain = [word for part in parts for word in part.values() if not isinstance(word, dict)]
    if not parts or not all(isinstance(word, str) for word in plain):
        yield "Its words are no pairs of texts.", 'Write each as: "klar" = "clear"'


def _words(told: Mapping[str, Any]) -> dict[str, dict[str, str]]:
    apart = {key: value for key, value in told.items() if isinstance(value, dict)}
    everywhere = {key: value for key, value in told.items() if key not in apart}
    return {
        word: {folded(key): str(value) for key, value in part.items()}
        for word, part in {"": everywhere, **apart}.items()
    }


def _table(name: str, told: Any, problems: list[Problem]) -> TableMap:  # noqa: ANN401 - any TOML
    acts = told.get("acts") if isinstance(told, dict) else None
    if not isinstance(acts, list) or not all(isinstance(act, dict) for act in acts) or not acts:
        problems.append((f"The table {name} has no acts.", "Write: acts = [ {do = ...}, ... ]"))
        return TableMap(name, ())
    shared = {key: value for key, value in told.items() if key not in _OF_TABLE}
    known = {
        *HOW,
        "lot",
        *(word for act in acts if act.get("do") in VERBS for word in _takes(act["do"])),
    }
    for key in shared.keys() - known:
        what = f'The table {name} has "{key}", which none of its acts takes.'
        problems.append((what, "Leave it out, or say it in the act that is meant."))
    made = tuple(act for each in acts if (act := _act(name, each, shared, problems)))
    condition = told.get("if")
    if condition is not None and not isinstance(condition, str):
        problems.append((f"The table {name} has an if that is no text.", 'Write if = "{Batch}".'))
    return TableMap(name, made, condition, *_adds_up(name, told, problems))


_OF_TABLE = ("acts", "if", "sum", "optional")
"""Words of a table that are for the map itself."""


def _adds_up(
    name: str, told: Mapping[str, Any], problems: list[Problem]
) -> tuple[Balance | None, frozenset[str]]:
    """Return what of a row must add up, and the columns that a table may lack."""
    text, columns = told.get("sum"), told.get("optional", [])
    balance = read_balance(text) if isinstance(text, str) else None
    if text is not None and balance is None:
        what = f"The table {name} has a sum that cannot be read."
        problems.append((what, 'Write it as: sum = "{out} = {sold} + {back}"'))
    if not isinstance(columns, list) or not all(isinstance(column, str) for column in columns):
        what = f"The table {name} has an optional that is no list of columns."
        problems.append((what, 'Write it as: optional = ["tasted", "lost"]'))
        columns = []
    return balance, frozenset(columns)


def _act(
    table: str, told: Mapping[str, Any], shared: Mapping[str, Any], problems: list[Problem]
) -> ActMap | None:
    verb, place = str(told.get("do")), f"The table {table}"
    if verb not in VERBS:
        problems.append((f'{place} has the act "{verb}", which is no verb of the book.', _VERBS))
        return None
    own = {key: value for key, value in told.items() if key not in OWN}
    words = {key: value for key, value in shared.items() if key in (*HOW, *_takes(verb))} | own
    before = len(problems)
    for key, value in words.items():
        if key not in (*HOW, *_takes(verb)):
            what = f'{place}, act {verb}, has an unknown word "{key}".'
            problems.append((what, f"It takes: {', '.join((*HOW, *sorted(_takes(verb))))}."))
        elif not isinstance(value, str):
            problems.append((f"{place}, act {verb}: {key} is no text.", f'Write {key} = "..."'))
        else:
            problems.extend(_wrong_template(f"{place}, act {verb}", value))
    for key, is_needed in _takes(verb).items():
        if is_needed and key not in words:
            what = f"{place}, act {verb}, does not say the {key}."
            problems.append((what, f'Add {key} = "{{COLUMN}}".'))
    if len(problems) > before:
        return None
    base = {name for value in shared.values() for name in columns_of(str(value))}
    # When and by whom is said of an act that was done; it does not say that it was. Of what is
    # done once the code only tells which it is.
    silent = (*HOW, "code") if told.get("once") else HOW
    says = {name for word, value in own.items() if word not in silent for name in columns_of(value)}
    tells = says - base
    return ActMap(verb, words, frozenset(tells), told.get("if"), *_once(told.get("once")))


def _once(told: object) -> tuple[bool, bool]:
    """Return whether an act is done once for each code, and whether of all its rows together."""
    return bool(told), told == "sum"


_VERBS = f"Write one of: {', '.join(VERBS)}."


def _takes(verb: str) -> dict[str, bool]:
    return words_of(VERBS[verb])


def _wrong_template(place: str, template: str) -> Iterator[Problem]:
    try:
        columns_of(template)
    except InputError as error:
        yield f"{place}: {error.what}", error.todo
