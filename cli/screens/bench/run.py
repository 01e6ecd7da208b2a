"""A command, run in a session that keeps the book open.

Guarantees: it is the command itself, by the way of every command: its options, its rules, its
errors and its exit code. What options a command has is worked out once a session. Refuses: to end
the session with it.
"""

from collections.abc import Sequence
from functools import cache

import typer.main
from typer._click.exceptions import UsageError

from cli.front import Front, usage_problem
from cli.kit.call import Call, Held
from cli.kit.errors import CANCELLED, complain


def run(call: Call, held: Held, words: Sequence[str]) -> int:
    """Run a command with a book that stays open; return the exit code it ends with.

    Args:
        call: The call of the session, whose writer and origin hold for the command too.
        held: The session's book.
        words: The words of the command.
    """
    told = {"--by": call.by, "--at": call.at, "--origin": call.origin, "--sheet": call.sheet}
    shared = [part for option, value in told.items() if value for part in (option, value)]
    line = [*shared, *(["--json"] if call.json else []), *words]
    try:
        code = _front().main(line, prog_name="pottle", standalone_mode=False, obj=held)
    except UsageError as error:
        complain([usage_problem(error)], "usage", as_json=call.json)
        return error.exit_code
    except KeyboardInterrupt:
        return CANCELLED
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 0
    return code if isinstance(code, int) else 0


@cache
def _front() -> Front:
    """Return all commands; what a call says is kept by none of them."""
    from cli.main import app

    front = typer.main.get_command(app)
    assert isinstance(front, Front)
    return front
