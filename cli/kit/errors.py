"""What a command says when it did not do what it was asked, and the exit code it ends with.

Guarantees: no traceback reaches a user; errors go to standard error, one line what and one line
what to do, or all of them as one JSON object; exit codes are 0 done, 1 a finding, 2 bad usage, 3
refused, 4 needs a reason, 5 storage.
"""

import gc
import os
import signal
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from typing import TYPE_CHECKING, TextIO

import typer
from typer._click.exceptions import UsageError

from cli.kit.tables import fitted, print_json
from ledger.errors import (
    FindingError,
    InputError,
    LedgerError,
    ReasonNeededError,
    RefusedError,
    StorageError,
    masked,
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
STORAGE = 5
"""Exit code where an answer found no place to be written in, or the book is damaged."""
JOURNAL = "pottle journal shows what the book has."
INSIDE = 70
"""Exit code of a fault of pottle's own (sysexits.h, EX_SOFTWARE)."""
CANCELLED = 130
"""Exit code of a command that was broken off: 128 and the number of the signal, as shells have it.
"""


class AfterwardsError(StorageError):
    """What failed after the recording, and says itself what was recorded."""


def run_safely(
    work: Callable[[], None],
    *,
    as_json: bool,
    recorded: Callable[[], Sequence[int]] = tuple,
    damage: Callable[[], Sequence[tuple[str, str]]] = tuple,
) -> None:
    """Run a command's work; turn its errors into sentences and an exit code.

    Args:
        work: The work.
        as_json: Whether errors are told to machines.
        recorded: Returns the numbers of the entries that the work recorded so far.
        damage: Returns what is wrong with the book, as problems; asked once something went wrong
            that nobody foresaw.
    """
    # What is loaded by now is kept to the end; it need not be searched for garbage. In a session
    # that was done before its first command.
    if not gc.isenabled():
        gc.freeze()
        gc.enable()
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        work()
        # Here, where it can still be told with what was recorded.
        sys.stdout.flush()
    except LedgerError as error:
        family, code = family_of(error)
        after = () if isinstance(error, AfterwardsError) else stands(recorded())
        complain((*error.problems, *after), family, as_json=as_json)
        raise typer.Exit(code) from None
    except KeyboardInterrupt:
        cancelled = ("Cancelled; nothing more was recorded.", JOURNAL)
        complain([*stands(recorded()), cancelled], "cancelled", as_json=as_json)
        raise typer.Exit(CANCELLED) from None
    except (typer.Exit, UsageError):
        raise
    except OSError as error:
        # Files are told of as errors of storage, so this is the answer that found no place.
        raise typer.Exit(unsaid(error, recorded(), as_json=as_json)) from None
    except Exception as error:
        if os.environ.get("POTTLE_DEBUG"):
            raise
        if problems := damage():
            complain([*stands(recorded()), *problems], "storage", as_json=as_json)
            raise typer.Exit(STORAGE) from None
        what = f"Something went wrong inside pottle: {type(error).__name__}: {masked(str(error))}."
        inside = (what, f"{JOURNAL} POTTLE_DEBUG=1 shows where it went wrong.")
        complain([*stands(recorded()), inside], "inside", as_json=as_json)
        raise typer.Exit(INSIDE) from None
    finally:
        signal.signal(signal.SIGINT, before)


def unsaid(error: OSError, recorded: Sequence[int], *, as_json: bool) -> int:
    """Tell that an answer could not be written; return the exit code.

    What was recorded stands, and whoever sees an error would enter it again: that is no failure.
    """
    _let_go(sys.stdout)
    if isinstance(error, BrokenPipeError) and not recorded:  # whoever read has seen enough
        return 0
    what = f"The answer could not be written: {error.strerror or error}."
    todo = "" if recorded else "Choose a place with room for it."
    complain([*stands(recorded), (what, todo)], "storage", as_json=as_json)
    return 0 if recorded else STORAGE


def _let_go(stream: TextIO) -> None:
    """Let what Python still writes at its end go nowhere."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def stands(recorded: Sequence[int]) -> list[tuple[str, str]]:
    """Return what stands in the book whatever failed after, as a problem; none for nothing.

    >>> stands([7]), stands([7, 8])[0][0]
    ([('Recorded 7.', 'pottle journal --entry 7 shows it.')], 'Recorded 7 to 8.')
    """
    if not recorded:
        return []
    first, last = recorded[0], recorded[-1]
    if first == last:
        return [(f"Recorded {first}.", f"pottle journal --entry {first} shows it.")]
    return [(f"Recorded {first} to {last}.", f"pottle journal --last {len(recorded)} shows them.")]


def complain(problems: Sequence[tuple[str, str]], family: "Family", *, as_json: bool) -> None:
    """Print problems to standard error: a line what, a line what to do; or all as JSON."""
    try:
        _print(problems, family, as_json=as_json)
    except OSError:  # where nobody can be told, the exit code says it
        _let_go(sys.stderr)


def _print(problems: Sequence[tuple[str, str]], family: "Family", *, as_json: bool) -> None:
    if as_json:
        from reports.json.kit.problems import error_answer

        print_json(error_answer(problems, family), sys.stderr)
    else:
        lines = (line for what, todo in problems for line in (what, f"  {todo}") if line.strip())
        for line in fitted(lines, sys.stderr):
            print(line, file=sys.stderr)
    sys.stderr.flush()


def is_asked() -> bool:
    """Tell whether somebody sits at a terminal who can be asked why."""
    return sys.stdin.isatty() and sys.stderr.isatty()


def reason_for(error: ReasonNeededError) -> str:
    """Ask at the terminal for the reason of what should not have happened, and return it.

    Raises:
        ReasonNeededError: None was given; nothing is recorded.
    """
    complain(error.problems, "reason-needed", as_json=False)
    print("Why? (nothing: it is not recorded) ", end="", file=sys.stderr, flush=True)
    told = sys.stdin.readline().strip()
    if not told:
        raise ReasonNeededError("Without a reason nothing was recorded.")
    return told


def family_of(error: LedgerError) -> "tuple[Family, int]":
    """Return the name of an error's family for machines, and its exit code."""
    return next((name, code) for kind, name, code in FAMILIES if isinstance(error, kind))
