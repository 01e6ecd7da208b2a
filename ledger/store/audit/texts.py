"""The text of an entry as its rows say it, written by the database itself.

Guarantees: `fitting` counts, for one kind, the rows from which exactly the stored text follows:
spine, lists, movements, level and opened lot; a cell that says otherwise, or that no entry could
hold, keeps its row from being counted. Refuses: to tell what differs, and to look at moments and
days, which are compared where they are read.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from enum import StrEnum
from functools import cache

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import FACTS
from ledger.domain.entries.canonical import MAX_INTEGER
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.fields import FieldSpec, specs
from ledger.domain.entries.plain import VERSION

OPENERS = frozenset({"receipt", "start", "rinse", "bottle"})
"""Kinds of entry that can open a lot."""


@dataclass(slots=True)
class Sentence:
    """A text with gaps, the expressions that fill them, and what must hold of these."""

    dialect: str
    """Name of the engine it is written for."""
    template: str = ""
    """The text; `%s` is a gap, which an absent value leaves empty."""
    fillings: list[str] = field(default_factory=list)
    """An expression for each gap."""
    conditions: list[str] = field(default_factory=list)
    """Expressions that must be true."""

    def say(self, template: str, *fillings: str) -> None:
        """Add some text."""
        self.template += template
        self.fillings += fillings

    def must(self, *conditions: str) -> None:
        """Add conditions."""
        self.conditions += conditions

    def new(self) -> "Sentence":
        """Begin another for the same engine."""
        return Sentence(self.dialect)

    def text(self) -> str:
        """Return the expression of the whole text."""
        name = "format" if self.dialect == "postgresql" else "printf"
        listed = ", ".join([f"'{self.template}'", *self.fillings])
        return f"{name}({listed})"

    def holds(self) -> str:
        """Return the expression of all conditions together."""
        return " AND ".join(self.conditions) or "1 = 1"

    def quoted(self, cell: str) -> str:
        """Return the expression of a text as JSON; absent where the text is."""
        if self.dialect == "postgresql":
            return f"to_json({cell})"
        return f"CASE WHEN {cell} IS NOT NULL THEN json_quote({cell}) END"

    def joined(self, item: str, order: str) -> str:
        """Return the aggregate that joins texts by commas, in the order of their lines."""
        if self.dialect == "postgresql":
            return f"string_agg({item}, ',' ORDER BY {order})"
        # A list's table is kept in the order of its key, and so are its lines read; were they not,
        # the text would not fit, and the slow comparison would decide.
        return f"group_concat({item}, ',')"


@cache
def fitting(kind: str, dialect: str) -> str:
    """Return the statement that looks at the rows of a kind from `{first}` to `{last}`.

    Its columns: how many rows the kind's table has there, how many of these fit their entry's
    text, and how many of those open a lot.
    """
    said = Sentence(dialect)
    _say_entry(said, kind)
    said.must(f"t.entry_kind = '{kind}'")
    opened, opener = "0", ""
    if kind in OPENERS:
        opened = "COUNT(CASE WHEN o.id = e.seq THEN 1 END)"
        # What corrects an opening entry opens the same lot, which has the number of the first.
        opener = "LEFT JOIN lot o ON o.id = e.stands_for "
    text = said.text().replace("{", "{{").replace("}", "}}")
    return (
        f"SELECT COUNT(*), COUNT(CASE WHEN e.body = {text} AND {said.holds()} THEN 1 END), "
        f'{opened} FROM "{kind}" t '
        f"LEFT JOIN entry e ON e.seq = t.seq AND e.kind = '{kind}' "
        "LEFT JOIN lot ON lot.id = e.lot "
        f"LEFT JOIN level v ON v.seq = t.seq LEFT JOIN lot vl ON vl.id = v.lot {opener}"
        "WHERE t.seq BETWEEN {first} AND {last}"
    )


def _say_entry(said: Sentence, kind: str) -> None:
    """Say a whole entry, its names in the order of the alphabet."""
    said.say("{")
    _say_if(said, "e.by", '"by":%s,', said.quoted("e.by"))
    _say_if(said, "e.corrects", '"corrects":%s,', "e.corrects")
    said.say('"facts":')
    _say_object(said, FACTS[kind], "t")
    said.say(f',"happened_at":"%s","kind":"{kind}"', "e.happened_at")
    _say_if(said, "v.seq", ',"level":{"amount":%s,"lot":%s}', "v.amount", said.quoted("vl.code"))
    _say_if(said, "e.lot", ',"lot":%s', said.quoted("lot.code"))
    said.say(',"offset_min":%s', "e.offset_min")
    if kind in OPENERS:
        opened = ',"opens":{"code":%s,"lot_type":"%s","measure":"%s"}'
        _say_if(said, "o.id", opened, said.quoted("o.code"), "o.lot_type", "o.measure")
        said.must(_among("o.lot_type", LotType), _among("o.measure", Measure))
    said.say(',"origin":"%s"', "e.origin")
    said.say("%s", _postings(said))
    said.say(',"precision":"%s"', "e.precision")
    _say_if(said, "e.reason", ',"reason":%s', said.quoted("e.reason"))
    said.say(',"recorded_at":"%s","seq":%s', "e.recorded_at", "e.seq")
    _say_if(said, "e.sheet", ',"sheet":%s', said.quoted("e.sheet"))
    said.say(f',"stands_for":%s,"v":{VERSION}}}', "e.stands_for")
    said.must(
        _known("e.lot", "lot.id", "t.seq"),
        _known("v.lot", "vl.id", "t.seq"),
        _among("e.origin", Origin),
        _among("e.precision", Precision),
        *(_in_bounds(f"e.{name}") for name in ("offset_min", "corrects", "stands_for")),
    )


def _say_if(said: Sentence, given: str, template: str, *fillings: str) -> None:
    """Say something only where a cell is given."""
    part = said.new()
    part.say(template, *fillings)
    said.say("%s", f"CASE WHEN {given} IS NOT NULL THEN {part.text()} END")


def _say_object(said: Sentence, facts: type, table: str) -> None:
    """Say the fields of a class as JSON, from the cells of a table's row."""
    ordered = sorted(specs(facts), key=lambda spec: spec.name)
    # A field that is left out takes its comma with it: the one behind it if it stands before the
    # first that is always there, else the one before it.
    first_sure = next((i for i, spec in enumerate(ordered) if not _may_lack(spec)), None)
    if first_sure is None:
        part = said.new()
        for spec in ordered:
            _say_field(part, spec, table, before=",")
        said.must(*part.conditions)
        said.say("{%s}", f"substr({part.text()}, 2)" if ordered else "''")
        return
    said.say("{")
    for place, spec in enumerate(ordered):
        if place < first_sure:
            _say_field(said, spec, table, after=",")
        else:
            _say_field(said, spec, table, before="," if place > first_sure else "")
    said.say("}")


def _may_lack(spec: FieldSpec) -> bool:
    return spec.may_lack or spec.is_many


def _say_field(
    said: Sentence, spec: FieldSpec, table: str, before: str = "", after: str = ""
) -> None:
    cell = f"{table}.{spec.name}"
    if spec.is_many:
        said.say("%s", _list(said, spec, table, before, after))
        return
    template, fillings = _value(said, spec, cell)
    template = f'{before}"{spec.name}":{template}{after}'
    if spec.may_lack:
        _say_if(said, cell, template, *fillings)
    else:
        said.say(template, *fillings)


def _value(said: Sentence, spec: FieldSpec, cell: str) -> tuple[str, Sequence[str]]:
    """Return the text of a value with its fillings, and add what must hold of its cells."""
    if spec.shape is Quantity:
        measure, written = f"{cell}_measure", f"{cell}_written"
        absent = f"({cell} IS NULL)"
        said.must(f"{absent} = ({measure} IS NULL)", f"{absent} = ({written} IS NULL)")
        said.must(_in_bounds(cell), _among(measure, Measure))
        shown = '{"amount":%s,"measure":"%s","written":%s}'
        return shown, (cell, measure, said.quoted(written))
    if spec.shape is bool:
        return "%s", (f"CASE {cell} WHEN 1 THEN 'true' WHEN 0 THEN 'false' END",)
    if spec.shape is int:
        said.must(_in_bounds(cell))
        return "%s", (cell,)
    if issubclass(spec.shape, StrEnum):
        said.must(_among(cell, spec.shape))
        return '"%s"', (cell,)
    return "%s", (said.quoted(cell),)


def _list(said: Sentence, spec: FieldSpec, table: str, before: str, after: str) -> str:
    """Return the expression of a field's list, empty where it has no rows."""
    item = said.new()
    _say_object(item, spec.shape, "c")
    of = f'"{_kind_of(spec.shape)}_{spec.name}" c WHERE c.seq = {table}.seq'
    return _listed(item, "c", of, f'{before}"{spec.name}":[', f"]{after}")


def _kind_of(child: type) -> str:
    return next(
        kind
        for kind, facts in FACTS.items()
        if any(spec.is_many and spec.shape is child for spec in specs(facts))
    )


def _postings(said: Sentence) -> str:
    """Return the expression of an entry's movements, empty where it makes none."""
    item = said.new()
    item.say('{"given":%s', "p.given")
    _say_if(item, "p.place", ',"place":"%s"', "p.place")
    _say_if(item, "p.source", ',"source":%s', said.quoted("ps.code"))
    item.say(',"taken":%s', "p.taken")
    _say_if(item, "p.target", ',"target":%s', said.quoted("pt.code"))
    item.say("}")
    item.must(
        _known("p.source", "ps.id", "p.seq"),
        _known("p.target", "pt.id", "p.seq"),
        _among("p.place", Place),
        _in_bounds("p.taken"),
        _in_bounds("p.given"),
    )
    of = (
        "posting p LEFT JOIN lot ps ON ps.id = p.source LEFT JOIN lot pt ON pt.id = p.target "
        "WHERE p.seq = t.seq"
    )
    return _listed(item, "p", of, ',"postings":[', "]")


def _listed(item: Sentence, table: str, of: str, before: str, after: str) -> str:
    """Return the subquery of a list whose lines are numbered from 1 and all hold."""
    line, text = f"{table}.line", item.joined(item.text(), f"{table}.line")
    return (
        "(SELECT CASE WHEN COUNT(*) = 0 THEN '' "
        f"WHEN MIN({line}) = 1 AND MAX({line}) = COUNT(*) "
        f"AND COUNT(CASE WHEN {item.holds()} THEN 1 END) = COUNT(*) "
        # A question mark stands in no canonical text there, so the row does not fit.
        f"THEN '{before}' || {text} || '{after}' ELSE '?' END FROM {of})"
    )


def _known(cell: str, lot: str, seq: str) -> str:
    """Return the condition that a lot spoken of is there, and was opened by then."""
    return f"({cell} IS NULL OR {lot} IS NOT NULL AND {cell} <= {seq})"


def _among(cell: str, words: type[StrEnum]) -> str:
    listed = ", ".join(f"'{word}'" for word in words)
    return f"({cell} IS NULL OR {cell} IN ({listed}))"


def _in_bounds(cell: str) -> str:
    return f"({cell} IS NULL OR {cell} BETWEEN {-MAX_INTEGER} AND {MAX_INTEGER})"


def moments(facts: type) -> Iterator[tuple[str, type]]:
    """Yield the fields of a class that are moments or days, with which of the two they are."""
    for spec in specs(facts):
        if spec.shape in (date, datetime):
            yield spec.name, spec.shape
