"""Reading a command's words before its options are told apart.

Guarantees: a figure below zero reaches the command, which says what is wrong with it. Refuses:
unknown options, as ever.
"""

import re
from collections.abc import Sequence

import typer
from typer.core import TyperCommand

_BELOW_ZERO = re.compile(r"-[.,]?\d", re.ASCII)
MINUS = "\N{MINUS SIGN}"


class Verb(TyperCommand):
    """A command whose amounts and readings may be written with a minus sign."""

    def parse_args(self, ctx: typer.Context, args: list[str]) -> list[str]:  # type: ignore[override]
        """Parse the words; a figure such as -18 is no option."""
        return super().parse_args(ctx, with_minus_signs(args))


def with_minus_signs(args: Sequence[str]) -> list[str]:
    """Write the hyphen before a figure as a minus sign, but for what an option takes.

    >>> with_minus_signs(["OE-001-5", "-30mL", "--at", "-2h"])
    ['OE-001-5', '−30mL', '--at', '-2h']
    """
    before = ["", *args]
    return [
        MINUS + arg[1:] if _BELOW_ZERO.match(arg) and not last.startswith("-") else arg
        for last, arg in zip(before, args, strict=False)
    ]
