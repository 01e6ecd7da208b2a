"""A lot on its way out: who releases it, what it is held to, and what stands in the way."""

from typing import Any

from ledger.domain.entries import Facts, Formula, Judge, Labels
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.control import Control
from ledger.domain.lots.state import LotState
from ledger.domain.rules import Finding
from ledger.domain.rules.release import clarity as gate
from ledger.domain.rules.release import clearance, done, given
from tests.domain.builders import draft, lot, make, scene
from tests.domain.rules.cases import GATE, said

WHOLE_GATE = done.RULES + given.RULES + gate.RULES + clearance.RULES
"""What a lot passes on its way out: each case is put to all of it."""
LABELS = make(Labels, printed=15, used=15, spoiled=0)
"""One on each of the bottles that are filled here."""


def stop(what: str, todo: str, command: str | None = None) -> list[Finding]:
    """Return the one thing that stands in the way."""
    return said(GATE, "release", what, todo, command)


def released(state: LotState, by: str = "CD", **control: Any) -> tuple[Any, Any]:
    """Return a release by somebody who did not make the lot, and the scene of it."""
    held_to = Control(**{"formula": make(Formula), **control})
    return draft(make(Judge), state.code, by=by), scene(state, control=held_to)


def stepped(steps: tuple[FormulaStep, ...], *later: Facts) -> tuple[Any, Any]:
    """Return the release of a batch that follows a formula of these steps."""
    return released(lot("E-1", *later), formula=make(Formula, steps=steps))
