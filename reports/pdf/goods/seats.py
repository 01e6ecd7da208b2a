"""Which places of which pages the labels of a run stand on.

Guarantees: every place is taken at most once, and none before the first that is free. Front and
back of a bottle are neighbours on one page: side by side in a row, and in a column that is left
over one below the other; on a roll of single labels the back follows its front. Refuses: to begin
where a sheet has no such place left.
"""

from collections.abc import Iterator
from itertools import count

from ledger.errors import RefusedError
from reports.pdf.goods.layouts import Layout

Seat = tuple[int, int]
"""A page and a place on it, both counted from 0."""


def seats(layout: Layout, panels: int, start_at: int = 1) -> Iterator[tuple[Seat, ...]]:
    """Yield, without end, the places of one label after the other, one for each of its panels.

    Args:
        layout: Where labels stand.
        panels: 1, or 2 for front and back.
        start_at: The first place that is free on the first page, counted from 1.

    Raises:
        RefusedError: The sheet has no such place, or no two neighbours from it on.
    """
    if not 1 <= start_at <= layout.per_page:
        raise RefusedError(
            f"A sheet of {layout.name} has {layout.per_page} labels, and no label {start_at}.",
            f"Give --start-at with 1 to {layout.per_page}.",
        )
    if panels == 1 or layout.per_page == 1:
        return _in_order(layout.per_page, panels, start_at - 1)
    pairs = neighbours(layout)
    last = pairs[-1][0] + 1
    if start_at > last:
        raise RefusedError(
            f"A sheet of {layout.name} has no two neighbours, for front and back, from label "
            f"{start_at} on.",
            f"Give --start-at with 1 to {last}.",
        )
    return _paired(pairs, start_at - 1)


def neighbours(layout: Layout) -> list[tuple[int, int]]:
    """Return the places of a page in pairs of neighbours, in the order of their fronts.

    Of an odd number of places one is left over.
    """
    across, down = layout.across, layout.down
    rows = range(0, across * down, across)
    pairs = [(row + n, row + n + 1) for row in rows for n in range(0, across - 1, 2)]
    if across % 2:
        above = range(across - 1, across * (down - 1), 2 * across)
        pairs += [(place, place + across) for place in above]
    return sorted(pairs)


def _in_order(per_page: int, panels: int, first: int) -> Iterator[tuple[Seat, ...]]:
    places = count(first)
    while True:
        yield tuple(divmod(next(places), per_page) for _ in range(panels))


def _paired(pairs: list[tuple[int, int]], first: int) -> Iterator[tuple[Seat, ...]]:
    for page in count():
        yield from (
            ((page, front), (page, back)) for front, back in pairs if page or front >= first
        )
