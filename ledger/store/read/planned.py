"""Reading the plans of trials.

Guarantees: all of them, in number order, those that were struck among them: a question that was
asked before was asked, whatever became of it.
"""

from sqlalchemy import Connection

from ledger.domain.entries import Entry, Plan, is_of
from ledger.domain.entries.plain import kept_entry
from ledger.store.engine.statements import ask


def plans(connection: Connection) -> tuple[tuple[Entry[Plan], bool], ...]:
    """Return every plan, and whether it is in force."""
    rows = ask(
        connection,
        "SELECT e.body, c.corrects FROM trial t CROSS JOIN entry e "
        "LEFT JOIN entry c ON c.corrects = e.seq WHERE e.seq = t.seq ORDER BY e.seq",
    )
    read = ((kept_entry(body), corrects is None) for body, corrects in rows)
    return tuple((entry, in_force) for entry, in_force in read if is_of(entry, Plan))


def jars_begun(connection: Connection, plan: int) -> dict[int, int]:
    """Return which jars of a plan are begun: the number of its lot by the number of the jar."""
    rows = ask(
        connection,
        "SELECT t.jar, e.stands_for FROM start t CROSS JOIN entry e "
        "LEFT JOIN entry c ON c.corrects = e.seq "
        "WHERE e.seq = t.seq AND t.planned_by = :plan AND c.corrects IS NULL",
        plan=plan,
    )
    return dict(rows)
