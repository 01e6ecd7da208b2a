"""Forget: who somebody is, is erased for good; what they did stays, under a code.

Guarantees: what is erased, and what keeps the name for good, is told before and recorded; nothing
that is hashed changes, so that root and seals stay. Refuses: somebody whom an open recall or
complaint still needs, and without a reason. Decides nothing of what a law has a maker keep.
"""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from ledger.domain.entries import (
    Answer,
    Closing,
    Complaint,
    Entry,
    Facts,
    Forget,
    Judge,
    Party,
    Person,
)
from ledger.domain.entries.evidence import Named
from ledger.domain.entries.plain import UNREADABLE, has_commitment, kept_entry
from ledger.domain.entries.texts import read_text
from ledger.domain.evidence.commitments import details_of
from ledger.domain.masters.parties import is_forgotten
from ledger.errors import LedgerError, ReasonNeededError, RefusedError, together
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.lots.complaints import open_complaints
from ledger.service.recall.standing import OF_ANY, Recall, open_recalls
from ledger.store.ahead.recalls import foresee_open
from ledger.store.engine.abreast import abreast
from ledger.store.engine.connections import Connection
from ledger.store.read import parties, queries
from ledger.store.read.past import texts_that_may_have
from ledger.store.read.people import PARTY_IN, every_entry_of
from ledger.store.write.details import erase, next_party_code

SHORTEST = 4
"""Words shorter than this are looked for in no text: they would be found in every other."""


class Forgettable(Struct, frozen=True):
    """What becomes of the book when somebody is forgotten."""

    name: str
    """Who it is."""
    instead: str
    """The code, or the initials, that stands for them from then on."""
    is_party: bool
    """Whether it is a party; else a person who writes in the book."""
    erased: tuple[int, ...]
    """Entries whose details are erased."""
    kept: tuple[int, ...]
    """Entries whose text keeps the name where a name stands: it is shown no more."""
    in_words: tuple[int, ...]
    """Entries whose text has the name, a number or an address in other words: shown as it is."""
    by: Entry[Forget] | None = None
    """The entry that says so, where they were forgotten already."""

    @property
    def facts(self) -> Forget:
        """What is recorded."""
        named = [Named(seq, is_kept=False) for seq in self.erased]
        # One that keeps the name is enough to know it by; all have it in the same place.
        named += [Named(seq, is_kept=True) for seq in self.kept[:1]]
        who = self.instead
        return Forget(
            party=who if self.is_party else None,
            person=None if self.is_party else who,
            entries=tuple(named),
        )


class Forgotten(Struct, frozen=True):
    """Somebody was forgotten."""

    done: Recorded[Forget]
    """What was recorded, or, where they were forgotten already, the entry that says so."""
    was: Forgettable
    """What became of the book."""
    is_clean: bool
    """Whether nothing of it is left in the file; False on a server, and while others write."""


def forgettable(book: Book, who: str) -> Forgettable:
    """Return what would become of the book if somebody were forgotten.

    Args:
        book: The book.
        who: Initials of a person, or the name or the code of a party.

    Raises:
        InputError: No name is given, or one that nobody can see.
        RefusedError: There is nobody of that name, or an open recall or complaint needs them.
    """
    with book.reading() as connection:
        return _allowed(connection, who)


def forget(book: Book, how: How, *, who: str) -> Recorded[Forget]:
    """Forget somebody; as `forgotten`."""
    return forgotten(book, how, who=who).done


@act
def forgotten(book: Book, how: How, *, who: str) -> Forgotten:
    """Erase who somebody is, and say so in an entry; once more, only the file is cleaned.

    Args:
        book: The book.
        how: Who forgets, and why.
        who: Initials of a person, or the name or the code of a party.

    Raises:
        RefusedError: There is nobody of that name, an open recall or complaint needs them, or the
            reason names them.
        ReasonNeededError: No reason is given.
    """
    with at_desk(book, how, Ahead(party=who, also=_ASKED, besides=foresee_open)) as desk:
        was = _allowed(desk.connection, who)
        if was.by:
            done = Recorded(was.by, is_new=False)
        else:
            _check_reason(desk, was)
            done = desk.record(was.facts)
            erase(desk.connection, was.erased)
    return Forgotten(done, was, is_clean=book.scrub())


_ASKED = (
    *((every_entry_of, kind) for kind in (Party, Person, Forget)),
    *((queries.entries_of_kind, kind) for kind in (Complaint, Answer, Judge, Closing)),
    *OF_ANY,
    *((reader,) for reader in (parties.stored_names, *parties.EACH_NAMED)),
)
"""What is read whoever is forgotten."""


def _allowed(connection: Connection, who: str) -> Forgettable:
    meant = _meant(connection, who)
    was: Forgettable
    was, recalls = abreast(
        connection,
        lambda: _told(connection, meant),
        lambda: open_recalls(connection) if meant.is_party else (),
    )
    if stops := list(_needed(connection, was, recalls)) if was.is_party else []:
        raise together(stops)
    return was


def _check_reason(desk: Desk, was: Forgettable) -> None:
    if desk.reason and was.name.casefold() in desk.reason.casefold():
        raise RefusedError(
            f"The reason has the name {was.name} in it, and would keep it for good.",
            "Say why without the name.",
        )
    if not desk.reason:
        raise ReasonNeededError(
            f"Forgetting {was.name} erases for good who that is.",
            "Say why with --because. What has to be kept, and how long, is for you to know.",
        )


def _needed(
    connection: Connection, was: Forgettable, recalls: Iterable[Recall]
) -> Iterator[LedgerError]:
    """Yield what of the book still needs to know who somebody is, open recalls among it."""
    for entry in open_complaints(connection):
        if entry.facts.party == was.name:
            yield RefusedError(
                f"Complaint {entry.stands_for} of {was.name} is open, so they are still needed.",
                f"Answer it first: pottle answer {entry.stands_for} OUTCOME",
            )
    for recall in recalls:
        if any(call.name == was.name for call in recall.to_call):
            yield RefusedError(
                f"The recall of {recall.lot.code} is open, and {was.name} holds some of it.",
                f"Close it first: pottle recall {recall.lot.code} --close CAUSE",
            )


class _Said(Struct, frozen=True):
    """An entry that says who somebody is."""

    seq: int
    name: str
    instead: str
    """The code, or the initials; empty where there is none yet."""
    details: dict[str, str]
    is_beside: bool
    is_gone: bool


class _Meant(Struct, frozen=True):
    """Whom a word means."""

    said: Sequence[_Said]
    """What says who they are."""
    instead: str
    is_party: bool
    word: str = ""
    """The word, as the book has it."""


def _meant(connection: Connection, who: str) -> _Meant:
    word = read_text(who, "name of who is forgotten")
    if word.upper() in queries.people(connection):
        people = every_entry_of(connection, Person)
        said = [_said(e, e.facts.initials) for e in people if e.facts.initials == word.upper()]
        return _Meant(said, word.upper(), is_party=False)
    known = [_said(e, e.facts.code or "") for e in every_entry_of(connection, Party)]
    meant = [said for said in known if word.casefold() in (said.name.casefold(), _low(said))]
    codes = [said.instead for said in meant if said.instead]
    named = {said.name for said in meant}
    if not meant:
        # Of somebody whom nobody told of there is the name alone, where goods came and went.
        named = {name for name in parties.names(connection) if name.casefold() == word.casefold()}
    if not named:
        raise RefusedError(
            f"The book knows nobody by the name {word}.",
            "Give the name or the code of a party, or the initials of a person: pottle party "
            "list, pottle person list.",
        )
    theirs = [said for said in known if said.instead in codes or said.name in named]
    code = codes[-1] if codes else next_party_code(connection)
    word = code if word.upper() == code else max(named)
    return _Meant(theirs, code, is_party=True, word=word)


def _said(entry: Entry[Party] | Entry[Person], instead: str) -> _Said:
    facts = entry.facts
    return _Said(
        seq=entry.seq,
        name=facts.name,
        instead=instead,
        details=details_of(facts),
        is_beside=has_commitment(facts),
        is_gone=is_forgotten(facts),
    )


def _low(said: _Said) -> str:
    return said.instead.casefold()


def _told(connection: Connection, meant: _Meant) -> Forgettable:
    is_party, word, instead = meant.is_party, meant.word, meant.instead
    left = [said for said in meant.said if not said.is_gone]
    gone = word if is_party and not meant.said else instead
    said_so = [
        entry
        for entry in every_entry_of(connection, Forget)
        if gone in (entry.facts.party, entry.facts.person)
    ]
    if said_so and not left:
        return Forgettable(gone, gone, is_party, (), (), (), said_so[-1])
    names = {said.name for said in left} or {word}
    known = {words for said in left for words in said.details.values()}
    kept, in_words = _texts_with(connection, names, known)
    return Forgettable(
        name=left[-1].name if left else word,
        instead=instead,
        is_party=is_party,
        erased=tuple(said.seq for said in left if said.is_beside),
        kept=kept,
        in_words=in_words,
    )


def _texts_with(
    connection: Connection, names: set[str], known: set[str]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Return the entries whose text has a name where names stand, and those that have it elsewhere.

    Looked for are the names, and all else that the book knows of them.
    """
    sought = [words.casefold() for words in names | known if len(words) >= SHORTEST]
    kept: list[int] = []
    in_words: list[int] = []
    for seq, body in texts_that_may_have(connection, sought):
        if any(words in body.casefold() for words in sought):
            (kept if _names(body, names) else in_words).append(seq)
    return tuple(kept), tuple(in_words)


def _names(body: str, names: set[str]) -> bool:
    try:
        facts: Facts = kept_entry(body).facts
    except UNREADABLE:
        return False
    if isinstance(facts, Party | Person):
        return facts.name in names
    field = PARTY_IN.get(type(facts))
    return field is not None and getattr(facts, field) in names
