"""What stands on an entry: later acts by every rule, and lots that left or were labelled.

Guarantees: later acts are judged by the very rules they were entered by, as if each were entered
anew; what was found amiss before a correction is not told again after it. Refuses: to look through
more than so many acts; that there are more is said.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime
from functools import partial
from itertools import chain
from typing import get_args

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Entry,
    Filter,
    Finish,
    Judge,
    Labels,
    MakeUp,
    Measurement,
    Move,
    Receipt,
    Rinse,
)
from ledger.domain.entries.choices import LotType, Verdict
from ledger.domain.lots.codes import spans
from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.domain.rules import findings
from ledger.domain.rules.finding import Severity
from ledger.domain.rules.recheck import History
from ledger.science.contents.composition import Contents
from ledger.service.account.replay import replayed
from ledger.service.desk.recheck import MEND, fits_no_longer, histories
from ledger.service.desk.scene import build_scene
from ledger.store.ahead import later
from ledger.store.engine.abreast import abreast
from ledger.store.engine.acts import foresee
from ledger.store.engine.connections import Connection
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import dependents, queries, walk

JUDGED = Add | Bottle | Decant | Filter | Finish | Judge | MakeUp | Measurement | Rinse
"""Kinds of facts that rules hold to what went before."""
TOLD_ELSEWHERE = frozenset({"correction", "strike", "order", "on hand", "finished"})
"""Rules whose findings are told by the walk through a lot, or are of the act of correcting."""
MOST_ACTS, MOST_LOTS = 40, 200
"""How many later acts and lots are looked through at most: a correction is to be quick."""
MOST_TOLD = 3
"""How many lots that are others now are told one by one."""
NOTICED = 0.005
"""By what share of it a figure must change for a lot to be another than it was."""
OF_ALL = Receipt | Judge | Measurement
"""Kinds of facts that concern every lot that anything of theirs went into."""
_FORETOLD = later.Anew(
    kinds=tuple(kind.KIND for kind in get_args(JUDGED)),
    of_all=tuple(kind.KIND for kind in get_args(OF_ALL)),
    most_acts=MOST_ACTS,
    most_lots=MOST_LOTS,
)


class Standing(Struct, frozen=True):
    """What stood on an entry at a moment."""

    amiss: Mapping[tuple[int, str], str]
    """What rules find amiss in later acts: a sentence by the act's chain and the rule."""
    contents: Mapping[str, Contents]
    """What is in each lot that may stand on it, by code."""
    gone: Mapping[str, str]
    """Of those that were released, labelled or sent, what was done, by code."""
    is_cut: bool = False
    """Whether there was more than was looked through."""


class Stood(Struct, frozen=True):
    """An entry that is about to be corrected or struck, or just was."""

    old: Entry
    """The entry."""
    codes: tuple[str, ...]
    """The codes of the lots that it touches, before or after."""
    now: datetime
    """The book's clock."""
    histories: Mapping[str, History]
    """The histories of these lots."""
    standing: Standing
    """What stands on it."""


def foresee_standing(foreseen: Foreseen, touched: later.Touched) -> None:
    """Foretell what is asked to correct or strike an entry, of all that stands on it."""
    later.foresee_later(foreseen, touched, _FORETOLD)


def stood_on(connection: Connection, old: Entry, codes: tuple[str, ...], now: datetime) -> Stood:
    """Return what an entry is to the lots that it touches, and what stands on it; as `standing`."""
    told, stands = abreast(
        connection,
        lambda: histories(connection, codes),
        lambda: standing(connection, old, codes, now),
    )
    return Stood(old, codes, now, told, stands)


def shaken_by(connection: Connection, new: Entry, before: Stood) -> tuple[tuple[str, str], ...]:
    """Return what a correction broke that is in the book now, each with what to do.

    Args:
        connection: A connection in the transaction of the correction.
        new: The correction.
        before: What stood on what it corrects or strikes, before.
    """
    if before.codes:  # else nothing can be, and what was written may wait for the commit
        touched = later.Touched(before.old.seq, before.codes)
        foresee(connection, lambda foreseen: foresee_standing(foreseen, touched))
    after = stood_on(connection, before.old, before.codes, before.now)
    return (
        *fits_no_longer(before.histories, after.histories, new),
        *shaken(before.standing, after.standing),
    )


def standing(connection: Connection, old: Entry, codes: Iterable[str], now: datetime) -> Standing:
    """Return what stands on an entry that is about to be corrected or struck, or just was.

    Args:
        connection: A connection in the transaction of the correction.
        old: The entry.
        codes: The lots that it touches, before or after.
        now: The book's clock.
    """
    lots = _affected(connection, old, codes)
    near = lots[:MOST_LOTS]
    touching = (partial(dependents.entries_touching, connection, lot) for lot in near)
    told = dict(zip(near, abreast(connection, *touching), strict=True))
    acts = {
        entry.stands_for: entry
        for entries in told.values()
        for entry in entries
        if isinstance(entry.facts, JUDGED) and entry.stands_for != old.stands_for
    }
    later = [entry for entry in acts.values() if entry.position > old.position]
    found, *amiss = abreast(
        connection,
        lambda: replayed(connection, list(told)) if told else None,
        *(partial(_amiss, connection, entry, now) for entry in later[:MOST_ACTS]),
    )
    of = {number: code for code, number in found.steps.numbers.items()} if found else {}
    return Standing(
        amiss=dict(chain.from_iterable(amiss)),
        contents={of[lot]: found.replay.contents(of[lot]) for lot in told} if found else {},
        gone={of[lot]: what for lot, entries in told.items() if (what := _gone(of[lot], entries))},
        is_cut=len(later) > MOST_ACTS or len(lots) > MOST_LOTS,
    )


def shaken(before: Standing, after: Standing) -> Iterator[tuple[str, str]]:
    """Yield what a correction shook, a sentence each with what to do about it."""
    for key, what in after.amiss.items():
        if key not in before.amiss:
            yield f"Entry {key[0]} fits no longer: {what}", MEND
    others = {
        code: what
        for code, what in after.gone.items()
        if _differ(before.contents.get(code, Contents()), after.contents[code])
    }
    if len(others) > MOST_TOLD:
        yield (
            f"What is in {len(others)} lots is another by the book now, and each was released, "
            f"labelled or sent out: {', '.join(spans(others))}.",
            f"Decide about each anew, as with: pottle hold {next(iter(others))}",
        )
    else:
        for code, what in others.items():
            yield (
                f"What is in {code} is another by the book now, and it {what}.",
                f"Decide about it anew: pottle hold {code}, or pottle release {code}",
            )
    if after.is_cut:
        yield (
            "More stands on this than was looked through.",
            "See what: pottle trace, and pottle journal of the lots made of it.",
        )


def _affected(connection: Connection, old: Entry, codes: Iterable[str]) -> list[int]:
    """Return the numbers of the lots made here that may be others by the entry, nearest first."""
    # Of a received lot what was drawn once concerns no other draw; its own facts concern all.
    of_all = isinstance(old.facts, OF_ALL)
    rows = (queries.lot_by_code(connection, code) for code in codes)
    starts = [
        row for row in rows if row and (of_all or row.opened.lot_type is not LotType.RECEIVED)
    ]
    onward = abreast(connection, *(partial(walk.forward, connection, row.seq) for row in starts))
    ahead = dict.fromkeys(
        lot for row, met in zip(starts, onward, strict=True) for lot in (row.seq, *met)
    )
    bought = {row.seq for row in starts if row.opened.lot_type is LotType.RECEIVED}
    return [lot for lot in ahead if lot not in bought]


def _amiss(
    connection: Connection, entry: Entry, now: datetime
) -> list[tuple[tuple[int, str], str]]:
    """Return what rules find amiss in an act: a sentence by its chain and the rule."""
    if isinstance(entry.facts, Judge) and entry.facts.verdict is not Verdict.RELEASE:
        return []
    draft = replace(entry.draft, corrects=entry.seq)
    return [
        ((entry.stands_for, finding.rule), finding.what)
        for finding in findings(draft, build_scene(connection, draft, now))
        if finding.severity is not Severity.REMARK and finding.rule not in TOLD_ELSEWHERE
    ]


def _gone(code: str, entries: Iterable[Entry]) -> str:
    """Return in words what was done with a lot that cannot be undone by a pen."""
    released, labels, sent = 0, 0, 0
    for entry in entries:
        if entry.draft.lot != code:
            continue
        match entry.facts:
            case Judge(verdict=verdict):
                released = entry.seq if verdict is Verdict.RELEASE else 0
            case Labels(printed=printed):
                labels += printed
            case Move(moved_as=way) if way in GOES_TO_PEOPLE:
                sent += 1
    told = (
        f"was released by entry {released}" if released else "",
        f"had {labels} labels printed" if labels else "",
        f"was sent out {sent} {'time' if sent == 1 else 'times'}" if sent else "",
    )
    return ", ".join(part for part in told if part)


def _differ(one: Contents, other: Contents) -> bool:
    """Return whether two liquids are others to a maker: by strength, sugar, or what is in them."""
    figures = zip(_figures(one), _figures(other), strict=True)
    if one.parts.keys() != other.parts.keys() or any(_is_far(*pair) for pair in figures):
        return True
    one_ul, other_ul = one.volume_ul or 1, other.volume_ul or 1
    return any(
        _is_far(part.mass_mg / one_ul, other.parts[key].mass_mg / other_ul)
        for key, part in one.parts.items()
    )


def _figures(contents: Contents) -> tuple[float, float]:
    return contents.abv, contents.sugar_g_per_l


def _is_far(one: float, other: float) -> bool:
    return abs(one - other) > NOTICED * max(abs(one), abs(other))
