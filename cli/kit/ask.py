"""Questions at a terminal, one below the other.

Guarantees: Enter takes what stands in brackets; an answer that cannot be is told so, and asked for
again; Ctrl-D ends the asking, and nothing that was asked for is recorded. Refuses: to ask where
nobody sits at a terminal.
"""

import sys
from collections.abc import Callable

from typer._click.exceptions import UsageError
from typer._click.globals import get_current_context

from cli.kit.errors import complain, family_of
from cli.kit.tables import print_lines
from ledger.errors import LedgerError, RefusedError


def can_ask() -> bool:
    """Return whether somebody sits at a terminal who can be asked."""
    return sys.stdin.isatty() and sys.stdout.isatty()


def missing(word: str) -> UsageError:
    """Return what is told where a word is missing and nobody can be asked for it."""
    return UsageError(f"Missing {word}.", get_current_context())


def ask(
    question: str,
    usual: str = "",
    *,
    check: Callable[[str], object] | None = None,
    is_needed: bool = False,
) -> str:
    """Ask a question until the answer can be, and return it without blanks around it.

    Args:
        question: What is asked, without a mark behind it.
        usual: What Enter takes.
        check: Raises where an answer cannot be.
        is_needed: Whether nothing is no answer.

    Raises:
        RefusedError: The asking was ended.
    """
    while True:
        shown = f" [{usual}]" if usual else ""
        print(f"{question}{shown}: ", end="", flush=True)
        line = sys.stdin.readline()
        if not line:
            print()
            raise RefusedError("The questions were broken off, so nothing was recorded.")
        answer = line.strip() or usual
        if not answer and is_needed:
            print_lines(["This one is needed; Ctrl-D ends the questions."])
        elif answer and check and (error := _wrong(check, answer)):
            complain(error.problems, family_of(error)[0], as_json=False)
        else:
            return answer


def _wrong(check: Callable[[str], object], answer: str) -> LedgerError | None:
    try:
        check(answer)
    except LedgerError as error:
        return error
    return None
