"""What commands ask for and answer: each word and option with its help, and what becomes of it.

Guarantees: another name, help, default or kind of an argument or option, another that completes it
in the shell, another kind of answer, and another thing that is handed on, each show as another
line; the place of a file is looked at first.
"""

from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import typer.main
from typer._click import Context

from cli.front import COMMANDS, module_of
from cli.kit.parsing import is_common
from cli.main import app
from tests.answers.said import in_folder
from tests.cli.handed import handed
from tests.cli.places import check_places
from tests.cli.schemas import Verb, schema_of, verbs
from tests.cli.screened import screened, screens_of
from tests.kept.golden import check_golden


def check_asked(name: str) -> None:
    """Fail unless what a command, or each of a group, asks for and answers is what is kept.

    What it hands on to whom is kept too, what its screens call and print where nothing is answered
    but names, and that it looks at the places of files first.
    """
    lines = (line for verb in verbs() if verb[0] == name for line in _of_verb(verb))
    told = [*_of_group(name), *lines]
    check_golden(f"cli/asked/{name}.txt", "".join(f"{line}\n" for line in told))
    given = handed(import_module(module_of(name)))
    check_golden(f"cli/handed/{name}.txt", "".join(f"{line}\n" for line in given))
    check_places(name)
    with TemporaryDirectory() as folder, in_folder(Path(folder)):
        for screen in screens_of(name):
            called = screened(screen)
            check_golden(f"{screen}.txt", "".join(f"{line}\n" for line in called))


def _of_group(name: str) -> Iterator[str]:
    group: Any = typer.main.get_command(app)
    command = group.get_command(Context(group), name)
    if not hasattr(command, "commands"):
        return
    alone = "shows its help" if command.no_args_is_help else "is refused"
    yield f"pottle {name}, which {alone} where none is named: {', '.join(command.commands)}"
    yield f"  {command.help}"


def _of_verb(verb: Verb) -> Iterator[str]:
    group: Any = typer.main.get_command(app)
    command = group.get_command(Context(group), verb[0])
    for word in verb[1:]:
        command = command.commands[word]
    yield f"pottle {' '.join(verb)}: {COMMANDS[verb[0]][1]}"
    yield f"  {command.help}"
    own = [param for param in command.params if not is_common(param)]
    for param in own:
        yield from (f"  {line}" for line in _of_param(param))
    common = (param.opts[0] for param in command.params if param not in own)
    yield f"  common options {', '.join(common)}"
    yield f"  answers {', '.join(_answers(schema_of(verb)))}"


def _of_param(param: Any) -> Iterator[str]:
    names = "/".join([*param.opts, *param.secondary_opts])
    yield f"{param.param_type_name} {names} {param.metavar or ''}".rstrip()
    yield f"  {getattr(param, 'help', None)}"
    completes = getattr(param, "_custom_shell_complete", None)
    kinds = {
        "required": param.required,
        "many": param.multiple or param.nargs != 1,
        "switch": getattr(param, "is_flag", False),
        "hidden": getattr(param, "hidden", False),
        "completed": completes is not None,
    }
    ends = [end for end in ("min", "max") if getattr(param.type, end, None) is not None]
    span = "".join(f", {end} {getattr(param.type, end)}" for end in ends)
    yield f"  {param.type.name}{span}, default {param.default!r}"
    told = [kind for kind, holds in kinds.items() if holds]
    yield from ([f"  {', '.join(told)}"] if told else [])


def _answers(schema: dict[str, Any]) -> Iterator[str]:
    for one in schema.get("anyOf", [schema]):
        whole = one.get("items", one)
        what = whole.get("$ref", whole.get("title", "nothing")).rpartition("/")[2]
        yield f"a list of {what}" if "items" in one else what
