"""Every making run in brief, with how it was found: looks, complaints, what was sent.

Guarantees: each question is one statement over a typed table, whatever the size of the book; only
what is in force.
"""

from msgspec import Struct

from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, Purpose
from ledger.store.engine.bare import Connection
from ledger.store.engine.statements import ask, ask_column

_IN_FORCE = "JOIN entry e ON e.seq = t.seq LEFT JOIN entry c ON c.corrects = e.seq"
_RUNS = (
    "SELECT lot.id, lot.code, t.product, t.product_kind, t.formula, t.formula_version, t.purpose, "
    f"t.trial_group, o.by, e.happened_at FROM start t {_IN_FORCE} "
    "JOIN lot ON lot.id = e.stands_for JOIN entry o ON o.seq = e.stands_for "
    "WHERE c.corrects IS NULL ORDER BY e.happened_at, lot.id"
)
_FILLINGS = (
    f"SELECT lot.id AS bulk, e.stands_for AS packed FROM bottle t {_IN_FORCE} "
    "JOIN lot ON lot.code = t.source WHERE c.corrects IS NULL ORDER BY e.stands_for"
)
_LOOKS = (
    f"SELECT e.lot, t.grade, e.happened_at, t.looked_at FROM look t {_IN_FORCE} "
    "WHERE c.corrects IS NULL ORDER BY e.happened_at, e.stands_for"
)
_FINISHES = (
    f"SELECT e.lot, MAX(e.happened_at) AS at FROM finish t {_IN_FORCE} "
    "WHERE c.corrects IS NULL GROUP BY e.lot"
)
_COMPLAINTS = (
    f"SELECT e.lot, t.symptom FROM complaint t {_IN_FORCE} "
    "WHERE c.corrects IS NULL AND e.lot IS NOT NULL ORDER BY e.happened_at, e.stands_for"
)
_SENT = (
    f"SELECT DISTINCT e.lot FROM move t {_IN_FORCE} WHERE c.corrects IS NULL "
    "AND t.moved_as IN ('sale', 'sample', 'tasting', 'on-return')"
)


OF_ANY = (_RUNS, _LOOKS, _COMPLAINTS, _FINISHES, _SENT, _FILLINGS)
"""The statements by which all runs are read, and how all lots were found."""


class Run(Struct, frozen=True):
    """A making run."""

    lot: int
    """Number of its lot."""
    code: str
    """Code of its lot."""
    product: str
    """What was made."""
    product_kind: ProductKind
    """What kind of thing it is."""
    formula: tuple[str, int] | None
    """Code and version of its formula."""
    purpose: Purpose
    """For sale or a trial."""
    trial_group: str | None
    """The trial it belongs to."""
    maker: str
    """Initials of who began it."""
    began_at: str
    """When, UTC instant text."""


class Seen(Struct, frozen=True):
    """One look, in brief."""

    grade: Grade
    """How clear it looked."""
    at: str
    """When, UTC instant text."""
    looked_at: LookedAt = LookedAt.NEAT
    """What was looked at."""


class Found(Struct, frozen=True):
    """How all lots were found, by the number of the lot."""

    looks: dict[int, list[Seen]]
    """Looks, by when they happened."""
    finished_at: dict[int, str]
    """When the making ended, UTC instant text."""
    complaints: dict[int, list[str]]
    """Symptoms of complaints."""
    sent: frozenset[int]
    """Lots that went to people."""
    packed: dict[int, list[int]]
    """For each bulk the lots filled from it."""


def runs(connection: Connection) -> list[Run]:
    """Return every making run, by when it began."""
    return [
        Run(
            lot=lot,
            code=code,
            product=product,
            product_kind=ProductKind(kind),
            formula=(formula, version) if formula else None,
            purpose=Purpose(purpose),
            trial_group=group,
            maker=by or "",
            began_at=at,
        )
        for lot, code, product, kind, formula, version, purpose, group, by, at in ask(
            connection, _RUNS
        )
    ]


def found(connection: Connection) -> Found:
    """Return how all lots were found."""
    looks: dict[int, list[Seen]] = {}
    for lot, grade, at, looked_at in ask(connection, _LOOKS):
        looks.setdefault(lot, []).append(Seen(Grade(grade), at, LookedAt(looked_at)))
    complaints: dict[int, list[str]] = {}
    for lot, symptom in ask(connection, _COMPLAINTS):
        complaints.setdefault(lot, []).append(symptom)
    return Found(
        looks=looks,
        finished_at=dict(ask(connection, _FINISHES)),
        complaints=complaints,
        sent=frozenset(ask_column(connection, _SENT)),
        packed=_packed(connection),
    )


def _packed(connection: Connection) -> dict[int, list[int]]:
    packed: dict[int, list[int]] = {}
    for bulk, lot in ask(connection, _FILLINGS):
        packed.setdefault(bulk, []).append(lot)
    return packed
