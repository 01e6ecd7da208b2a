"""Which tests run a place.

What a function runs is known line by line: the tests that call it, those that use a fixture which
calls it, those of a file that calls it while it is read. A statement of several lines is run by the
tests that run any of them. What is run at import (constants, tables, heads of classes and
functions, and functions that are called for these) is run for everybody, so for it stand all tests
that run a line of the module's functions that is not run at import too or, if none does (a module
of classes and constants), all tests, those of the folder that mirrors the module's before the
others.

Guarantees: tests of the nearest files come first, and of these and of the others the quickest.
Refuses: to know what a function would have run that remembers by other means than a cache of
`functools`; the first test that needs it stands for all.
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from tests.mutants.making.places import Place, function_lines

IMPORT = "import"


@dataclass(frozen=True, slots=True)
class Timed:
    """A test as it ran on the source without a fault."""

    seconds: float
    """What it took by itself."""
    uses: frozenset[str] = frozenset()
    """The fixtures that it shares with others: `FOLDER::NAME`."""


@dataclass(frozen=True)
class Map:
    """Tests and the lines that they run."""

    tests: Mapping[str, Timed]
    contexts: Callable[[str], Mapping[int, Iterable[str]]]
    """For a file: what ran each line, as `test NAME`, `fixture FOLDER::NAME`, `file PATH`."""
    fixtures: Mapping[str, float] = field(default_factory=dict)
    """What each shared fixture took."""

    @cached_property
    def _of_fixture(self) -> dict[str, set[str]]:
        found: dict[str, set[str]] = {}
        for name, test in self.tests.items():
            for fixture in test.uses:
                found.setdefault(fixture, set()).add(name)
        return found

    def named(self, contexts: Iterable[str]) -> set[str]:
        """Return the tests for which contexts stand."""
        found = set()
        for context in contexts:
            word, _, name = context.partition(" ")
            if word == "test":
                found.add(name)
            elif word == "fixture":
                found |= self._of_fixture.get(name, set())
            elif word == "file":
                found |= {test for test in self.tests if test.split("::")[0] == name}
        return found & self.tests.keys()

    def seconds(self, names: Collection[str]) -> float:
        """Return what tests take together, each fixture that they share once."""
        shared = {fixture for name in names for fixture in self.tests[name].uses}
        return sum(self.tests[name].seconds for name in names) + sum(
            self.fixtures.get(fixture, 0.0) for fixture in shared
        )

    def within(self, names: Sequence[str], seconds: float) -> list[str]:
        """Return the first of tests that take no longer together; the first always."""
        told: list[str] = []
        shared: frozenset[str] = frozenset()
        taken = 0.0
        for name in names:
            test = self.tests[name]
            new = test.uses - shared
            taken += test.seconds + sum(self.fixtures.get(fixture, 0.0) for fixture in new)
            if told and taken > seconds:
                break
            told.append(name)
            shared |= new
        return told

    def in_order(self, names: Iterable[str], near: Collection[str] = ()) -> list[str]:
        """Return tests, those of near files first and then the quickest first."""

        def place(name: str) -> tuple[bool, float, str]:
            return name.split("::")[0] not in near, self.seconds([name]), name

        return sorted(names, key=place)


def running(
    place: Place,
    file: str,
    text: str,
    known: Map,
    near: Collection[str] = (),
    *,
    is_whole: bool = True,
) -> list[str]:
    """Return the tests that run a place, in the order in which they are to be tried.

    Args:
        place: The place.
        file: The module in which it is.
        text: Its text.
        known: The map.
        near: The test files that are nearest to it.
        is_whole: Whether the map is of all that runs the module; if it may not be, tests beside it
            stand for all.
    """
    contexts = known.contexts(file)
    first, last = place.lines
    here = {context for line in range(first, last + 1) for context in contexts.get(line, ())}
    if place.in_function and IMPORT not in here:
        return known.in_order(known.named(here), near)
    # What is called at import alone tells nothing of who uses what it made.
    called = {
        context
        for line in function_lines(text)
        if IMPORT not in contexts.get(line, ())
        for context in contexts.get(line, ())
    }
    tests = known.named(here if place.in_function else ()) | known.named(called)
    if tests and not place.in_function:
        # Those beside it may look at what was made without calling anything.
        tests |= {test for test in known.tests if test.split("::")[0] in near}
    if tests:
        return known.in_order(tests, near)
    beside = mirrored(file, known.tests)
    others = known.tests.keys() - beside if is_whole else set()
    return known.in_order(beside, near) + known.in_order(others, near)


def mirrored(file: str, tests: Iterable[str]) -> set[str]:
    """Return the tests of the folder that mirrors a module's, or of the nearest above it.

    >>> sorted(mirrored("ledger/domain/lots/codes.py", ["tests/domain/lots/test_codes.py::test_a"]))
    ['tests/domain/lots/test_codes.py::test_a']
    """
    known = set(tests)
    parts = file.split("/")[:-1]
    for end in range(len(parts), 0, -1):
        for mirror in (parts[:end], parts[1:end]):
            folder = "/".join(("tests", *mirror, ""))
            if found := {name for name in known if name.startswith(folder)}:
                return found
    return set()
