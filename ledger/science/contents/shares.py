"""How much of a lot is carried into others: along every way, summed.

Guarantees: what is drawn from a lot carries its share of all that is in that lot, so the amounts
along all ways add up; a way that nobody measured is told apart from one that carries nothing;
a circle, which only a damaged book has, is named and not followed. Refuses: to guess what nobody
measured.

Mixing is taken to be even and losses to be like the rest (common practice, no source): what a
filter kept is taken to have held as much of each input as what came through.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

Ways = Mapping[str, Sequence[tuple[str, int]]]
"""For each lot the lots next to it, with the amount that went between; 0: not measured."""


class Carrying(Struct, frozen=True):
    """How much of one lot is in another."""

    amount: float
    """How much, in the smallest unit of the lot that is carried."""
    is_all: bool
    """Whether every way was measured; else there is at least this much."""


class Order(Struct, frozen=True):
    """Lots in an order in which none comes before one that leads to it."""

    lots: tuple[str, ...]
    """The lots, the one begun with first."""
    closing: frozenset[tuple[str, str]]
    """Ways left out because they close a circle: from, to."""
    circles: tuple[tuple[str, ...], ...]
    """A circle for each of these, its lots in order."""


def carried(start: str, ways: Ways, wholes: Mapping[str, int]) -> tuple[dict[str, Carrying], Order]:
    """Return how much is carried between a lot and each lot that ways lead to.

    Followed from a lot to what it went into, this is how much of the lot is in each of those.
    Followed from a lot back to what went into it, it is how much of each of those is in the lot.
    Either way an amount that goes between counts for the share of the nearer lot that counts.

    Args:
        start: The lot begun with.
        ways: Each amount in the measure of the lot it left.
        wholes: How much there was of each lot in all, in its own measure.

    Returns:
        The amounts by lot, in the measure of the lot that is carried; and the order walked.

    Example:
        30 mL of oil in 450 mL of essence, 15 mL of which went into a syrup:

        >>> found, _ = carried(
        ...     "oil", {"oil": [("essence", 30)], "essence": [("syrup", 15)]},
        ...     {"oil": 500, "essence": 450},
        ... )
        >>> found["syrup"]
        Carrying(amount=1.0, is_all=True)
    """
    order = in_order(start, ways)
    amounts = {start: float(wholes.get(start, 0))}
    doubtful = {target for _, target in order.closing}
    for lot in order.lots:
        whole = wholes.get(lot, 0)
        share = 1.0 if lot == start else amounts.get(lot, 0.0) / whole if whole > 0 else 0.0
        is_known = lot not in doubtful and (lot == start or whole > 0)
        for other, amount in ways.get(lot, ()):
            if (lot, other) in order.closing:
                continue
            amounts[other] = amounts.get(other, 0.0) + amount * share
            if not (is_known and amount):
                doubtful.add(other)
    return {lot: Carrying(amounts[lot], lot not in doubtful) for lot in order.lots}, order


def in_order(start: str, ways: Ways) -> Order:
    """Return the lots that ways lead to, each after all that lead to it, and every circle met.

    >>> in_order("a", {"a": [("b", 1), ("c", 1)], "c": [("b", 1)]}).lots
    ('a', 'c', 'b')
    >>> in_order("a", {"a": [("b", 1)], "b": [("a", 1)]}).circles
    (('a', 'b'),)
    """
    done: list[str] = []
    finished: set[str] = set()
    # A dict keeps the order of the way and is quick to look into.
    path: dict[str, None] = {start: None}
    closing: dict[tuple[str, str], tuple[str, ...]] = {}
    waiting = [iter(_next_to(start, ways))]
    while waiting:
        lot = next(reversed(path))
        other = next(waiting[-1], None)
        if other is None:
            waiting.pop()
            path.pop(lot)
            finished.add(lot)
            done.append(lot)
        elif other in path:
            closing[lot, other] = _round(path, other)
        elif other not in finished:
            path[other] = None
            waiting.append(iter(_next_to(other, ways)))
    return Order(tuple(reversed(done)), frozenset(closing), tuple(closing.values()))


def _next_to(lot: str, ways: Ways) -> tuple[str, ...]:
    return tuple(other for other, _ in ways.get(lot, ()))


def _round(path: Iterable[str], first: str) -> tuple[str, ...]:
    lots = list(path)
    return tuple(lots[lots.index(first) :])
