"""Reading the plans of trials.

Guarantees: all of them, in number order, those that were struck among them: a question that was
asked before was asked, whatever became of it.
"""

from ledger.domain.entries import Entry, Plan, is_of
from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.plain import kept_entry
from ledger.store.engine.bare import Connection
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


def made_with(connection: Connection, code: str) -> tuple[str, ProductKind] | None:
    """Return the product, and its kind, of the last batch for sale that a lot was put into."""
    rows = ask(
        connection,
        "SELECT s.product, s.product_kind FROM lot CROSS JOIN posting p CROSS JOIN entry e "
        "CROSS JOIN entry o CROSS JOIN start s LEFT JOIN entry c ON c.corrects = e.seq "
        "LEFT JOIN entry d ON d.corrects = o.seq "
        "WHERE lot.code = :code AND p.source = lot.id AND e.seq = p.seq "
        "AND o.stands_for = p.target AND s.seq = o.seq AND s.purpose = 'sale' "
        "AND c.corrects IS NULL AND d.corrects IS NULL "
        "ORDER BY e.happened_at DESC, e.stands_for DESC LIMIT 1",
        code=code,
    )
    return next(((product, ProductKind(kind)) for product, kind in rows), None)
