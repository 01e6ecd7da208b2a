"""How tests of commands are written down: a command, and what it answers or why it is refused."""

from tests.cli.shell import Shell

Answers = tuple[str, str]
"""A command and all that it prints."""
Refused = tuple[str, int, tuple[str, str]]
"""A command, its exit code, and what it complains of with what to do."""


def check_answers(case: Answers, shell: Shell) -> None:
    """Run it; it prints just this and complains of nothing."""
    command, answer = case
    found = shell.line(command)
    assert (found.exit_code, found.err) == (0, "")
    assert found.out == answer


def check_refused(case: Refused, shell: Shell) -> None:
    """Run it; it is refused in these words, prints nothing and records nothing."""
    command, code, problem = case
    before = shell.entries()
    found = shell.line(command)
    assert (found.exit_code, found.out) == (code, "")
    assert [line.strip() for line in found.complaints if line.strip()] == list(problem)
    assert shell.entries() == before


def seal_text(shell: Shell) -> str:
    """Return the seal of a book as it is now."""
    return shell.run("seal").out
