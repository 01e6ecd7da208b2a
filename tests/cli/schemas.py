"""The schemas that commands print of their answers, and what in an answer does not fit one.

The validation is that of the library jsonschema, by the standard's draft 2020-12.
"""

import json
import shlex
from collections.abc import Iterator
from functools import cache
from typing import Any

import typer.main
from jsonschema import Draft202012Validator
from typer._click import Context
from typer.testing import CliRunner

from cli.front import COMMANDS
from cli.main import app

Verb = tuple[str, ...]
"""A command, with the one of its group that is meant."""


@cache
def verbs() -> tuple[Verb, ...]:
    """Return all commands, those of groups apart."""
    group: Any = typer.main.get_command(app)
    found: list[Verb] = []
    for name in COMMANDS:
        below = getattr(group.get_command(Context(group), name), "commands", None)
        found += [(name, verb) for verb in below] if below else [(name,)]
    return tuple(found)


def verb_of(command: str) -> Verb:
    """Return the command that words call."""
    words = tuple(shlex.split(command))
    return next(words[:n] for n in (2, 1) if words[:n] in verbs())


@cache
def schema_of(verb: Verb) -> dict[str, Any]:
    """Return the schema that a command prints."""
    done = CliRunner().invoke(app, [*verb, "--json-schema"], prog_name="pottle")
    assert (done.exit_code, done.stderr) == (0, ""), verb
    schema: dict[str, Any] = json.loads(done.stdout)
    return schema


def faults(answer: object, verb: Verb) -> list[str]:
    """Return what in an answer does not fit the schema of its command."""
    validator = Draft202012Validator(
        schema_of(verb), format_checker=Draft202012Validator.FORMAT_CHECKER
    )
    return [f"{error.json_path}: {error.message}" for error in validator.iter_errors(answer)]


def schema_keys(verb: Verb) -> Iterator[str]:
    """Yield the paths of all keys that a command may answer, those of a list's items as one."""
    schema = schema_of(verb)
    for one in schema.get("anyOf", [schema]):
        path = "[]" if one.get("type") == "array" else ""
        yield from _keys(one.get("items", one), path, schema["$defs"])


def _keys(part: dict[str, Any], path: str, parts: dict[str, Any]) -> Iterator[str]:
    for below in part.get("anyOf", ()):
        yield from _keys(below, path, parts)
    if "$ref" in part:
        yield from _keys(parts[part["$ref"].rpartition("/")[2]], path, parts)
    if part.get("type") == "array":
        yield from _keys(part.get("items", {}), f"{path}[]", parts)
    for key, said in part.get("properties", {}).items():
        here = f"{path}.{key}".lstrip(".")
        yield here
        yield from _keys(said, here, parts)
