"""A process with the libraries loaded, which runs pytest in a copy of itself when it is asked.

Guarantees: no module of the project is loaded in it, so each run loads them from the folder in
which it was started, as they are then. Its arguments name the libraries. Reads a list of arguments
a line, as JSON; writes the number of the process that runs them, and then its exit code, a line
each.
"""

import importlib
import json
import os
import sys
from contextlib import suppress

PLUGINS = ("_hypothesis_pytestplugin", "xdist.plugin", "mutants_order")


def main() -> None:
    """Run what is asked, one after the other, until nobody asks any more."""
    for name in sys.argv[1:]:
        with suppress(ImportError):
            importlib.import_module(name)
    # What is loaded already cannot be rewritten, as pytest would for the plugins that it finds.
    os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
    answers = os.fdopen(os.dup(1), "w")
    for line in sys.stdin:
        if not (child := os.fork()):
            _run(json.loads(line))
        print(child, file=answers, flush=True)
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        print(code, file=answers, flush=True)


def _run(arguments: list[str]) -> None:
    """Run pytest and end this process with its exit code."""
    code = 3  # pytest's own for a fault of its own
    try:
        os.setsid()
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(nowhere, stream)
        import pytest

        named = [word for plugin in PLUGINS for word in ("-p", plugin)]
        code = int(pytest.main([*named, *arguments]))
    finally:
        os._exit(code)


if __name__ == "__main__":
    main()
