"""Limits beside the figures of a card, as one table with its sources below.

Guarantees: a row a limit, a column a way to pour, a number for its source. Refuses: to leave out a
source. Of alcohol and sugar only what is passed, reached or just missed is told, with what goes
with it; what words on a label ask for only where the label claims them.
"""

from msgspec import Struct

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, LimitBasis, LimitUnit
from ledger.science.contents.serving import Compared, Daily
from ledger.science.ranges import significant
from ledger.service.glass.card import ServingCard
from reports.kit.figures import abv_words, mg_words
from reports.words.entries.limits import amount_of, source_of

PAST, REACHED = "PAST", "REACHED"
"""What is written at a figure that is over a limit, and at one that has reached a marker."""
MARKS = (Bound.FROM, Bound.ABOVE)
"""Bounds that mark what reaches them rather than forbid it."""
NEARLY = 0.9
"""Share of a marker from which a figure that misses it is told all the same: a doubt of either may
lie between them (common practice, no source)."""
WORDS = "the words "
"""How a limit says that it is one for words on a label."""


class LimitTable(Struct, frozen=True):
    """Limits beside figures."""

    heads: tuple[str, ...]
    """Column heads."""
    rows: tuple[tuple[str, ...], ...]
    """Cells."""
    sources: tuple[str, ...]
    """The sources by their numbers, a line each."""


class _Sources:
    """Numbers the sources in the order in which they are met."""

    def __init__(self) -> None:
        self.known: dict[str, int] = {}

    def number(self, limit: Limit) -> str:
        return str(self.known.setdefault(source_of(limit), len(self.known) + 1))


def limit_table(card: ServingCard) -> LimitTable:
    """Return the daily ceilings, limits and markers of a card."""
    sources, rows = _Sources(), []
    first = card.pourings[0]
    for number, served in enumerate(first.concerns):
        name = served.concern.substance
        for place, item in enumerate(served.daily):
            words = f"{name}: {mg_words(item.ceiling_mg)} a day, {item.who} of {item.body_kg} kg"
            rows.append((words, *_dailies(card, number, place), sources.number(item.limit)))
        for place, against in enumerate(served.limits):
            by_way = [way.concerns[number].limits[place] for way in card.pourings]
            rows.append((_said(against.limit), *map(_cell, by_way), sources.number(against.limit)))
    told = {
        _whole(item.limit) for way in card.pourings for item in way.markers if _counts(item, card)
    }
    for place, marker in enumerate(first.markers):
        # What one source asks for together is told together, also where a part of it alone is
        # reached.
        if _whole(marker.limit) in told:
            by_way = [way.markers[place] for way in card.pourings]
            where = "syrup" if card.is_essence else "bottle"
            rows.append(
                (_said(marker.limit, where), *map(_cell, by_way), sources.number(marker.limit))
            )
    return LimitTable(
        ("limit or marker", *(way.said for way in card.pourings), "source"),
        tuple(rows),
        tuple(f"[{number}] {source}." for source, number in sources.known.items()),
    )


def _dailies(card: ServingCard, number: int, place: int) -> tuple[str, ...]:
    return tuple(_daily(way.concerns[number].daily[place]) for way in card.pourings)


def _daily(item: Daily) -> str:
    share = "" if item.percent is None else f"{item.percent:.0f} %"
    return f"{share} {PAST}".strip() if item.is_passed else share


def _cell(item: Compared) -> str:
    figure = (
        abv_words(item.figure)
        if item.limit.unit is LimitUnit.PERCENT_VOL
        else f"{significant(item.figure)} {item.limit.unit}"
    )
    word = REACHED if item.limit.bound in MARKS else PAST
    return f"{figure} {word}" if item.is_passed else figure


def _said(limit: Limit, sold_in: str = "bottle") -> str:
    where = "glass" if limit.basis is LimitBasis.IN_DRINK else sold_in
    says = f": {limit.says}" if limit.says else ""
    return f"{limit.place}, {limit.substance} in the {where} {amount_of(limit)}{says}"


def _whole(limit: Limit) -> tuple[str, ...]:
    """Return what a limit is part of: one source may ask for a strength and for sugar together.

    Words on a label are each a matter of their own.
    """
    says = limit.says or limit.code
    return (limit.place, limit.citation, says, limit.code if says.startswith(WORDS) else "")


def _counts(item: Compared, card: ServingCard) -> bool:
    """Return whether there is something to say of a limit or marker of alcohol or sugar."""
    if item.limit.code == card.claim:
        return True
    value = item.limit.value_micro / 1_000_000
    is_near = item.limit.bound in MARKS and item.figure >= NEARLY * value
    return (item.is_passed or is_near) and not (item.limit.says or "").startswith(WORDS)
