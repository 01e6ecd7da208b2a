"""Plugin of pytest: runs chosen tests in a given order and tells which ran and which failed.

Guarantees: a test whose name was made from what is changed, and so is not known, is run with its
fellows of the same function; the modules that are tried are those of the folder in which it runs.
Reads the file of `MUTANTS_CHOSEN`: `chosen`, the tests in their order, and `known`, all tests.
Writes into that of `MUTANTS_TOLD`, a line each: `ran NAME`, `failed NAME`.
"""

import importlib
import json
import os
from pathlib import Path

import pytest


def function_of(name: str) -> str:
    """Return the function of a test, of which there may be many, one a case."""
    return name.split("[")[0]


def _tell(word: str, name: str) -> None:
    with Path(os.environ["MUTANTS_TOLD"]).open("a", encoding="utf-8") as told:
        told.write(f"{word} {name}\n")


def pytest_configure() -> None:
    """Look at where the modules come from: an installed copy must not be tried instead."""
    for source in os.environ["MUTANTS_SOURCES"].split():
        where = Path(str(importlib.import_module(source).__file__))
        if Path.cwd() not in where.parents:
            raise pytest.UsageError(f"{source} is taken from {where}, not from {Path.cwd()}.")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Keep the chosen tests, in their order."""
    asked = json.loads(Path(os.environ["MUTANTS_CHOSEN"]).read_text(encoding="utf-8"))
    order = {name: place for place, name in enumerate(asked["chosen"])}
    known, functions = set(asked["known"]), {function_of(name) for name in order}
    kept = [
        item
        for item in items
        if item.nodeid in order
        or (item.nodeid not in known and function_of(item.nodeid) in functions)
    ]
    config.hook.pytest_deselected(items=[item for item in items if item not in set(kept)])
    items[:] = sorted(kept, key=lambda item: order.get(item.nodeid, len(order)))


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Tell of a test."""
    if report.failed:
        _tell("failed", report.nodeid)
    elif report.when == "teardown":
        _tell("ran", report.nodeid)


def pytest_collectreport(report: pytest.CollectReport) -> None:
    """Tell of a test file that cannot be read."""
    if report.failed:
        _tell("failed", report.nodeid)
