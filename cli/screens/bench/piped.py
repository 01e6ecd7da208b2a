"""Lines for the bench from a pipe or a file, done one after the other.

Guarantees: it stops at the first that is not done, with the exit code of that, and says which
stand in the book. Refuses: to ask anything.
"""

from collections.abc import Iterable

from cli.kit.errors import complain, stands
from cli.kit.tables import print_json
from cli.screens.bench.evening import Evening


def play(evening: Evening, lines: Iterable[str]) -> int:
    """Do lines until one is not done; return its exit code, or 0."""
    code = 0
    for number, line in enumerate(lines, 1):
        text = line.rstrip("\n")
        if code := evening.do(text):
            _stopped(evening, number, text)
            break
        if evening.is_over:
            break
    if evening.call.json:
        from cli.kit.answer import plain

        print_json([plain(*answer) for answer in evening.answers])
    return code


def _stopped(evening: Evening, number: int, text: str) -> None:
    # For machines the answer itself is the list of what stands.
    if evening.call.json:
        return
    before = stands(evening.book.recorded)
    what = f"Line {number} was not done, and none after it was read: {text.strip()}"
    problems = [(what, ""), *(before or [("Nothing was recorded.", "")])]
    complain(problems, "usage", as_json=False)
