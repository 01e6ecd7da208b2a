"""A table of cases for a family of rules: what is said, whole, or that nothing is."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.finding import Rule
from tests.domain.builders import scene

NO, WHY, GATE, HM = Severity.IMPOSSIBLE, Severity.REASON, Severity.GATE, Severity.REMARK


@dataclass(frozen=True)
class Case:
    """What a family of rules must find about a draft in a scene."""

    name: str
    draft: Draft
    scene: Scene = field(default_factory=scene)
    found: Sequence[Finding] = ()

    def __str__(self) -> str:
        return self.name


def said(
    severity: Severity, rule: str, what: str, todo: str, command: str | None = None
) -> list[Finding]:
    """Return the one finding that is expected; a command ends what is to be done."""
    told = f"{todo}: {command}" if command else todo
    return [Finding(severity, rule, what, told, command)]


def find(rules: Sequence[Rule], case: Case) -> list[Finding]:
    """Return all that the rules find in a case."""
    return [finding for rule in rules for finding in rule(case.draft, case.scene)]
