"""An error for machines.

Guarantees: all problems of one entry are told at once, each with what to do about it.
"""

from collections.abc import Sequence
from typing import Literal

from reports.json.kit.answer import Answer

Family = Literal["finding", "usage", "refused", "reason-needed", "storage", "inside", "cancelled"]
"""What kind of error it is; each has its exit code: 1, 2, 3, 4, 5, 70 and 130."""


class Problem(Answer, frozen=True):
    """One thing that is wrong."""

    error: str
    """What happened, a whole sentence."""
    what_to_do: str
    """What to do about it; empty where there is nothing."""


class ErrorAnswer(Answer, frozen=True):
    """What a command says on standard error when it did not do what it was asked."""

    error: str
    """What happened, a sentence for each problem."""
    code: Family
    """What kind of error it is."""
    what_to_do: str
    """What to do about it."""
    problems: tuple[Problem, ...]
    """All that is wrong, one by one."""


def error_answer(problems: Sequence[tuple[str, str]], code: Family) -> ErrorAnswer:
    """Return an error that tells problems, each what and what to do."""
    return ErrorAnswer(
        error=" ".join(dict.fromkeys(what for what, _ in problems)),
        code=code,
        what_to_do=" ".join(dict.fromkeys(todo for _, todo in problems if todo)),
        problems=tuple(Problem(what, todo) for what, todo in problems),
    )
