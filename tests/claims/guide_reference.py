"""The guide's page of all commands, made from what each command says of itself.

Guarantees: every command, argument and option stands in it with its own words. `python -m
tests.renew` writes the page; a test holds it to the commands.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import typer
from typer._click import Context

from cli.front import COMMANDS
from cli.main import app

PAGE = Path(__file__).parents[2] / "cli" / "guide" / "commands.md"
EVERYWHERE = ("ledger", "by", "at", "because", "origin", "sheet", "json")
"""Options that stand once, for all commands."""
HEAD = """# All commands

Every command with what it takes, in the order of the work. `pottle COMMAND --help` says the same of
one.

## Options of every command

These may stand before or after the command. Those that say when, why and from where are for
commands that record.

"""


def reference() -> str:
    """Return the page."""
    group: Any = typer.main.get_command(app)
    shared = (param for param in group.params if param.name in EVERYWHERE)
    parts = [HEAD, *map(_option, shared)]
    for name in COMMANDS:
        command = group.get_command(Context(group), name)
        below = getattr(command, "commands", None)
        for verb, found in below.items() if below else (("", command),):
            parts += _command(f"{name} {verb}".strip(), found)
    return "".join(parts)


def _command(name: str, command: Any) -> Iterator[str]:
    arguments = [param for param in command.params if param.param_type_name == "argument"]
    own = [param for param in command.params if param.param_type_name == "option"]
    options = [param for param in own if param.name not in EVERYWHERE and not param.hidden]
    usage = " ".join(["pottle", name, *map(_usage, arguments), *(["..."] if options else [])])
    yield f"\n## pottle {name}\n\n{command.help}\n\n    {usage}\n\n"
    yield from (f"- `{param.metavar}` {param.help}\n" for param in arguments)
    yield from map(_option, options)


def _usage(argument: Any) -> str:
    return str(argument.metavar if argument.required else f"[{argument.metavar}]")


def _option(option: Any) -> str:
    taken = "" if option.is_flag else f" {option.metavar}"
    needed = " Needed." if option.required else ""
    return f"- `{' '.join(option.opts)}{taken}` {option.help}{needed}\n"


def renew() -> None:
    """Write the page anew."""
    PAGE.write_text(reference(), "utf-8")
