"""Batches that follow a formula, and what is said of them when they leave its limits."""

from typing import Any

from ledger.domain.entries import Facts, Formula
from ledger.domain.lots.control import Control
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import Finding
from tests.domain.builders import lot, oil, powder, scene
from tests.domain.rules.cases import HM, WHY, said

SAY_WHY = "Check what was written; if it is so, say why with --because."


def why(rule: str, what: str, todo: str = SAY_WHY) -> list[Finding]:
    """Return the one thing that asks for a reason."""
    return said(WHY, rule, what, todo)


def hm(rule: str, what: str, todo: str = "") -> list[Finding]:
    """Return the one thing that is remarked on."""
    return said(HM, rule, what, todo)


def follows(formula: Formula, *later: Facts, **changes: Any) -> Scene:
    """Return a scene with a batch of 450 mL that follows a formula."""
    control = Control(formula=formula, **changes)
    return scene(lot("E-1", *later), oil(), powder(), control=control)
