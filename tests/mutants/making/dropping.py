"""What may be left out: a statement, an element of a list, an answer.

Guarantees: a function that yields goes on yielding, if nothing. Refuses: to leave out what only a
reader needs, such as docstrings.
"""

import ast
from collections.abc import Iterator

from tests.mutants.making.changes import Change
from tests.mutants.making.written import Written

ENOUGH = 3
"""A list of fewer elements, unless it is an answer, is not shortened: it is mostly a pair."""
EMPTY: dict[str, str] = {
    "tuple": "()",
    "sorted": "[]",
    "list": "[]",
    "dict": "{}",
    "set": "set()",
    "frozenset": "frozenset()",
}
"""What is empty for what a call makes."""
NOTHINGS = ("None", "False", "0", "0.0", '""', "()", "[]", "{}", "set()", "frozenset()")
"""Answers that are as good as none."""


def dropped(node: ast.stmt, written: Written) -> Iterator[Change]:
    """Yield a statement left out."""
    match node:
        case ast.Expr(ast.Yield(ast.expr())):
            yield "statement", written.span(node), "yield from ()"
        case ast.Expr(ast.YieldFrom(value)):
            yield "statement", written.span(value), "()"
        case ast.Expr(ast.Call()) | ast.AugAssign() | ast.Delete() | ast.Raise():
            yield "statement", written.span(node), "pass"
        case ast.Break() | ast.Continue():
            yield "statement", written.span(node), "pass"
        case ast.Assign([ast.Subscript() | ast.Attribute()]):
            yield "statement", written.span(node), "pass"


def shorter(node: ast.expr, written: Written, enough: int = ENOUGH) -> Iterator[Change]:
    """Yield a list without its last element."""
    parts = _parts(node)
    if len(parts) >= enough and isinstance(getattr(node, "ctx", ast.Load()), ast.Load):
        yield "element", (written.span(parts[-2])[1], written.span(parts[-1])[1]), ""


def _parts(node: ast.expr) -> list[ast.expr]:
    match node:
        case ast.List(elts=parts) | ast.Tuple(elts=parts) | ast.Set(elts=parts):
            return parts
        case ast.Dict(values=parts):
            return parts
    return []


def _empty(node: ast.expr) -> str | None:
    """Return what is of the sort of an answer and empty, where its sort can be seen."""
    match node:
        case ast.Call(ast.Name(name)) if name in EMPTY:
            return EMPTY[name]
        case ast.List() | ast.ListComp():
            return "[]"
        case ast.Tuple():
            return "()"
        case ast.Set() | ast.SetComp():
            return "set()"
        case ast.Dict() | ast.DictComp():
            return "{}"
        case ast.JoinedStr() | ast.Constant(str()):
            return '""'
    return None


def answered(node: ast.Return, written: Written) -> Iterator[Change]:
    """Yield another answer: none, an empty one, a shorter one; not one as empty as it was."""
    value = node.value
    if value is None or written.piece(value) in NOTHINGS:
        return
    yield "answer", written.span(value), "None"
    if (empty := _empty(value)) is not None:
        yield "answer", written.span(value), empty
    if len(_parts(value)) < ENOUGH:
        yield from shorter(value, written, 2)
