"""Who people and parties are, as far as the book still knows, and by which names they are shown.

Guarantees: entries are told with the details that stand beside their texts; who was forgotten is
told by code or initials, also where an older text has the name. Refuses: to read more than once a
reading what stands beside, or more than once an act who stands for whom: what the act itself says
of that it learns.
"""

from collections.abc import Callable
from typing import Any, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import (
    Complaint,
    Contact,
    Entry,
    Facts,
    Forget,
    Move,
    Party,
    Person,
    Receipt,
    Strike,
    entries_of,
)
from ledger.domain.entries.plain import has_commitment, kept_entry
from ledger.store.engine.bare import Connection
from ledger.store.engine.connections import is_writing
from ledger.store.engine.statements import ask, ask_column
from ledger.store.engine.turn import turn_of
from ledger.store.form.columns import DETAIL_FIELDS

PARTY_IN: dict[type[Facts], str] = {
    Move: "party",
    Receipt: "supplier",
    Complaint: "party",
    Contact: "party",
}
"""The field in which an entry names a party: by its code, or in words."""
NAMING = frozenset({*PARTY_IN, Party, Person})
"""The kinds of facts that name somebody."""
_SHOWN = "SELECT stored, shown FROM party_shown"
_DETAILS = f"SELECT seq, {', '.join(DETAIL_FIELDS)} FROM details"
_GONE = "SELECT person FROM forget WHERE person IS NOT NULL"
_CODES = (
    "SELECT code FROM party WHERE code IS NOT NULL "
    "UNION SELECT party FROM forget WHERE party IS NOT NULL"
)
STORED = "stored names"
"""Under which an act knows all that stands for a party in any text."""
_MADE = "made"
"""Marks what was made of an answer among what an act asked."""
FoundT = TypeVar("FoundT")
FactsT = TypeVar("FactsT", bound=Facts)


def told(connection: Connection, body: str) -> Entry:
    """Return the entry of a text, with whom it names as the book knows them now."""
    entry = kept_entry(body)
    facts = entry.draft.facts
    if type(facts) not in NAMING:
        return entry
    facts = named(connection, entry.seq, facts)
    return replace(entry, draft=replace(entry.draft, facts=facts))


def every_entry_of(connection: Connection, kind: type[FactsT]) -> tuple[Entry[FactsT], ...]:
    """Return the entries of one kind by number, in force or not."""
    query = "SELECT body FROM entry WHERE kind = :kind ORDER BY seq"
    bodies = ask_column(connection, query, kind=kind.KIND)
    return tuple(entries_of((told(connection, body) for body in bodies), kind))


def named(connection: Connection, seq: int, facts: FactsT) -> FactsT:
    """Return facts with whom they name as the book knows them now."""
    if (field := PARTY_IN.get(type(facts))) is not None:
        name = getattr(facts, field)
        shown = shown_names(connection).get(name) if name else None
        return replace(facts, **{field: shown}) if shown else facts
    if isinstance(facts, Party | Person):
        known: FactsT = _known(connection, seq, facts)
        return known
    return facts


def _known(connection: Connection, seq: int, facts: Any) -> Any:  # noqa: ANN401 - either of two
    is_party = isinstance(facts, Party)
    if has_commitment(facts):
        beside = details(connection).get(seq)
        instead = facts.code if is_party else facts.initials
        fields = [name for name in DETAIL_FIELDS if hasattr(facts, name)]
        known = {name: beside[name] for name in fields} if beside else {"name": instead}
        return replace(facts, **known)
    if is_party and (code := shown_names(connection).get(facts.name)):
        return Party(name=code, code=code)
    if not is_party and facts.initials in _once(connection, _GONE, _column):
        return Person(facts.initials, facts.initials)
    return facts


def details(connection: Connection) -> dict[int, dict[str, str | None]]:
    """Return what stands beside entries of people and parties, by the numbers of these."""
    return _once(connection, _DETAILS, _by_entry)


class Names(Struct, frozen=True):
    """Who stands for whom in texts."""

    shown: dict[str, str]
    """By which name whatever stands for a party in a text is shown, where by another."""
    codes: set[str]
    """All codes that ever stood for a party."""
    by_name: dict[str, str]
    """The code of each party that has one and is not forgotten, by its name."""


def shown_names(connection: Connection) -> dict[str, str]:
    """Return by which name whatever stands for a party in a text is shown, where by another.

    A code is shown as the name that was told last; a name that was forgotten as the code.
    """
    return _names(connection).shown


def coded(connection: Connection, facts: FactsT) -> FactsT:
    """Return facts with the code of whom they name, as their text has it, where there is one."""
    field = PARTY_IN.get(type(facts))
    name = getattr(facts, field) if field else None
    code = code_by_name(connection).get(name) if name else None
    return replace(facts, **{field: code}) if field and code else facts


def spoken(connection: Connection, facts: FactsT) -> FactsT:
    """Return facts with the name of whom they name by a code, or by a name that is forgotten."""
    field = PARTY_IN.get(type(facts))
    name = getattr(facts, field) if field else None
    # Somebody who was forgotten and is in the book anew is meant by the name.
    if not name or name in code_by_name(connection):
        return facts
    return named(connection, 0, facts)


def code_by_name(connection: Connection) -> dict[str, str]:
    """Return the code of each party that has one and is not forgotten, by its name."""
    return _names(connection).by_name


def party_codes(connection: Connection) -> set[str]:
    """Return all codes that ever stood for a party."""
    return _names(connection).codes


def learn(connection: Connection, facts: Facts, *, is_new: bool) -> None:
    """Let an act know whom an entry brings that it appends; all is read anew where others change.

    Args:
        connection: A connection in a writing transaction.
        facts: What its text says, of a party with its name.
        is_new: Whether it corrects nothing.
    """
    turn = turn_of(connection)
    if turn is None:
        return
    field = PARTY_IN.get(type(facts))
    if STORED in turn.known and field and (word := getattr(facts, field)):
        turn.known[STORED].add(word)
    known: Names | None = turn.known.get(_SHOWN)
    if known is None:
        return
    if isinstance(facts, Party) and is_new and facts.code and facts.code not in known.codes:
        known.codes.add(facts.code)
        known.shown[facts.code] = facts.name
        known.by_name[facts.name] = facts.code
    elif isinstance(facts, Party | Forget | Strike):
        unlearn(connection)


def unlearn(connection: Connection) -> None:
    """Let an act read anew who stands for whom."""
    if turn := turn_of(connection):
        turn.known.pop(_SHOWN, None)


def shown_rows(connection: Connection) -> list[Any]:
    """Return what stands for a party in a text with how it is shown, where that is otherwise."""
    return ask(connection, _SHOWN)


def every_code(connection: Connection) -> set[str]:
    """Return all codes that ever stood for a party, read anew."""
    return set(ask_column(connection, _CODES))


def _names(connection: Connection) -> Names:
    turn = turn_of(connection)
    if turn is None:
        return _once(connection, _SHOWN, lambda rows: _named(rows, every_code(connection)))
    if _SHOWN not in turn.known:
        turn.known[_SHOWN] = _named(shown_rows(connection), every_code(connection))
    found: Names = turn.known[_SHOWN]
    return found


def _named(rows: list[Any], codes: set[str]) -> Names:
    shown = dict(rows)
    return Names(shown, codes, {name: code for code, name in shown.items() if code in codes})


def _by_entry(rows: list[Any]) -> dict[int, dict[str, str | None]]:
    return {seq: dict(zip(DETAIL_FIELDS, cells, strict=True)) for seq, *cells in rows}


def _column(rows: list[Any]) -> frozenset[str]:
    return frozenset(cell for (cell,) in rows)


def _once(connection: Connection, query: str, made: Callable[[list[Any]], FoundT]) -> FoundT:
    """Return what a query tells, read once in a reading, and in an act until it writes."""
    found: FoundT
    if turn := turn_of(connection):
        if (query, _MADE) not in turn.asked:
            turn.asked[query, _MADE] = [made(ask(connection, query))]
        (found,) = turn.asked[query, _MADE]
        return found
    if is_writing(connection):
        return made(ask(connection, query))
    # `info` outlives the transaction, and what was read in it does not.
    transaction = connection.get_transaction()
    kept: tuple[object, Any] | None = connection.info.get(query)
    if kept is None or kept[0] is not transaction:
        kept = connection.info[query] = (transaction, made(ask(connection, query)))
    found = kept[1]
    return found
