"""The text of a module beside its syntax tree: where a node, an operator or a string stands.

Guarantees: places are counted in characters of the text, not in bytes as the tree counts them.
"""

import ast
import io
import re
import tokenize
from bisect import bisect_left
from collections.abc import Iterator
from functools import cached_property

_COMMENT = re.compile(r"#[^\n]*")
_STRINGS = {tokenize.STRING, getattr(tokenize, "FSTRING_START", tokenize.STRING)}
"""Tokens with which strings begin; since Python 3.12 those with fields are cut into several."""
_OPENING = re.compile(r"[A-Za-z]*('''|\"\"\"|'|\")")
Span = tuple[int, int]
"""Where something begins and ends in a text."""


class Written:
    """A module as it is written."""

    def __init__(self, text: str) -> None:
        """Read a text; raises SyntaxError where it is no Python."""
        self.text = text
        self.tree = ast.parse(text)
        self._lines = text.splitlines(keepends=True)
        self._begins = [0]
        for line in self._lines:
            self._begins.append(self._begins[-1] + len(line))

    def _offset(self, line: int, byte: int) -> int:
        piece = self._lines[line - 1].encode()[:byte] if line <= len(self._lines) else b""
        return self._begins[line - 1] + len(piece.decode())

    def span(self, node: ast.expr | ast.stmt) -> Span:
        """Return where a node begins and ends."""
        assert node.end_lineno is not None
        assert node.end_col_offset is not None
        return (
            self._offset(node.lineno, node.col_offset),
            self._offset(node.end_lineno, node.end_col_offset),
        )

    def piece(self, node: ast.expr | ast.stmt) -> str:
        """Return the text of a node."""
        start, end = self.span(node)
        return self.text[start:end]

    def is_true_to(self, node: ast.expr) -> bool:
        """Say whether a node stands where it says; inside of strings it may not (Python 3.11)."""
        try:
            found = ast.parse(f"({self.piece(node)}\n)", mode="eval").body
        except SyntaxError:
            return False
        return ast.dump(found) == ast.dump(node)

    def operator(self, left: ast.expr, right: ast.expr, sign: str) -> Span:
        """Return where a sign stands between its two sides, comments and brackets left out."""
        start, end = self.span(left)[1], self.span(right)[0]
        gap = _COMMENT.sub(lambda found: " " * len(found[0]), self.text[start:end])
        pattern = r"\s+".join(re.escape(word) for word in sign.split())
        found = re.search(pattern, gap)
        if found is None:
            raise ValueError(f"There is no {sign} between {left!r} and {right!r}.")
        return start + found.start(), start + found.end()

    @cached_property
    def _strings(self) -> list[Span]:
        found = []
        for token in tokenize.generate_tokens(io.StringIO(self.text).readline):
            if token.type in _STRINGS:
                start, end = (self._begins[row - 1] + at for row, at in (token.start, token.end))
                found.append((start, end))
        return found

    def strings(self, node: ast.expr) -> Iterator[tuple[Span, int]]:
        """Yield where each string in a node stands and how long its opening is."""
        start, end = self.span(node)
        for begins, ends in self._strings[bisect_left(self._strings, (start, start)) :]:
            if begins >= end:
                return
            opening = _OPENING.match(self.text, begins)
            assert opening is not None
            yield (begins, ends), opening.end() - begins
