"""The JSON Schema of an answer, made from its class.

Guarantees: every key is described in the words that stand below its field. Loaded only when a
schema is asked for.
"""

import ast
import inspect
from collections.abc import Iterator, Sequence
from textwrap import dedent
from typing import Any

from msgspec import Struct
from msgspec.json import schema_components
from msgspec.structs import fields

from reports.json.kit.answer import Answer

DIALECT = "https://json-schema.org/draft/2020-12/schema"
"""The version of JSON Schema that is written."""


def schema_of(answers: Sequence[type[object]], title: str) -> dict[str, Any]:
    """Return the schema of what is one of some answers, classes or lists of them."""
    told, parts = schema_components(answers, ref_template="#/$defs/{name}")
    for kind in structs_in(answers):
        _describe(parts[kind.__name__], kind)
    one_of = told[0] if len(told) == 1 else {"anyOf": list(told)}
    return {"$schema": DIALECT, "title": title, **one_of, "$defs": parts}


def _describe(part: dict[str, Any], kind: type[Struct]) -> None:
    words = field_words(kind)
    for field in fields(kind):
        said = part["properties"][field.encode_name]
        part["properties"][field.encode_name] = {**said, "description": words[field.name]}


def structs_in(answers: Sequence[type[object]]) -> tuple[type[Struct], ...]:
    """Return the classes of answers and of all their parts, each once, as they are met."""
    found: dict[type[Struct], None] = {}
    waiting = list(answers)
    while waiting:
        kind = waiting.pop(0)
        if not isinstance(kind, type) or not issubclass(kind, Struct):
            waiting = [*getattr(kind, "__args__", ()), *waiting]
        elif kind not in found:
            found[kind] = None
            waiting = [*(field.type for field in fields(kind)), *waiting]
    return tuple(found)


def field_words(kind: type[Struct]) -> dict[str, str]:
    """Return what stands below each field of a class and of those it is made of."""
    classes = [base for base in reversed(kind.__mro__) if issubclass(base, Answer)]
    return {name: words for base in classes for name, words in _told(base)}


def _told(base: type) -> Iterator[tuple[str, str]]:
    body = ast.parse(dedent(inspect.getsource(base))).body[0]
    assert isinstance(body, ast.ClassDef)
    for field, below in zip(body.body, body.body[1:], strict=False):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
            assert isinstance(below, ast.Expr)
            assert isinstance(below.value, ast.Constant)
            yield field.target.id, inspect.cleandoc(str(below.value.value))
