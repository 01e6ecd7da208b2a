"""The places of a module at which one small fault may be put, and the text with that fault.

Guarantees: a changed text is Python and differs from the text in its syntax tree, at that place
alone. Refuses docstrings, annotations, imports, `__all__`, what only a type checker reads, and what
stands in a string of Python 3.11 at a place that its tree tells wrongly.
"""

import ast
from collections.abc import Iterator
from dataclasses import dataclass

from tests.mutants.making import changes, dropping
from tests.mutants.making.changes import Change
from tests.mutants.making.walking import FUNCTIONS, Above, nodes
from tests.mutants.making.written import Written


@dataclass(frozen=True, slots=True)
class Place:
    """A place and what is written there instead."""

    kind: str
    start: int
    end: int
    """Where it stands, in characters from the beginning of the text."""
    new: str
    lines: tuple[int, int]
    """First and last line of what is run for it: the statement, or the head of a block."""
    in_function: bool
    """Whether it is run when a function is called; else when the module is imported."""


def places(text: str) -> list[Place]:
    """Return all places of a module, in the order in which they stand."""
    written = Written(text)
    found = {
        (span, new): Place(kind, *span, new, above.lines, above.in_function)
        for node, above in nodes(written.tree, Above())
        if not above.in_string or (isinstance(node, ast.expr) and written.is_true_to(node))
        for kind, span, new in _changes(node, written)
    }
    return sorted(found.values(), key=lambda place: (place.start, place.end, place.new))


def changed(text: str, place: Place) -> str:
    """Return the text with the fault."""
    return f"{text[: place.start]}{place.new}{text[place.end :]}"


def is_fault(text: str, place: Place) -> bool:
    """Say whether the text with the fault is Python, and another program."""
    try:
        after = ast.parse(changed(text, place))
    except SyntaxError:
        return False
    return ast.dump(after) != ast.dump(ast.parse(text))


def function_lines(text: str) -> set[int]:
    """Return the lines inside of functions, which are run when these are called."""
    return {
        line
        for node in ast.walk(ast.parse(text))
        if isinstance(node, FUNCTIONS)
        for line in range(node.body[0].lineno, (node.end_lineno or 0) + 1)
    }


def _changes(node: ast.AST, written: Written) -> Iterator[Change]:
    match node:
        case ast.If() | ast.While() | ast.IfExp() | ast.Assert():
            yield from changes.negated(node.test, written)
        case ast.comprehension():
            for test in node.ifs:
                yield from changes.negated(test, written)
        case ast.match_case(guard=ast.expr() as test):
            yield from changes.negated(test, written)
        case ast.BoolOp():
            yield changes.swapped(node, written)
        case ast.Compare():
            yield from changes.compared(node, written)
        case ast.BinOp() | ast.AugAssign():
            yield from changes.reckoned(node, written)
        case ast.UnaryOp(ast.Not() | ast.USub()):
            sign = "not" if isinstance(node.op, ast.Not) else "sum"
            yield sign, written.span(node), f"({written.piece(node.operand)})"
        case ast.Constant():
            yield from changes.constant(node, written)
        case ast.JoinedStr():
            yield from changes.words(node, written)
        case ast.Return():
            yield from dropping.answered(node, written)
    if isinstance(node, ast.stmt):
        yield from dropping.dropped(node, written)
    if isinstance(node, ast.expr):
        yield from dropping.shorter(node, written)
