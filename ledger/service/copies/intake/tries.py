"""Trying acts in turn, inside one transaction, and telling what each came to.

Guarantees: an act is tried only where all that it builds on was taken; a lot is named by its whole
code. Refuses: to stop at the first that is wrong; what could be tried is.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from ledger.domain.entries import Entry
from ledger.domain.lots.codes import clean_code, nearest
from ledger.domain.tables.grid import Found
from ledger.errors import (
    FindingError,
    InputError,
    LedgerError,
    ReasonNeededError,
    StorageError,
)
from ledger.service.copies.intake.column_map import HOW
from ledger.service.copies.intake.row_acts import CODES, OPENS, Act
from ledger.service.copies.intake.taken import sheet_of
from ledger.service.copies.intake.together import Within
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import How, Recorded
from ledger.store.read import parties, queries
from ledger.store.write.recorder import size

NAMES = ("code", "initials", "name")
"""Words by which it is known whether what is done once is done already."""
_CHANGE = re.compile(r": pottle material change (\S+) (--.+)$")
"""The command that records what the book lacks of a material, at the end of what to do."""


@dataclass(slots=True)
class Tries:
    """Acts that are tried in one transaction."""

    within: Within
    """The book inside the transaction."""
    how: How
    """Who hands them in; the reason for what needs one; the paper's number."""
    nicknames: dict[str, str] = field(default_factory=dict)
    """Codes of the lots that rows opened, by their nickname."""
    numbers: dict[str, str] = field(default_factory=dict)
    """Numbers of the entries that rows became, by their nickname."""
    lost: set[str] = field(default_factory=set)
    """Codes and nicknames of lots of which something was not taken."""
    done: list[Recorded] = field(default_factory=list)
    """What was taken."""
    found: list[Found] = field(default_factory=list)
    """What stops the whole."""
    answerable: list[Found] = field(default_factory=list)
    """What of it a reason would answer."""
    remarks: list[Found] = field(default_factory=list)
    """What is merely unusual, or was recorded as a deviation."""
    untried: int = 0
    """How many acts were not tried, since what they build on was not taken."""
    once: set[tuple[str, str]] = field(default_factory=set)
    """What was done once."""

    @property
    def entries(self) -> list[Entry]:
        """The entries that were made."""
        return [entry for each in self.done for entry in (each.entry, *each.deviations)]

    def do(self, act: Act) -> None:
        """Try one act."""
        if act.is_broken:
            self.lose(act)
            return
        refers = {value.upper() for word, value in act.words.items() if word in CODES}
        if refers & self.lost:
            self.untried += 1
            self.lose(act)
            return
        if act.is_once and self._is_done(act):
            return
        before = size(self.within.connection)
        try:
            recorded = self._record(act, before)
        except StorageError:
            raise
        except LedgerError as error:
            found = [act.found(what, self._mended(todo)) for what, todo in error.problems]
            self.found += found
            if isinstance(error, FindingError | ReasonNeededError):
                self.answerable += found
            self.lose(act)
            return
        self._keep(act, recorded)

    def lose(self, act: Act) -> None:
        """Note that what builds on an act cannot be tried."""
        named = ("as", "code") if act.verb in OPENS else ("as", "lot")
        self.lost |= {act.words[word].upper() for word in named if word in act.words}

    def _mended(self, todo: str) -> str:
        """Return what to do, where a material is told of that these tables bring themselves.

        No command can change it before they are taken.
        """
        command = _CHANGE.search(todo)
        if command is None or ("material", command[1]) not in self.once:
            return todo
        options = re.findall(r'--(\S+) ("[^"]*")', command[2])
        words = ", ".join(f"{option.replace('-', '_')} = {value}" for option, value in options)
        return f"{todo[: command.start()]}, where {command[1]} is told of: {words}"

    def _record(self, act: Act, before: int) -> Recorded:
        words = {
            word: self._meant(word, value, act)
            for word, value in act.words.items()
            if word not in (*HOW, "as")
        }
        how = How(
            by=act.words.get("by") or self.how.by,
            at=act.words["at"],
            # A hold says why from the start, for it is recorded with the delivery.
            because=act.words.get("because") or (self.how.because if "hold" in words else None),
            origin=act.words.get("origin") or self.how.origin or "paper",
            sheet=sheet_of(act, self.how.sheet),
        )
        verb = VERBS[act.verb]
        try:
            return verb(self.within, how, **words)
        except (ReasonNeededError, FindingError):
            # The reason for all is only for what needs one.
            if how.because or not self.how.because or size(self.within.connection) != before:
                raise
        told = How(how.by, how.at, self.how.because, how.origin, how.sheet)
        return verb(self.within, told, **words)

    def _meant(self, word: str, value: str, act: Act) -> str:
        if word == "entry":
            return self.numbers.get(value, value)
        if word not in CODES or (word == "code"):
            return value
        if value in self.nicknames:
            return self.nicknames[value]
        connection = self.within.connection
        if word == "source" and queries.material(connection, value.lower()):
            return value
        code = clean_code(value)
        if queries.lot_by_code(connection, code) is None:
            near = nearest(code, queries.all_codes(connection))
            hint = f" Near to it: {', '.join(near)}." if near else ""
            raise InputError(
                f'There is no lot "{value}" in the book, nor in an earlier row.{hint}',
                "Write its whole code, or hand in the row that opens it too.",
            )
        return code

    def _is_done(self, act: Act) -> bool:
        key = next((act.words[word] for word in NAMES if word in act.words), "")
        known = (act.verb, key) in self.once or self._is_in_book(act.verb, key)
        self.once.add((act.verb, key))
        return known

    def _is_in_book(self, verb: str, key: str) -> bool:
        connection = self.within.connection
        match verb:
            case "material":
                return queries.material(connection, key.lower()) is not None
            case "party":
                return parties.party(connection, key) is not None
            case "person":
                return key.upper() in queries.people(connection)
            case verb if verb in OPENS:
                return queries.lot_by_code(connection, key.upper()) is not None
            case _:
                return False

    def _keep(self, act: Act, recorded: Recorded) -> None:
        self.done.append(recorded)
        self.remarks += [act.found(*remark) for remark in recorded.remarks]
        self.remarks += [
            act.found(f"Deviation {each.seq}: {each.facts.text}", "")
            for each in recorded.deviations
        ]
        if nickname := act.words.get("as"):
            self.numbers[nickname] = str(recorded.seq)
            if recorded.code:
                self.nicknames[nickname] = recorded.code


def by_kind(done: Sequence[Recorded]) -> Mapping[str, int]:
    """Return how many entries of each kind were made."""
    counted: dict[str, int] = {}
    for entry in (entry for each in done for entry in (each.entry, *each.deviations)):
        counted[entry.kind] = counted.get(entry.kind, 0) + 1
    return counted
