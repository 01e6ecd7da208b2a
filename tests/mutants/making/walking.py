"""Walking through a module: the nodes that may be changed, each with what is run for it.

Guarantees: what only readers and type checkers need is passed over: docstrings, annotations,
imports, `__all__`, the first words of `cast` and its like.
"""

import ast
from collections.abc import Iterator
from dataclasses import dataclass, replace

FOR_TYPES = ("cast", "TypeVar", "NewType")
"""Calls whose first argument only a type checker reads."""
FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
LOOPS = (ast.For, ast.AsyncFor, ast.With, ast.AsyncWith)
BLOCKS = (*FUNCTIONS, *LOOPS, ast.ClassDef, ast.Try, ast.TryStar, ast.Match)
"""Statements that hold others and have no condition."""
PASSED_OVER = ("annotation", "returns", "type_params", "format_spec", "ctx", "op", "ops")
"""Fields of nodes in which nothing is changed, or by the node itself."""
NOT_YET = (0, 0)


@dataclass(frozen=True, slots=True)
class Above:
    """What a node is to know of the nodes above it."""

    lines: tuple[int, int] = NOT_YET
    """First and last line of what is run for it: the statement, or its part of a block's head."""
    in_function: bool = False
    """Whether it is run when a function is called; else when the module is imported."""
    in_string: bool = False
    """Whether it is a field of a string."""


def nodes(node: ast.AST, above: Above) -> Iterator[tuple[ast.AST, Above]]:
    """Yield a node and those below it that may be changed."""
    if _is_for_readers(node):
        return
    here = replace(above, lines=_lines(node, above))
    yield node, here
    for field, child in _children(node):
        yield from nodes(
            child,
            replace(
                here,
                in_function=here.in_function or (isinstance(node, FUNCTIONS) and field == "body"),
                in_string=here.in_string or isinstance(node, ast.JoinedStr),
            ),
        )


def _lines(node: ast.AST, above: Above) -> tuple[int, int]:
    match node:
        case ast.If() | ast.While():
            return node.lineno, node.test.end_lineno or node.lineno
        case ast.match_case(guard=ast.expr() as guard):
            return guard.lineno, guard.end_lineno or guard.lineno
        case ast.stmt():
            is_block = isinstance(node, BLOCKS)
            return NOT_YET if is_block else (node.lineno, node.end_lineno or node.lineno)
        case ast.expr() | ast.pattern() if above.lines == NOT_YET:
            return node.lineno, node.end_lineno or node.lineno
    return above.lines


def _is_for_readers(node: ast.AST) -> bool:
    match node:
        case ast.Expr(ast.Constant()) | ast.Import() | ast.ImportFrom():
            return True
        case ast.Assign([ast.Name("__all__")]) | ast.If(ast.Name("TYPE_CHECKING")):
            return True
    return False


def _children(node: ast.AST) -> Iterator[tuple[str, ast.AST]]:
    for field, value in ast.iter_fields(node):
        if field in PASSED_OVER:
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _is_told_by(node, child):
                yield from _elements(field, child) if field == "slice" else [(field, child)]


def _elements(field: str, child: ast.AST) -> Iterator[tuple[str, ast.AST]]:
    """Yield the parts of what stands in square brackets: shortening it makes other types only."""
    for part in child.elts if isinstance(child, ast.Tuple) else [child]:
        yield field, part


def _is_told_by(node: ast.AST, child: ast.AST) -> bool:
    """Say whether a child is passed over because of the node above it."""
    match node:
        case ast.Call(ast.Name(name), [first, *_]) if name in FOR_TYPES:
            return child is first
        case ast.Compare(ops=[ast.Is() | ast.IsNot()]) | ast.JoinedStr():
            return isinstance(child, ast.Constant)
    return False
