"""The sheet of a planned trial: what is on it.

Guarantees: the part for who makes the jars names their levels, the part for who looks at them only
their marks, in the order of the digits.
"""

from collections.abc import Mapping

from ledger.domain.entries.trials import TrialAge
from ledger.domain.evidence.draws import mark
from ledger.service.causes.layout import Planned
from reports.kit.frame import Frame
from reports.views.causes import EveningRows, JarRow, TrialSheetView
from reports.words.causes.trial import plan_lines


def trial_sheet_view(found: Planned, names: Mapping[str, str], frame: Frame) -> TrialSheetView:
    """Return what the sheet of a planned trial shows."""
    plan = found.plan
    return TrialSheetView(
        frame=frame,
        name=plan.name,
        lines=tuple(plan_lines(found, names)),
        heads=tuple(item.name for item in plan.factors),
        evenings=tuple(_evening(found, place) for place in range(1, len(plan.evenings) + 1)),
        marks=tuple(sorted(mark(jar.code) for jar in found.jars)),
        ages=tuple(str(age) for age in TrialAge),
        how_to_type="Type a look by the mark: pottle look MARK GRADE --ntu NTU, on the day of it.",
    )


def _evening(found: Planned, place: int) -> EveningRows:
    return EveningRows(
        f"Evening {place}, make in this order",
        tuple(
            JarRow(str(jar.number), mark(jar.code), tuple(level for _, level in jar.levels))
            for jar in found.jars
            if jar.evening == place
        ),
    )
