"""Checking again what stands on an entry that was corrected or struck.

Guarantees: a pure walk over a lot's entries in force, before and after; tells only what fits no
longer because of the correction. Refuses: to forbid it; what happened, happened, and the book says
what no longer adds up.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from ledger.domain.amounts.quantity import show
from ledger.domain.entries import Entry, Opened
from ledger.domain.rules.always.times import clock, is_before


class History(Struct, frozen=True):
    """A lot and every entry in force that moves, measures or speaks of it."""

    opened: Opened
    """The lot."""
    number: int
    """Number of the entry that opened it."""
    entries: Sequence[Entry]
    """The entries, by when they happened, then by number."""


def touched(*entries: Entry) -> tuple[str, ...]:
    """Return the codes of the lots that entries move, measure or speak of, each once."""
    codes: list[str | None] = []
    for entry in entries:
        opens, level = entry.draft.opens, entry.level
        codes += [entry.draft.lot, opens.code if opens else None, level.lot if level else None]
        codes += [end for posting in entry.postings for end in (posting.source, posting.target)]
    return tuple(dict.fromkeys(code for code in codes if code))


def broken(
    before: Mapping[str, History], after: Mapping[str, History], but: int
) -> tuple[str, ...]:
    """Return what fits no longer, a sentence each, by lot and in order of the entries.

    Args:
        before: The lots that the old entry or the new one touches, as they were.
        after: The same lots with the new entry in force.
        but: The chain of the correction itself, which the rules have seen to.
    """
    known = {code: _misfits(history) for code, history in before.items()}
    return tuple(
        what
        for code, history in after.items()
        for key, what in _misfits(history).items()
        if key not in known[code] and key[1] != but
    )


def _misfits(history: History) -> dict[tuple[str, int], str]:
    """Return what does not fit in a lot's history: a sentence by a key that corrections keep."""
    code, held = history.opened.code, 0
    first = next((e for e in history.entries if e.stands_for == history.number), None)
    misfits: dict[tuple[str, int], str] = {}
    for entry in history.entries:
        taken = sum(posting.taken for posting in entry.postings if posting.source == code)
        if first and is_before(entry.draft.happened, first.draft.happened):
            misfits["order", entry.stands_for] = _too_early(entry, code, first)
        elif taken > max(held, 0):
            misfits["on hand", entry.stands_for] = _too_much(entry, history.opened, taken, held)
        held += sum(posting.given for posting in entry.postings if posting.target == code) - taken
        if entry.level and entry.level.lot == code:
            held = entry.level.amount
    return misfits


def _too_early(entry: Entry, code: str, first: Entry) -> str:
    return (
        f"Entry {entry.seq} is of {clock(entry.draft.happened)}, but {code} is now in the book "
        f"only from {clock(first.draft.happened)}."
    )


def _too_much(entry: Entry, opened: Opened, taken: int, held: int) -> str:
    return (
        f"Entry {entry.seq}: {show(taken, opened.measure)} of {opened.code} was drawn, but by the "
        f"book it now held {show(max(held, 0), opened.measure)}."
    )
