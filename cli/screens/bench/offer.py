"""Steps that are offered at the bench: a number, and Enter, does one.

Guarantees: pure; what is offered is the command that the book proposes, word for word, and what it
leaves open stands in capitals until it is filled in. Refuses: to fill in anything by itself.
"""

import shlex
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from cli.screens.bench.words import with_unit
from ledger.errors import InputError

BLANKS = {
    "VOLUME": "mL",
    "AMOUNT": "mL",
    "COUNTxSIZE": "mL",
    **dict.fromkeys(
        (
            *("GRADE", "READING", "DEGREES", "SIZE", "PURPOSE", "WHAT", "WHERE", "WHEN", "LOT"),
            *("COUNT", "WHO", "NAME", "KIND", "HOW", "REASON", "SUPPLIER", "WHY IT IS GONE"),
        ),
        "",
    ),
}
"""Words in capitals that a maker fills in, with what a bare number is counted in."""


@dataclass(frozen=True, slots=True)
class Offer:
    """A step that is offered."""

    words: tuple[str, ...]
    """The words of its command."""
    shown: str
    """What is shown of it."""

    @property
    def blanks(self) -> tuple[str, ...]:
        """What is to be filled in."""
        return tuple(word for word in self.words if word in BLANKS)


def offer(step: str, lot: str | None, shown: str = "") -> Offer:
    """Return a step that a command proposes.

    Args:
        step: The command.
        lot: Code of the lot in hand, which needs no mention.
        shown: What is shown of it; as it is typed when empty.

    >>> offer("pottle filter OE-001-5 --medium paper --pore 20 --out VOLUME", "OE-001-5").shown
    'filter medium paper pore 20 out VOLUME'
    """
    words = shlex.split(step.replace("COUNT x SIZE", "COUNTxSIZE"))[1:]
    told = " ".join(word.removeprefix("--") for word in words if word != lot)
    return Offer(tuple(words), shown or told)


def filled_in(
    chosen: Offer, words: Sequence[str], unit_of: Callable[[str], str | None]
) -> tuple[str, ...]:
    """Return the words of a step's command with its capitals filled in.

    Args:
        chosen: The step.
        words: What is filled in, in order.
        unit_of: Returns what a lot is counted in.

    Raises:
        InputError: Too little or too much is.
    """
    blanks = chosen.blanks
    if len(words) < len(blanks):
        raise InputError(
            f"This step leaves open: {', '.join(blanks[len(words) :])}.",
            "Write it after the number of the step.",
        )
    if len(words) > len(blanks):
        raise InputError(
            f'"{words[len(blanks)]}" is more than this step takes.',
            f"It takes: {', '.join(blanks)}." if blanks else "Write the number alone.",
        )
    values, told = iter(words), list[str]()
    for word in chosen.words:
        unit = BLANKS.get(word)
        if unit is None:
            told.append(word)
            continue
        own = unit_of(told[-1]) if word == "AMOUNT" and told else None
        told.append(with_unit(next(values), unit if own is None else own))
    return tuple(told)
