"""Plugin of pytest: notes which lines each test runs, also in the processes that it starts.

Guarantees: what a fixture of many tests runs is noted for the fixture, what is run at import for
the import, what a test file runs while it is read for that file; what a function keeps is forgotten
before each test, so that every test that needs it is seen to run it. Writes `tests-WORKER.json`
into the folder of `MUTANTS_NOTES`, beside the data of coverage.
"""

import importlib
import json
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

CONTEXT = "MUTANTS_CONTEXT"
"""The variable of the environment that tells a process whose lines it runs."""


class Noted:
    """What is noted while the tests run."""

    def __init__(self, folder: Path, worker: str) -> None:
        """Begin to note lines."""
        import coverage  # an extra, which the suite does without

        self.folder, self.worker = folder, worker
        self.tests: dict[str, dict[str, Any]] = {}
        self.wide: dict[str, float] = {}
        self.needs: dict[str, list[str]] = {}
        self.used: set[str] = set()
        self.contexts = [""]
        self.lines = coverage.Coverage(
            data_file=str(folder / "lines"),
            data_suffix=worker,
            config_file=str(folder / "coveragerc"),
            messages=False,
        )
        os.environ["COVERAGE_PROCESS_START"] = str(folder / "coveragerc")
        self.lines.start()
        self.enter("import")
        import_all(Path.cwd())

    def enter(self, context: str) -> None:
        """Note what is run from here on for a context."""
        self.contexts.append(context)
        self._go_on()

    def leave(self) -> None:
        """Go on with the context before."""
        self.contexts.pop()
        self._go_on()

    def _go_on(self) -> None:
        self.lines.switch_context(self.contexts[-1])
        os.environ[CONTEXT] = self.contexts[-1]

    def test(self, name: str) -> dict[str, Any]:
        """Return the notes of a test."""
        return self.tests.setdefault(name, {"seconds": 0.0, "passed": True, "uses": []})

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Note what a test runs and which fixtures it uses."""
        forget()
        self.used = set(getattr(item, "fixturenames", ()))
        self.enter(f"test {item.nodeid}")
        try:
            return (yield)
        finally:
            self.leave()
            self.test(item.nodeid)["uses"] = self._wide_of(item.nodeid)

    def _wide_of(self, test: str) -> list[str]:
        names = closed(self.used, self.needs)
        places = [(key, *key.split("::")) for key in self.wide]
        return [key for key, base, name in places if name in names and test.startswith(base)]

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[Any]) -> Iterator[Any]:
        """Note what a fixture of many tests runs for itself."""
        self.used.add(fixturedef.argname)
        self.needs[fixturedef.argname] = list(fixturedef.argnames)
        if fixturedef.scope == "function":
            return (yield)
        key = f"{fixturedef.baseid.split('::')[0]}::{fixturedef.argname}"
        began = time.monotonic()
        self.enter(f"fixture {key}")
        try:
            return (yield)
        finally:
            self.leave()
            self.wide[key] = time.monotonic() - began

    @pytest.hookimpl(wrapper=True)
    def pytest_make_collect_report(self, collector: pytest.Collector) -> Iterator[Any]:
        """Note what a test file runs while it is read."""
        self.enter(f"file {collector.nodeid.split('::')[0]}")
        try:
            return (yield)
        finally:
            self.leave()

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note how long a test took and whether it passed."""
        noted = self.test(report.nodeid)
        noted["seconds"] += report.duration
        noted["passed"] &= report.passed

    def pytest_sessionfinish(self) -> None:
        """Write everything down."""
        self.lines.stop()
        self.lines.save()
        told = {"tests": self.tests, "wide": self.wide}
        (self.folder / f"tests-{self.worker}.json").write_text(json.dumps(told))


def closed(names: set[str], needs: dict[str, list[str]]) -> set[str]:
    """Return fixtures with all that they need."""
    found: set[str] = set()
    wanted = set(names)
    while wanted:
        found |= wanted
        wanted = {need for name in wanted for need in needs.get(name, ())} - found
    return found


def sources() -> list[str]:
    """Return the names of the folders whose lines are noted."""
    return os.environ["MUTANTS_SOURCES"].split()


def import_all(root: Path) -> None:
    """Import every module, so that nothing is imported in the middle of a test."""
    for source in sources():
        for path in sorted((root / source).rglob("*.py")):
            parts = path.relative_to(root).with_suffix("").parts
            if "migrations" not in parts and parts[-1] != "__main__":
                importlib.import_module(".".join(parts).removesuffix(".__init__"))


def forget() -> None:
    """Empty what functions keep of their answers."""
    for name, module in list(sys.modules.items()):
        if name.split(".")[0] in sources():
            for value in list(vars(module).values()):
                if callable(getattr(value, "cache_clear", None)):
                    value.cache_clear()


def pytest_configure(config: pytest.Config) -> None:
    """Begin, in each process that runs tests."""
    worker = os.environ.get("PYTEST_XDIST_WORKER")
    if worker:
        config.pluginmanager.register(Noted(Path(os.environ["MUTANTS_NOTES"]), worker))
