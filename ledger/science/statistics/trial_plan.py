"""The cheapest trial that tells suspects apart.

Guarantees: the number of jars is the least with which an exact test can reach the level, should one
suspect fail in each of its jars and nothing else fail. Refuses: to try a lot without what it is
made of; a batch that contains another suspect is told apart from it by a fresh batch.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from ledger.science.statistics.association import fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Crossing

MOST_JARS = 100
"""No arm is longer than this."""


def crossing(
    causes: Sequence[Cause], made_of: Mapping[str, frozenset[str]], level: Fraction
) -> Crossing:
    """Return the trial that tries each cause without the others.

    Args:
        causes: What always went together, or one cause to confirm.
        made_of: For each lot the lots it is made of.
        level: The level to reach.
    """
    names = {cause.name for cause in causes}
    arms = tuple(cause for cause in causes if not made_of.get(cause.name, frozenset()) & names)
    has_control = len(arms) == 1
    jars, p = jars_needed(len(arms) + has_control, level)
    return Crossing(arms, has_control, jars, p)


def jars_needed(arms: int, level: Fraction) -> tuple[int, Fraction]:
    """Return how many jars each arm needs, and the p they could then reach.

    With two arms there is one comparison; with more, one for each arm against all the others.

    >>> jars_needed(2, Fraction(1, 20)), jars_needed(3, Fraction(1, 20))
    ((4, Fraction(1, 35)), (3, Fraction(1, 28)))
    """
    comparisons = 1 if arms == 2 else arms
    for jars in range(1, MOST_JARS):
        p = fisher(Table(jars, 0, 0, jars * (arms - 1))) * comparisons
        if p <= level:
            return jars, p
    return MOST_JARS, p
