"""The exact distribution of a count when all margins of its two-by-two tables are held fixed.

Guarantees: weights are whole numbers, so that p of up to `EXACT_MOST` lots is a fraction and ties
are ties; above that they are floats by the recurrence of the hypergeometric terms. Several tables
are one distribution: the count is summed over them. Refuses: counts below zero.

References:
    Cox and Snell, Analysis of Binary Data, 2nd ed. 1989, 2.1 and 4.3 (from memory): the
    distribution of the count given the margins, of one table and of several.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import comb, exp, inf, log

from msgspec import Struct

EXACT_MOST = 2000
"""Lots in all up to which the weights are whole numbers."""
HALVINGS = 60
"""How often the bounds of a root are halved: beyond the last digit of a float."""
TIE = 1 + 1e-9
"""Floats closer than this factor count as a tie."""


class Table(Struct, frozen=True):
    """How many lots failed and were clear, with and without a suspect."""

    failed_with: int
    """Failed, and the suspect was in it."""
    failed_without: int
    """Failed without it."""
    clear_with: int
    """Clear although it was in it."""
    clear_without: int
    """Clear without it."""

    def __post_init__(self) -> None:
        """Refuse counts below zero."""
        if min(self.failed_with, self.failed_without, self.clear_with, self.clear_without) < 0:
            raise ValueError("A count is never below zero.")

    @property
    def failed(self) -> int:
        """How many failed."""
        return self.failed_with + self.failed_without

    @property
    def clear(self) -> int:
        """How many were clear."""
        return self.clear_with + self.clear_without

    @property
    def with_it(self) -> int:
        """How many had the suspect."""
        return self.failed_with + self.clear_with

    @property
    def lots(self) -> int:
        """How many there are."""
        return self.failed + self.clear

    @property
    def is_telling(self) -> bool:
        """Whether its count could have been another with the same margins."""
        return 0 < self.failed < self.lots and 0 < self.with_it < self.lots


class Counts(Struct, frozen=True):
    """What the count of failed lots with the suspect could be, and how often by chance."""

    least: int
    """The smallest count the margins allow."""
    weights: tuple[int, ...] | tuple[float, ...]
    """Weight of each count from the smallest up, when the suspect makes no difference."""
    seen: int
    """The count that was seen."""

    @property
    def most(self) -> int:
        """The greatest count the margins allow."""
        return self.least + len(self.weights) - 1


def counts_of(tables: Sequence[Table]) -> Counts:
    """Return the distribution of the count of failed lots with the suspect, summed over tables."""
    is_exact = sum(table.lots for table in tables) <= EXACT_MOST
    weights: Sequence[float] = (1,)
    least = 0
    for table in tables:
        first, more = (_whole if is_exact else _floating)(table)
        least, weights = least + first, _folded(weights, more)
    seen = sum(table.failed_with for table in tables)
    return Counts(least, tuple(weights), seen)


def _whole(table: Table) -> tuple[int, Sequence[float]]:
    first, last = _ends(table)
    return first, [
        comb(table.failed, count) * comb(table.clear, table.with_it - count)
        for count in range(first, last + 1)
    ]


def _floating(table: Table) -> tuple[int, Sequence[float]]:
    first, last = _ends(table)
    logs = [0.0]
    for count in range(first, last):
        logs.append(
            logs[-1]
            + log(table.failed - count)
            + log(table.with_it - count)
            - log(count + 1)
            - log(table.clear - table.with_it + count + 1)
        )
    # Over the greatest of them, so that no power runs over and not all run to nothing.
    top = max(logs)
    return first, [exp(each - top) for each in logs]


def _ends(table: Table) -> tuple[int, int]:
    return max(0, table.with_it - table.clear), min(table.failed, table.with_it)


def _folded(one: Sequence[float], other: Sequence[float]) -> Sequence[float]:
    # A table that tells nothing has one weight, which changes no share.
    if len(other) == 1:
        return [weight * other[0] for weight in one]
    out: list[float] = [0] * (len(one) + len(other) - 1)
    for place, weight in enumerate(one):
        for further, times in enumerate(other):
            out[place + further] += weight * times
    return out


def two_sided(counts: Counts) -> Fraction:
    """Return the share of all outcomes that are no likelier than the one seen.

    >>> two_sided(counts_of([Table(3, 1, 1, 3)]))
    Fraction(17, 35)
    """
    return _no_likelier(counts, counts.weights[counts.seen - counts.least])


def one_sided(counts: Counts) -> Fraction:
    """Return the share of all outcomes in which as many failed with it, or more.

    >>> one_sided(counts_of([Table(3, 1, 1, 3)]))
    Fraction(17, 70)
    """
    return _share(counts, counts.weights[counts.seen - counts.least :])


def least_one_sided(counts: Counts) -> Fraction:
    """Return the smallest one-sided p that any outcome with these margins could have had.

    >>> least_one_sided(counts_of([Table(3, 1, 1, 3)]))
    Fraction(1, 70)
    """
    return _share(counts, counts.weights[-1:])


def _no_likelier(counts: Counts, weight: float) -> Fraction:
    bound = weight if isinstance(weight, int) else weight * TIE
    return _share(counts, [item for item in counts.weights if item <= bound])


def _share(counts: Counts, part: Sequence[float]) -> Fraction:
    return min(Fraction(sum(part)) / Fraction(sum(counts.weights)), Fraction(1))


def likeliest_odds(counts: Counts) -> float:
    """Return the conditional maximum likelihood odds ratio; infinite or 0 at the ends.

    It is the ratio at which the count seen is the count expected (Fisher's own estimate).
    """
    if counts.seen == counts.most:
        return inf
    if counts.seen == counts.least:
        return 0.0
    logs, wanted = _logs(counts), counts.seen - counts.least

    def excess(theta: float) -> float:
        shares = _tilted(logs, theta)
        return sum(place * share for place, share in enumerate(shares)) / sum(shares) - wanted

    return exp(_where(excess))


def odds_interval(counts: Counts, level: float = 0.05) -> tuple[float, float]:
    """Return the exact interval of the odds ratio (Cornfield's): each tail holds half the level.

    Args:
        counts: The distribution and the count seen.
        level: What the two tails hold together, such as 0.05 for 95 %.
    """
    half, logs, place = level / 2, _logs(counts), counts.seen - counts.least

    def excess_above(theta: float) -> float:
        shares = _tilted(logs, theta)
        return sum(shares[place:]) / sum(shares) - half

    def lack_below(theta: float) -> float:
        shares = _tilted(logs, theta)
        return half - sum(shares[: place + 1]) / sum(shares)

    low = exp(_where(excess_above)) if counts.seen > counts.least else 0.0
    return low, exp(_where(lack_below)) if counts.seen < counts.most else inf


def _logs(counts: Counts) -> list[float]:
    return [log(weight) if weight else -inf for weight in counts.weights]


def _tilted(logs: Sequence[float], theta: float) -> list[float]:
    moved = [each + theta * place for place, each in enumerate(logs)]
    top = max(moved)
    return [exp(each - top) for each in moved]


def _where(rising: Callable[[float], float]) -> float:
    """Return where a rising function of the logarithm of the odds crosses zero, by halving."""
    low, high = -1.0, 1.0
    while rising(low) > 0:
        low *= 2
    while rising(high) < 0:
        high *= 2
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if rising(middle) > 0 else (middle, high)
    return (low + high) / 2
