"""Scenes of the usual slips, and what is said of them."""

from typing import Any

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState
from ledger.domain.rules import Finding
from ledger.domain.rules.usual import handling as usual_handling
from ledger.domain.rules.usual import measures as usual_measures
from tests.domain.builders import lot, scene
from tests.domain.rules.cases import HM, Case, find, said

WATER = Input("W-1", Measure.UL, Status.IN_STOCK, "water", MaterialKind.WATER)
SPIRIT = Input("O-1", Measure.UL, Status.IN_STOCK, "spirit", MaterialKind.ETHANOL)


def hm(rule: str, what: str, todo: str) -> list[Finding]:
    return said(HM, rule, what, todo)


def among(*inputs: Input, state: LotState | None = None, **control: Any) -> Scene:
    """Return a scene with a batch that these inputs went into."""
    return scene(state or lot(), control=Control(inputs=inputs, **control))


def remarked(case: Case) -> list[Finding]:
    """Return all that the usual slips find."""
    return find(usual_measures.RULES + usual_handling.RULES, case)
