"""The help of a command, as the command itself says it.

Guarantees: it is what the command says under --help; needs no book. Refuses: names that no command
has, with those that are near.
"""

import typer.main
from typer._click import Command, Context
from typer._click.formatting import HelpFormatter

from cli.kit.call import Call
from cli.kit.parsing import is_common
from cli.kit.tables import print_json
from ledger.errors import InputError, did_you_mean

OPTIONS = "options"
"""The word for the options that all commands have."""


def show_help(call: Call, words: tuple[str, ...]) -> None:
    """Show the help that words ask for.

    Raises:
        InputError: No command has that name.
    """
    text = _options() if words == (OPTIONS,) else _of(words)
    if call.json:
        from reports.json.guide.help import HelpAnswer

        print_json(HelpAnswer(" ".join(words), text))
    else:
        print(text)


def _front() -> tuple[Command, Context]:
    from cli.main import app

    front = typer.main.get_command(app)
    return front, Context(front, info_name="pottle", **front.context_settings)


def _of(words: tuple[str, ...]) -> str:
    command, context = _front()
    for word in words:
        known = command.list_commands(context) if hasattr(command, "list_commands") else []
        found = command.get_command(context, word) if hasattr(command, "get_command") else None
        if found is None:
            told = [*known, *([OPTIONS] if context.parent is None else [])]
            raise InputError(
                f"There is no command {' '.join(words)}.{did_you_mean(word, told)}",
                "pottle --help lists them all.",
            )
        command, context = found, Context(found, info_name=word, parent=context)
    return command.get_help(context).rstrip("\n")


def _options() -> str:
    command, context = _front()
    formatter = HelpFormatter()
    formatter.write_text("These options stand before or after any command that takes them.")
    told = [param.get_help_record(context) for param in command.params if is_common(param)]
    with formatter.section("Common options"):
        formatter.write_dl([record for record in told if record])
    return formatter.getvalue().rstrip("\n")
