"""The program, loaded once, run in a fork of itself for each command at a terminal.

Guarantees: a command has the environment, the terminal and the exit code that a shell gives and
takes; it loads only what it needs beyond what all commands load. ``python -m tests.cli.warm`` takes
a command a line on its standard input and answers with its exit code.
"""

import atexit
import json
import os
import subprocess
import sys
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from traceback import print_exc

ROOT = Path(__file__).parents[2]
BEGUN = "begun"


class Warm:
    """A process with the program loaded."""

    def __init__(self) -> None:
        """Start it."""
        self._process = subprocess.Popen(
            [sys.executable, "-m", "tests.cli.warm"],
            cwd=ROOT,
            env={"PATH": os.environ["PATH"], "LANG": "C.UTF-8"},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            bufsize=1,
        )

    def begin(self, terminal: str, args: Sequence[str], env: Mapping[str, str]) -> None:
        """Run a command at the terminal of a name; once it is back the command has opened that."""
        assert self._process.stdin is not None
        self._process.stdin.write(json.dumps([terminal, list(args), dict(env)]) + "\n")
        assert self._line() == BEGUN

    def code(self) -> int:
        """Wait for its end and return its exit code."""
        return int(self._line())

    def _line(self) -> str:
        assert self._process.stdout is not None
        return self._process.stdout.readline().strip()

    def end(self) -> None:
        """Let the process end."""
        self._process.communicate()


@cache
def warm() -> Warm:
    """Return the one process of this worker."""
    found = Warm()
    atexit.register(found.end)
    return found


def serve() -> None:
    """Run commands until nobody asks any more."""
    import ledger.service.desk.act  # noqa: F401

    for line in sys.stdin:
        child = os.fork()
        if not child:
            _run(*json.loads(line))
        print(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]), flush=True)


def _run(terminal: str, args: list[str], env: dict[str, str]) -> None:
    os.setsid()
    place = os.open(terminal, os.O_RDWR)
    print(BEGUN, flush=True)
    for known in range(3):
        os.dup2(place, known)
    os.close(place)
    # Those of before have read and written elsewhere, and remember it.
    sys.stdin, sys.stdout, sys.stderr = open(0), open(1, "w"), open(2, "w")  # noqa: SIM115
    os.environ.clear()
    os.environ.update(env)
    sys.argv = ["pottle", *args]
    from cli.program import run

    code = 1
    try:
        run()
    except SystemExit as ended:
        code = ended.code if isinstance(ended.code, int) else int(bool(ended.code))
    except BaseException:
        print_exc()
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
        os._exit(code)


if __name__ == "__main__":
    serve()
