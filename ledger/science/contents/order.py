"""An order for reckoning: lots after those they follow from.

Guarantees: without recursion, however long the chain; a circle, which only a damaged book has, is
named and one way of it left out. Refuses: to follow a circle.
"""

from collections.abc import Callable, Iterable, Sequence

from msgspec import Struct


class Order(Struct, frozen=True):
    """Lots in an order in which each comes after all that it follows from."""

    lots: tuple[str, ...]
    """The lots, the one begun with last."""
    closing: frozenset[tuple[str, str]]
    """Ways left out because they close a circle: the lot, and one that it follows from."""
    circles: tuple[tuple[str, ...], ...]
    """A circle for each of these, each lot following from the next."""


def in_order(starts: Sequence[str], sources: Callable[[str], Iterable[str]]) -> Order:
    """Return lots and all they follow from, each after those it follows from.

    Args:
        starts: The lots begun with.
        sources: What a lot follows from.

    >>> in_order(["a"], {"a": ["b", "c"], "b": ["c"], "c": []}.__getitem__).lots
    ('c', 'b', 'a')
    >>> in_order(["a"], {"a": ["b"], "b": ["a"]}.__getitem__).circles
    (('a', 'b'),)
    """
    done: dict[str, None] = {}
    closing: dict[tuple[str, str], tuple[str, ...]] = {}
    for start in starts:
        if start not in done:
            _walk(start, sources, done, closing)
    return Order(tuple(done), frozenset(closing), tuple(closing.values()))


def _walk(
    start: str,
    sources: Callable[[str], Iterable[str]],
    done: dict[str, None],
    closing: dict[tuple[str, str], tuple[str, ...]],
) -> None:
    path: dict[str, None] = {start: None}
    waiting = [iter(sources(start))]
    while waiting:
        lot = next(reversed(path))
        other = next(waiting[-1], None)
        if other is None:
            waiting.pop()
            path.pop(lot)
            done[lot] = None
        elif other in path:
            closing[lot, other] = _round(path, other)
        elif other not in done:
            path[other] = None
            waiting.append(iter(sources(other)))


def _round(path: Iterable[str], first: str) -> tuple[str, ...]:
    lots = list(path)
    return tuple(lots[lots.index(first) :])
