"""Jars: the batches of a planned trial are begun, an evening at a time.

Guarantees: all jars of an evening or none; each has the levels and the code that the plan drew for
it. Refuses: a plan that was struck, and one whose jars are all begun.
"""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Start
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import LotType, Purpose
from ledger.errors import RefusedError
from ledger.service.causes.layout import Planned, PlannedJar, planned_on
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.judged import all_judged
from ledger.store.engine.connections import Connection
from ledger.store.read.planned import jars_begun, plans


@act
def jars(book: Book, how: How, *, trial: str) -> Recorded[Start]:
    """Begin the jars of the next evening of a planned trial; opens a made lot for each.

    Returns:
        The first jar, with the others of the evening.
    """
    with at_desk(book, how, Ahead(also=((plans,),))) as desk:
        found = planned_on(desk.connection, trial)
        drafts = [
            desk.draft(_start(found, jar), opens=(jar.code, LotType.MADE, Measure.UL))
            for jar in _next(desk.connection, found)
        ]
        first, *others = map(desk.put, all_judged(desk.connection, drafts, desk.now))
        return replace(first, others=tuple(others))


def _next(connection: Connection, found: Planned) -> list[PlannedJar]:
    name = found.plan.name
    if found.is_struck:
        raise RefusedError(
            f'The plan of the trial "{name}" was struck out.',
            'Plan another: pottle trial plan "NAME" --try LOT',
        )
    begun = jars_begun(connection, found.entry.seq)
    left = [jar for jar in found.jars if jar.number not in begun]
    if not left:
        raise RefusedError(
            f'All {len(found.jars)} jars of the trial "{name}" are begun.',
            f'See what came of them: pottle compare "{name}"',
        )
    return [jar for jar in left if jar.evening == left[0].evening]


def _start(found: Planned, jar: PlannedJar) -> Start:
    plan = found.plan
    return Start(
        product=plan.product,
        product_kind=plan.product_kind,
        target=plan.jar,
        formula=plan.formula,
        formula_version=plan.formula_version,
        purpose=Purpose.TRIAL,
        trial_group=plan.name,
        factors=tuple(Factor(name, level) for name, level in jar.levels),
        planned_by=found.entry.seq,
        jar=jar.number,
    )
