"""Trying a mutant: the tests that run its place are run on a copy that holds it.

Guarantees: a mutant counts as killed only if a test failed (or twice came to no end in its time)
that was then seen to pass on the same copy without the fault, after the same tests before it. What
does not pass there either tells of no fault, and those after it are run; where none of them fails
the mutant is told as broken, and counts for nothing. A module that
cannot be imported is no kill by itself: tests must have been chosen and have failed of it.
"""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from tests.mutants.making.sampling import Mutant
from tests.mutants.making.tree import changed_file, environment
from tests.mutants.trying.mapping import Map
from tests.mutants.trying.warm import LIBRARIES, Warm

PORTIONS = ((2.0, 12), (30.0, 120))
"""Seconds and test files of the first portions of tests; what is left is the last."""
START_SECONDS = 60.0
"""What starting may take at most, with the cores shared."""
TIMES_LONGER = 8.0
"""How many times longer than noted tests may take before they count as without an end."""
ARGUMENTS = ("-x", "-q", "-p", "no:cacheprovider")
LATE = "its time was over"
NOTHING_RAN = 5
"""The exit code of pytest when no test was run."""


@dataclass(frozen=True, slots=True)
class Told:
    """What a run of tests told."""

    passed: bool
    ran: tuple[str, ...] = ()
    """The tests that passed, in their order."""
    failed: str = ""
    """The test that failed, or why none was run."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a mutant."""

    mutant: Mutant
    end: str
    """killed, survived, broken, unrun (no test runs it) or equivalent (it was not tried)."""
    by: str = ""
    """The test that failed."""
    tests: int = 0
    """How many tests run its place."""
    seconds: float = 0.0


@dataclass
class Worker:
    """Tries mutants in a copy of its own."""

    copy: Path
    space: Path
    known: Map
    trusted: set[str]
    """Tests that were seen to pass without a fault after they had failed with one."""
    libraries: Sequence[str] = LIBRARIES
    """What its process loads once, which is what tests load."""

    @cached_property
    def warm(self) -> Warm:
        """The process in which it runs tests."""
        own = {"MUTANTS_CHOSEN": str(self._chosen), "MUTANTS_TOLD": str(self._told)}
        return Warm(self.copy, environment(self.copy, self._scratch, **own), self.libraries)

    @property
    def _chosen(self) -> Path:
        return self.space / "chosen"

    @property
    def _told(self) -> Path:
        return self.space / "told"

    @property
    def _scratch(self) -> Path:
        return self.space / "scratch"

    def close(self) -> None:
        """End the process in which it runs tests."""
        self.warm.close()

    def tried(self, mutant: Mutant, tests: Sequence[str]) -> tuple[str, str]:
        """Try a mutant; return its end and the test that failed."""
        unsound = ""
        for portion in portions(tests, self.known):
            left = list(portion)
            while left:
                told = self._run_with(mutant, left)
                if told.passed:
                    break
                if self._is_sound(told, left):
                    return "killed", told.failed
                unsound = told.failed
                # It can tell of no fault; those after it may.
                left = left[left.index(unsound) + 1 :] if unsound in left else []
        if unsound:
            return "broken", unsound
        return "survived" if tests else "unrun", ""

    def _run_with(self, mutant: Mutant, tests: Sequence[str]) -> Told:
        with changed_file(self.copy / mutant.file, mutant.text):
            told = self.run(tests)
            if told.failed == LATE:  # the machine may have paused
                told = self.run(tests)
        return told

    def _is_sound(self, told: Told, portion: Sequence[str]) -> bool:
        """Say whether the same tests pass without the fault."""
        if told.failed in self.trusted:
            return True
        is_test = told.failed in self.known.tests
        found = self.run([*told.ran, told.failed] if is_test else portion).passed
        if found and is_test:
            self.trusted.add(told.failed)
        return found

    def run(self, tests: Sequence[str]) -> Told:
        """Run tests in this order until one fails."""
        asked = {"chosen": list(tests), "known": list(self.known.tests)}
        self._chosen.write_text(json.dumps(asked))
        self._told.write_text("")
        self._scratch.mkdir(exist_ok=True)
        files = sorted({name.split("::")[0] for name in tests})
        code = self.warm.run(
            [*ARGUMENTS, f"--basetemp={self._scratch / 'pytest'}", *files],
            START_SECONDS + TIMES_LONGER * self.known.seconds(tests),
        )
        return read(self._told.read_text(encoding="utf-8"), code)


def portions(tests: Sequence[str], known: Map) -> Iterator[Sequence[str]]:
    """Yield tests in portions: few and quick ones first, which mostly tell already."""
    rest = list(tests)
    for seconds, files in PORTIONS:
        taken = 1
        while taken < len(rest) and _is_within(rest[: taken + 1], known, seconds, files):
            taken += 1
        if rest:
            yield rest[:taken]
        rest = rest[taken:]
    if rest:
        yield rest


def _is_within(tests: Sequence[str], known: Map, seconds: float, files: int) -> bool:
    return known.seconds(tests) <= seconds and len({name.split("::")[0] for name in tests}) <= files


def read(told: str, code: int | None) -> Told:
    """Return what a run told by its lines and its exit code; none if its time was over."""
    lines = [line.partition(" ") for line in told.splitlines()]
    ran = tuple(name for word, _, name in lines if word == "ran")
    failed = next((name for word, _, name in lines if word == "failed"), "")
    if code in (0, NOTHING_RAN):
        return Told(True, ran)
    return Told(False, ran, failed or (LATE if code is None else "it did not start"))
