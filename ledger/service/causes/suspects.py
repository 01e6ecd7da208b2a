"""Suspects: what failed lots have in common that clear ones have not.

Guarantees: one consistent view of the book; a constant number of statements for a chunk of lots.
Refuses: lots that were not made here, and words it cannot read, all at once.
"""

from collections.abc import Mapping, Sequence
from datetime import datetime, time
from fractions import Fraction

from msgspec import Struct

from ledger.domain.entries import Bottle, entries_of
from ledger.domain.entries.choices import Grade, LotType
from ledger.domain.entries.plain import instant_text
from ledger.domain.entries.texts import read_word
from ledger.domain.lots.lot import Lot
from ledger.errors import LedgerError, RefusedError, together
from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import LEVEL, Judgement
from ledger.service.account.codes import known_lot, resolve_lot
from ledger.service.causes.failed import Sorted, Sought, sort_runs
from ledger.service.causes.makings import gather
from ledger.service.desk.book import Book
from ledger.service.desk.clock import zone_on
from ledger.service.desk.times import read_day
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.planned import plans
from ledger.store.read.runs import Run, found, runs


class FailedLot(Struct, frozen=True):
    """A failed run."""

    code: str
    """Code of its lot."""
    name: str
    """What it is."""
    why: str
    """Why it counts as failed."""


class Suspicion(Struct, frozen=True):
    """What the book tells of the cause of failed lots."""

    judgement: Judgement
    """What the comparison comes to."""
    failed: tuple[FailedLot, ...]
    """The failed runs."""
    lots: Mapping[str, Lot]
    """What every lot that went in is, by code."""
    compared: str
    """What was compared: a product, several, or a kind of product."""
    sorted: Sorted
    """How the runs were sorted, and what was left out."""
    tried_in: str | None = None
    """Name of the last trial that was planned of what is named or leads; None: of none."""


def suspects(
    book: Book,
    lots: Sequence[str] = (),
    *,
    complaints: bool = False,
    worse_than: str | None = None,
    since: str | None = None,
    by: str | None = None,
    level: Fraction = LEVEL,
) -> Suspicion:
    """Return what failed lots have in common that comparable clear lots have not.

    Args:
        book: The book.
        lots: Lots that failed, as a person names them; none: those found by looks and complaints.
        complaints: Only lots complained of.
        worse_than: Only lots that looked worse than this grade, or were complained of if asked.
        since: Only lots begun on or after this day.
        by: Whose lot in hand a dot stands for.
        level: In how many books at most an innocent may ever be named.

    Raises:
        InputError: A word could not be read.
        RefusedError: A lot is not in the book, or was not made here.
    """
    with book.reading() as connection:
        made, known = runs(connection), found(connection)
        sought = _sought(connection, made, lots, complaints, worse_than, since, by)
        versions = {
            (formula.code, formula.version): formula for formula in queries.formulas(connection)
        }
        parted = sort_runs(made, known, versions, sought, level)
        gathered = gather(
            connection,
            made,
            parted.failed,
            (*parted.clear, *parted.elsewhere),
            known.packed,
            versions,
            is_by_kind=parted.is_by_kind,
        )
        judgement = judge(gathered.observed, level, is_mixed=parted.is_by_kind)
        tried_in = _tried_in(connection, judgement)
    return Suspicion(
        judgement=judgement,
        failed=tuple(
            FailedLot(run.code, run.product, parted.reasons[run.lot]) for run in parted.failed
        ),
        lots=gathered.lots,
        compared=_what(parted),
        sorted=parted,
        tried_in=tried_in,
    )


def _tried_in(connection: Connection, judgement: Judgement) -> str | None:
    found = judgement.named or ((judgement.lead,) if judgement.lead else ())
    names = {suspect.cause.name for suspect in found}
    planned = (
        entry.facts.name
        for entry, in_force in reversed(plans(connection))
        if in_force and names & {item.suspected for item in entry.facts.factors}
    )
    return next(planned, None)


def _sought(
    connection: Connection,
    made: Sequence[Run],
    lots: Sequence[str],
    complaints: bool,
    worse_than: str | None,
    since: str | None,
    by: str | None,
) -> Sought:
    errors: list[LedgerError] = []
    known = {run.lot for run in made}
    named = set[int]()
    for text in lots:
        try:
            named.add(_run_of(connection, resolve_lot(connection, text, by), known))
        except LedgerError as error:
            errors.append(error)
    grade, begun = None, ""
    try:
        grade = read_word(worse_than, Grade, "clarity") if worse_than else None
    except LedgerError as error:
        errors.append(error)
    try:
        begun = _midnight(connection, since) if since else ""
    except LedgerError as error:
        errors.append(error)
    if errors:
        raise together(errors)
    # Where neither is asked for both count, else only what is.
    looks = bool(worse_than) or not complaints
    return Sought(frozenset(named), complaints or not worse_than, looks, grade, begun)


def _run_of(connection: Connection, code: str, known: set[int]) -> int:
    """Return the number of the run that a lot is, or was filled from."""
    lot = known_lot(connection, code)
    for filling in entries_of(queries.entries_of_lot(connection, lot.seq), Bottle):
        return _run_of(connection, filling.facts.source, known)
    if lot.seq in known:
        return lot.seq
    what = "was bought" if lot.opened.lot_type is LotType.RECEIVED else "is no making run"
    raise RefusedError(
        f"{code} {what}, and suspects compares lots that were made here.",
        f"Name what was made with it: pottle trace {code} --forward",
    )


def _midnight(connection: Connection, since: str) -> str:
    return instant_text(datetime.combine(read_day(since), time(), zone_on(connection)))


def _what(parted: Sorted) -> str:
    if not parted.failed:
        return ""
    if parted.is_by_kind:
        return f"any product ({parted.failed[0].product_kind})"
    return ", ".join(dict.fromkeys(run.product for run in parted.failed))
