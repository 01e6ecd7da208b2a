"""Lines for the jars of a trial: a row is one act or one factor, with a word for each jar.

Guarantees: pure; a row is read into one line for each jar, which the grammar of a line then reads.
Refuses: a row with more or fewer words than jars.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

from cli.screens.bench.slots import GRADES
from cli.screens.bench.words import joined
from ledger.errors import InputError

SKIP = "-"
"""The word for a jar that a row leaves out."""
FACTOR, JARS, CONTROL = "factor", "jars", "control"


@dataclass(frozen=True, slots=True)
class Plan:
    """What is set in jars that are not begun yet."""

    factors: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """The level of each jar by the name of the factor."""

    def with_row(self, words: Sequence[str]) -> "Plan":
        """Return the plan with a factor's row.

        Raises:
            InputError: It has no levels, or not as many as the rows before.
        """
        name, *levels = words or [""]
        if not levels:
            raise InputError(
                "A factor has a name and a level for each jar.",
                "Write it as: factor rest 24h 48h 24h 48h",
            )
        _same_length(levels, next((len(row) for row in self.factors.values()), len(levels)))
        return Plan({**self.factors, name: tuple(levels)})

    def starts(self, words: Sequence[str], trial: str) -> list[tuple[str, ...]]:
        """Return the words that begin each jar.

        Args:
            words: How many jars, then what they are: a formula and a volume, or options of start.
            trial: The name of the trial.

        Raises:
            InputError: It does not say how many, or the rows of factors have others.
        """
        if not words or not words[0].isdecimal() or not int(words[0]) or len(words) < 2:
            raise InputError(
                "A trial's jars are told by their number and what is in them.",
                "Write it as: jars 6 orange-essence 50",
            )
        number, made = int(words[0]), list(words[1:])
        for levels in self.factors.values():
            _same_length(levels, number)
        return [
            (*made, "--trial", trial, *self._factors_of(jar), *self._control(jar))
            for jar in range(number)
        ]

    def _factors_of(self, jar: int) -> list[str]:
        told = ((name, levels[jar]) for name, levels in self.factors.items())
        return [
            part
            for name, level in told
            if level != SKIP
            for part in ("--factor", f"{name}={level}")
        ]

    def _control(self, jar: int) -> list[str]:
        levels = [row[jar] for row in self.factors.values()]
        return ["--control"] if levels and all(level == SKIP for level in levels) else []


def lines_of(text: str, jars: int) -> list[str | None]:
    """Return the line of a row for each jar; None for one that is left out.

    A row of grades has a grade for each; any other row begins with its act, and what is the same
    for all is written once.

    Args:
        text: The row.
        jars: How many jars there are.

    Raises:
        InputError: It has more or fewer words than jars.

    >>> lines_of("oil 1 1 2", 3), lines_of("spirit 15", 2)
    (['oil 1', 'oil 1', 'oil 2'], ['spirit 15', 'spirit 15'])
    >>> lines_of("clear - hazy", 3), lines_of("filter 40 38 / paper 20", 2)
    (['clear', None, 'hazy'], ['filter 40 paper 20', 'filter 38 paper 20'])
    """
    plain, _, same = text.partition(" / ")
    words = joined(plain.split())
    if words and (words[0].casefold() in GRADES or words[0] == SKIP) and len(words) > 1:
        _same_length(words, jars)
        return [_line("", word, same) for word in words]
    head, each = words[0] if words else "", words[1:]
    if len(each) == 1 or not each:
        return [text.replace(" / ", " ")] * jars
    _same_length(each, jars)
    return [_line(head, word, same) for word in each]


def _line(head: str, word: str, same: str) -> str | None:
    return None if word == SKIP else " ".join(part for part in (head, word, same) if part)


def _same_length(words: Sequence[str], jars: int) -> None:
    if len(words) != jars:
        raise InputError(
            f"The row has {len(words)} words for {jars} jars.",
            f"Write one for each, {SKIP} for a jar that is left out, or one for all; what is the "
            "same for all stands behind a stroke: filter 40 38 / paper 20",
        )
