"""What may be made of one node of the syntax tree: its changes, as pieces of new text.

Guarantees: a change stands inside of the node, in brackets where its sign would bind otherwise.
Refuses: to look around; what is above a node is for `places`.
"""

import ast
import re
from collections.abc import Iterator

from tests.mutants.making.written import Span, Written

Change = tuple[str, Span, str]
"""Kind of the change, what it replaces, and by what."""
COMPARISONS = {
    ast.Lt: ("<", "<="),
    ast.LtE: ("<=", "<"),
    ast.Gt: (">", ">="),
    ast.GtE: (">=", ">"),
    ast.Eq: ("==", "!="),
    ast.NotEq: ("!=", "=="),
    ast.Is: ("is", "is not"),
    ast.IsNot: ("is not", "is"),
    ast.In: ("in", "not in"),
    ast.NotIn: ("not in", "in"),
}
SIGNS = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
    ast.FloorDiv: ("//", "*"),
    ast.Mod: ("%", "//"),
    ast.Pow: ("**", "*"),
    ast.BitOr: ("|", "&"),
    ast.BitAnd: ("&", "|"),
    ast.LShift: ("<<", ">>"),
    ast.RShift: (">>", "<<"),
}
LOOSER = (ast.Pow, ast.BitOr, ast.BitAnd)
"""Signs whose new sign binds otherwise, so that their sums are put into brackets."""
DIGITS = 6
"""How many digits of a number count."""
NUMERAL = re.compile(r"[-+]?[\d.,]*\d")


def negated(node: ast.expr, written: Written) -> Iterator[Change]:
    """Yield a condition turned round, unless its sign turned round is the same."""
    match node:
        case ast.UnaryOp(ast.Not(), operand):
            yield "condition", written.span(node), written.piece(operand)
        case ast.Compare(ops=[ast.Lt() | ast.LtE() | ast.Gt() | ast.GtE()]):
            yield "condition", written.span(node), f"not ({written.piece(node)})"
        case ast.Compare(ops=[_]):
            return
        case _:
            yield "condition", written.span(node), f"not ({written.piece(node)})"


def compared(node: ast.Compare, written: Written) -> Iterator[Change]:
    """Yield a comparison with each of its signs changed."""
    sides = [node.left, *node.comparators]
    for left, right, op in zip(sides, sides[1:], node.ops, strict=False):
        old, new = COMPARISONS[type(op)]
        yield "comparison", written.operator(left, right, old), new


def swapped(node: ast.BoolOp, written: Written) -> Change:
    """Return `and` for `or`, `or` for `and`."""
    old, new = ("and", "or") if isinstance(node.op, ast.And) else ("or", "and")
    start, end = written.span(node)
    made, at = "(", start
    for left, right in zip(node.values, node.values[1:], strict=False):
        begins, ends = written.operator(left, right, old)
        made, at = f"{made}{written.text[at:begins]}{new}", ends
    return "and/or", (start, end), f"{made}{written.text[at:end]})"


def reckoned(node: ast.BinOp | ast.AugAssign, written: Written) -> Iterator[Change]:
    """Yield a sum with another sign."""
    if type(node.op) not in SIGNS or _are_types(node):
        return
    old, new = SIGNS[type(node.op)]
    if isinstance(node, ast.AugAssign):
        yield "sum", written.operator(node.target, node.value, f"{old}="), f"{new}="
        return
    start, end = written.span(node)
    begins, ends = written.operator(node.left, node.right, old)
    if isinstance(node.op, LOOSER):
        left, right = written.text[start:begins], written.text[ends:end]
        yield "sum", (start, end), f"(({left}) {new} ({right}))"
    else:
        yield "sum", (begins, ends), new


def _are_types(node: ast.BinOp | ast.AugAssign) -> bool:
    """Say whether a sign joins types, as in `Lot | None`; another sign would not even run."""
    sides = [node.left, node.right] if isinstance(node, ast.BinOp) else []
    return isinstance(node.op, ast.BitOr) and any(
        ast.unparse(side)[0].isupper() and not ast.unparse(side).isupper() for side in sides
    )


def one_more(numeral: str) -> str:
    """Return a numeral with another digit: the last, or the sixth that counts if it is longer.

    A digit behind the sixth is mostly below what is known or can be seen.

    >>> one_more("0.019"), one_more("1e-9"), one_more("24"), one_more("0.00123456789")
    ('0.010', '2e-9', '25', '0.00123457789')
    """
    if numeral.isdecimal():
        return str(int(numeral) + 1)
    mantissa = re.split("[eEjJ]", numeral)[0]
    digits = [place for place, sign in enumerate(mantissa) if sign.isdigit()]
    counting = [place for place in digits if mantissa[: place + 1].strip("-+0.,_")] or digits
    at = counting[:DIGITS][-1]
    digit = (int(mantissa[at]) + 1) % 10
    return f"{numeral[:at]}{digit}{numeral[at + 1 :]}"


def constant(node: ast.Constant, written: Written) -> Iterator[Change]:
    """Yield another number, truth value or nothing."""
    span, piece = written.span(node), written.piece(node)
    match node.value:
        case bool():
            yield "truth", span, str(not node.value)
        case None:
            yield "nothing", span, "True"
        case int():
            yield "number", span, str(node.value + 1)
        case float():
            yield "number", span, one_more(piece)
        case str() | bytes():
            yield from words(node, written)


def words(node: ast.expr, written: Written) -> Iterator[Change]:
    """Yield other words for each of the strings of which a text is put together."""
    for (start, end), opening in written.strings(node):
        whole = written.text[start:end]
        head, inside = whole[:opening], whole[opening : -(len(whole[:opening].lstrip("rbufRBUF")))]
        if NUMERAL.fullmatch(inside):
            yield "number", (start, end), whole.replace(inside, one_more(inside), 1)
        else:
            yield "words", (start, end), f"{head}XX{whole[opening:]}"
