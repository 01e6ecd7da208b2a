"""What a command says when it did not do what it was asked, and the exit code it ends with.

Guarantees: no traceback reaches a user; errors go to standard error, one line what and one line
what to do, or all of them as one JSON object; exit codes are 0 done, 1 a finding, 2 bad usage, 3
refused, 4 needs a reason, 5 storage.
"""

import gc
import os
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

import typer

from cli.kit.tables import fitted, print_json
from ledger.errors import (
    FindingError,
    InputError,
    LedgerError,
    ReasonNeededError,
    RefusedError,
    StorageError,
)

if TYPE_CHECKING:
    from reports.json.kit.problems import Family

FAMILIES: "tuple[tuple[type[LedgerError], Family, int], ...]" = (
    (FindingError, "finding", 1),
    (InputError, "usage", 2),
    (RefusedError, "refused", 3),
    (ReasonNeededError, "reason-needed", 4),
    (StorageError, "storage", 5),
)
"""Each kind of error with its name for machines and its exit code."""
INSIDE = 70
"""Exit code of a fault of pottle's own (sysexits.h, EX_SOFTWARE)."""
CANCELLED = 130
"""Exit code of a command that was broken off: 128 and the number of the signal, as shells have it.
"""


def run_safely(work: Callable[[], None], *, as_json: bool) -> None:
    """Run a command's work; turn its errors into sentences and an exit code."""
    # What is loaded by now is kept to the end; it need not be searched for garbage.
    gc.freeze()
    gc.enable()
    try:
        work()
    except LedgerError as error:
        family, code = family_of(error)
        complain(error.problems, family, as_json=as_json)
        raise typer.Exit(code) from None
    except KeyboardInterrupt:
        todo = "pottle journal shows what the book has."
        problem = ("Cancelled; nothing more was recorded.", todo)
        complain([problem], "cancelled", as_json=as_json)
        raise typer.Exit(CANCELLED) from None
    except BrokenPipeError:
        # What Python still flushes at its end needs somewhere to go.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise typer.Exit(0) from None
    except typer.Exit:
        raise
    except Exception as error:
        if os.environ.get("POTTLE_DEBUG"):
            raise
        what = f"Something went wrong inside pottle: {type(error).__name__}: {error}."
        todo = "pottle journal shows what the book has. POTTLE_DEBUG=1 shows where it went wrong."
        complain([(what, todo)], "inside", as_json=as_json)
        raise typer.Exit(INSIDE) from None


def complain(problems: Sequence[tuple[str, str]], family: "Family", *, as_json: bool) -> None:
    """Print problems to standard error: a line what, a line what to do; or all as JSON."""
    if as_json:
        from reports.json.kit.problems import error_answer

        print_json(error_answer(problems, family), sys.stderr)
        return
    for what, todo in problems:
        for line in fitted((what, f"  {todo}") if todo else (what,), sys.stderr):
            print(line, file=sys.stderr)


def family_of(error: LedgerError) -> "tuple[Family, int]":
    """Return the name of an error's family for machines, and its exit code."""
    return next((name, code) for kind, name, code in FAMILIES if isinstance(error, kind))
