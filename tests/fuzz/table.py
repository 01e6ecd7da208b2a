"""Reading what the fuzzer reports, and the table of it.

Guarantees: a run that did not come to its end counts as a finding. Refuses: nothing.
"""

import re
from dataclasses import dataclass
from pathlib import Path

_BEGAN = re.compile(r"^#\d+\tINITED cov: (\d+) ft: (\d+)", re.M)
_REACHED = re.compile(r"^#\d+\t\w+ +cov: (\d+) ft: (\d+)", re.M)
_TRIED = re.compile(r"^stat::number_of_executed_units: +(\d+)", re.M)
HEAD = f"{'parser':<12}{'inputs':>9}{'edges':>14}{'features':>16}{'findings':>10}"
"""Heads of the table's columns."""


@dataclass(frozen=True, slots=True)
class Run:
    """What became of fuzzing one reader."""

    name: str
    """What it reads."""
    tried: int
    """How many inputs it was given."""
    edges: tuple[int, int]
    """Edges of the code that were met with the seeds, and at the end."""
    features: tuple[int, int]
    """Edges with how often they were met, with the seeds and at the end."""
    findings: tuple[Path, ...]
    """Files of the inputs that found something."""
    has_ended: bool
    """Whether it went on until its time was over."""

    @property
    def count(self) -> int:
        """How many findings there are."""
        return max(len(self.findings), not self.has_ended)

    @property
    def row(self) -> str:
        """The line of the table."""
        edges, features = (f"{old}→{new}" for old, new in (self.edges, self.features))
        return f"{self.name:<12}{self.tried:>9}{edges:>14}{features:>16}{self.count:>10}"


def read_run(name: str, report: str, folder: Path) -> Run:
    """Return what a report and the files beside it say of a run."""
    began, reached = _BEGAN.search(report), _REACHED.findall(report)
    first = (int(began[1]), int(began[2])) if began else (0, 0)
    last = (int(reached[-1][0]), int(reached[-1][1])) if reached else first
    tried = _TRIED.search(report)
    inputs = [path for path in sorted(folder.glob(f"{name}-*")) if path.suffix != ".txt"]
    return Run(
        name,
        int(tried[1]) if tried else 0,
        (first[0], last[0]),
        (first[1], last[1]),
        tuple(inputs),
        "DONE" in report,
    )
