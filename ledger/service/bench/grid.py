"""The jars of a trial side by side, as somebody at the bench goes along them.

Guarantees: in the order in which they were begun; reads only.
"""

from msgspec import Struct

from ledger.domain.entries import Start
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import in_brief, latest
from ledger.service.account.state import lot_state
from ledger.service.desk.book import Book
from ledger.store.read.runs import runs


class TrialJar(Struct, frozen=True):
    """A jar of a trial."""

    lot: Lot
    """Its lot in brief."""
    factors: dict[str, str]
    """What was set in it on purpose, by name."""


def trial_jars(book: Book, trial: str) -> tuple[TrialJar, ...]:
    """Return the jars of a trial; none where it has none."""
    wanted = " ".join(trial.split()).casefold()
    with book.reading() as connection:
        codes = [
            run.code
            for run in runs(connection)
            if run.trial_group and run.trial_group.casefold() == wanted
        ]
        states = [lot_state(connection, code, is_whole=False) for code in codes]
    found = []
    for state in states:
        start = latest(state, Start)
        factors = {factor.name: factor.planned for factor in start.factors} if start else {}
        found.append(TrialJar(in_brief(state), factors))
    return tuple(found)
