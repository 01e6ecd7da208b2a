"""The names of tables and columns, without the machinery that makes them.

Guarantees: the same names in the same order as the tables of the book, which a test holds them to;
every entry is put in by these names alone, so that a command that records loads no
tables. Refuses: to know types, references and guards.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import FACTS
from ledger.domain.entries.fields import FieldSpec, specs

DETAIL_FIELDS = ("name", "role", "phone", "email", "address", "words", "gln")
"""What may be told beside the entry of a person or a party."""
_FIXED: dict[str, tuple[str, ...]] = {
    "lot": ("id", "code", "lot_type", "measure"),
    "person_key": ("initials", "seq"),
    "material_key": ("code", "seq"),
    "entry": (
        "seq", "kind", "lot", "happened_at", "offset_min", "precision", "recorded_at", "origin",
        "sheet", "by", "corrects", "stands_for", "reason", "body", "leaf",
    ),
    "posting": ("seq", "line", "source", "target", "place", "taken", "given"),
    "level": ("seq", "lot", "amount"),
    "tree": ("height", "place", "hash"),
    "details": ("seq", "salt", *DETAIL_FIELDS),
}  # fmt: skip
LISTS: dict[str, tuple[tuple[str, str], ...]] = {
    kind: tuple((spec.name, f"{kind}_{spec.name}") for spec in specs(facts) if spec.is_many)
    for kind, facts in FACTS.items()
}
"""The fields of each kind that are lists, with the table of each."""
IN_ORDER: tuple[str, ...] = (
    *("lot", "person_key", "material_key", "entry"),
    *FACTS,
    *(table for lists in LISTS.values() for _, table in lists),
    *("posting", "level", "tree", "details"),
)
"""All tables, in an order in which rows of many entries can be inserted."""


def columns_of(table: str) -> tuple[str, ...]:
    """Return the names of a table's columns, in their order."""
    if table in _FIXED:
        return _FIXED[table]
    if table in FACTS:
        return ("seq", "entry_kind", *_columns(FACTS[table]))
    kind, _, name = table.partition("_")
    child = next(spec.shape for spec in specs(FACTS[kind]) if spec.name == name)
    return ("seq", "line", *_columns(child))


def _columns(facts: type) -> Iterator[str]:
    for spec in specs(facts):
        if not spec.is_many:
            yield from _names(spec)


def _names(spec: FieldSpec) -> tuple[str, ...]:
    if spec.shape is Quantity:
        return (spec.name, f"{spec.name}_measure", f"{spec.name}_written")
    return (spec.name,)
