"""The program as the shell calls it.

Guarantees: what is loaded for a call is not searched for garbage while it is loaded, for all of it
is kept; from the command's own work on, garbage is looked for as ever (`run_safely`). Broken off
before that, it ends at once and without a word, as nothing was begun. Refuses: to run with
packages of another program in the place of its own.
"""

import gc
import signal
import sys
from importlib.machinery import PathFinder
from pathlib import Path

OURS = {"cli": "front.py", "reports": "kit/format.py", "ledger": "errors.py"}
"""The packages of the program, with a file by which each is known."""
INSIDE = 70
"""Exit code of a program that is not whole (sysexits.h, EX_SOFTWARE)."""


def run() -> None:
    """Run the command; the entry point of the installed program."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    if told := stranger():
        print(told, file=sys.stderr)
        sys.exit(INSIDE)
    gc.disable()
    from cli.main import run as run_commands

    run_commands()


def stranger() -> str | None:
    """Return a sentence about another's package that stands where one of ours should, if one does.

    Such names are common, and where several programs share an environment one takes the place of
    another.
    """
    for name, mark in OURS.items():
        found = PathFinder.find_spec(name)
        place = Path(found.origin).parent if found and found.origin else None
        if place is None or not (place / mark).is_file():
            where = f"at {place} " if place else ""
            return (
                f"pottle met another package called {name} {where}in place of its own.\n"
                "  Give it an environment of its own: pipx install pottle, or uv tool install "
                "pottle."
            )
    return None


if __name__ == "__main__":
    run()
