"""Trying many mutants, several at once, each worker in a copy of its own.

Guarantees: a mutant that was tried once is only tried by tests that it was not tried by.
"""

import sys
import time
from collections.abc import Collection, Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from math import inf
from queue import SimpleQueue
from types import TracebackType

from tests.mutants.making.sampling import Mutant
from tests.mutants.making.tree import copy_to, workspace
from tests.mutants.telling.equivalents import Equivalent, reason_of
from tests.mutants.trying.mapping import Map, running
from tests.mutants.trying.running import Outcome, Worker

LEFT = ("survived", "unrun")
"""Ends after which a mutant may be tried by more tests."""


class Trier:
    """Tries mutants; a context that takes its copies away at the end."""

    def __init__(
        self,
        files: Iterable[str],
        cores: int,
        near: Mapping[str, Collection[str]],
        equivalents: Sequence[Equivalent],
        most_seconds: float = inf,
    ) -> None:
        """Make ready.

        Args:
            files: All files of the project.
            cores: How many mutants are tried at once.
            near: The nearest test files of each module.
            equivalents: The mutants that are listed as changing nothing.
            most_seconds: How long the tests may take that a mutant is tried by at a time; the first
                of them, those of the nearest files before the others.
        """
        self._files, self._cores = list(files), cores
        self._near, self._equivalents = near, equivalents
        self._most_seconds = most_seconds
        self._stack = ExitStack()
        self._workers: list[Worker] = []
        self._by: dict[Mutant, list[str]] = {}

    def __enter__(self) -> "Trier":
        """Make the copies."""
        trusted: set[str] = set()
        for _ in range(self._cores):
            space = self._stack.enter_context(workspace())
            copy = copy_to(space / "copy", self._files)
            worker = Worker(copy, space, Map({}, lambda _: {}), trusted)
            self._stack.callback(worker.close)
            self._workers.append(worker)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Take the copies away."""
        self._stack.close()

    def tried(self, mutants: Sequence[Mutant], known: Map, *, is_near: bool) -> list[Outcome]:
        """Try mutants by the tests that are known to run them, or by the nearest of them alone."""
        chosen = {one: self._tests(one, known, is_whole=False) for one in mutants}
        if is_near:
            chosen = {
                one: [test for test in tests if test.split("::")[0] in self._near[one.file]]
                for one, tests in chosen.items()
            }
        return self._all(chosen, known)

    def tried_again(self, outcomes: Sequence[Outcome], known: Map) -> list[Outcome]:
        """Try what nothing noticed by the tests that are known since; return all outcomes."""
        left = [one.mutant for one in outcomes if one.end in LEFT]
        chosen = {}
        for mutant in left:
            before = set(self._by.get(mutant, ()))
            chosen[mutant] = [
                test for test in self._tests(mutant, known, is_whole=True) if test not in before
            ]
        again = {one.mutant: one for one in self._all(chosen, known)}
        return [self._joined(one, again.get(one.mutant)) for one in outcomes]

    def _joined(self, one: Outcome, then: Outcome | None) -> Outcome:
        if then is None or then.end == "unrun":
            return one
        seconds = one.seconds + then.seconds
        return Outcome(one.mutant, then.end, then.by, one.tests + then.tests, seconds)

    def _tests(self, mutant: Mutant, known: Map, *, is_whole: bool) -> list[str]:
        near, file = self._near[mutant.file], mutant.file
        return running(mutant.place, file, mutant.before, known, near, is_whole=is_whole)

    def _all(self, whole: Mapping[Mutant, list[str]], known: Map) -> list[Outcome]:
        chosen = {one: known.within(tests, self._most_seconds) for one, tests in whole.items()}
        self._by |= chosen
        free: SimpleQueue[Worker] = SimpleQueue()
        for worker in self._workers:
            worker.known = known
            free.put(worker)

        def one(mutant: Mutant) -> Outcome:
            if reason_of(mutant, self._equivalents):
                return Outcome(mutant, "equivalent")
            began, worker = time.monotonic(), free.get()
            try:
                end, by = worker.tried(mutant, chosen[mutant])
            finally:
                free.put(worker)
            seconds = time.monotonic() - began
            outcome = Outcome(mutant, end, by, len(chosen[mutant]), seconds)
            print(progress(outcome), file=sys.stderr, flush=True)
            return outcome

        with ThreadPoolExecutor(self._cores) as pool:
            return list(pool.map(one, chosen))


def progress(one: Outcome) -> str:
    """Return a line of how a mutant ended."""
    what = f"{one.mutant.file}:{one.mutant.line}  {one.by or one.mutant.change}"
    return f"{one.end:<9}{one.seconds:>6.1f} s {one.tests:>5} tests  {what}"
