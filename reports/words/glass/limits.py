"""Limits beside the figures of a card, as one table with its sources below.

Guarantees: a row a limit, a column a way to pour, a number for its source; no figure stands beside
a limit without its doubt. Refuses: to leave out a
source. Of alcohol and sugar only what is passed, reached or just missed is told, with what goes
with it; what words on a label ask for only where the label claims them.
"""

from collections.abc import Iterator

from msgspec import Struct

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, LimitBasis
from ledger.science.contents.against import Compared, Daily
from ledger.science.doubt.conformity import RULE, Verdict
from ledger.service.glass.card import Pouring, ServingCard
from ledger.service.glass.doubted import DOSE, ETHANOL, SUGAR, VOLUME
from reports.kit.figures import doubted, mg_words
from reports.words.entries.limits import amount_of, source_of

PAST, REACHED = "PAST", "REACHED"
"""What is written at a figure that is over a limit, and at one that has reached a marker."""
CLOSE = "TOO CLOSE"
"""What is written at a figure whose interval holds the limit."""
DOUBTED = {VOLUME: "the lot's volume", ETHANOL: "its alcohol", SUGAR: "its sugar"}
"""What a figure is in doubt by, in words."""
DECIDES = {
    VOLUME: "weigh the lot, or measure it at 20 °C, and tell the house's instruments with "
    "pottle house --doubt",
    ETHANOL: "have its strength measured by distillation, since sugar and oil falsify an "
    "alcoholmeter",
    SUGAR: "weigh the sugar on a finer scale, and tell it with pottle house --doubt",
    DOSE: "weigh the dose",
}
"""What measurement would decide, by what most of the doubt is."""
DECIDES_OIL = "have this lot of {code} analysed, or ask for its certificate"
"""What would decide where most of the doubt is an oil."""
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
    return f"{_share(item)} {_word(item)}".strip()


def _share(item: Daily) -> str:
    """Return what part of a daily ceiling a glass takes, with its doubt."""
    if item.percent is None:
        return ""
    half_width = 100 * item.doubt / item.ceiling_mg
    # What is small beside its ceiling, doubt and all, needs no digits.
    if item.percent + half_width < 1:
        return "<1 %"
    return f"{doubted(item.percent, half_width)} %"


def _cell(item: Compared) -> str:
    return f"{figure_of(item)} {_word(item)}".strip()


def figure_of(item: Compared) -> str:
    """Return a figure beside its limit, with its doubt and its unit."""
    return f"{doubted(item.figure, item.doubt)} {item.limit.unit}"


def _word(item: Compared | Daily) -> str:
    """Return what is written at a figure: nothing where all of its interval is on the good side."""
    if item.verdict is Verdict.BELOW:
        return ""
    if item.verdict is Verdict.UNDECIDED:
        return CLOSE
    return REACHED if isinstance(item, Compared) and item.limit.bound in MARKS else PAST


def close_lines(card: ServingCard) -> list[str]:
    """Return what is too close to tell, and which measurement would decide it, a line each."""
    by_what: dict[str, list[str]] = {}
    for way in card.pourings:
        for item in _told(way, card):
            if item.verdict is Verdict.UNDECIDED and item.by:
                what = f"{item.limit.substance}, {item.limit.place}"
                by_what.setdefault(item.by, []).append(what)
    if not by_what:
        return []
    return [
        f"{CLOSE}: too close to tell with these instruments; {RULE}.",
        *(
            f"  {'; '.join(dict.fromkeys(names))}: most of the doubt is {DOUBTED.get(by, by)}; "
            f"{DECIDES.get(by, DECIDES_OIL.format(code=by))}."
            for by, names in by_what.items()
        ),
    ]


def _told(way: Pouring, card: ServingCard) -> Iterator[Compared | Daily]:
    for served in way.concerns:
        yield from served.daily
        yield from served.limits
    yield from (item for item in way.markers if _counts(item, card))


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
    is_words = (item.limit.says or "").startswith(WORDS)
    return (item.verdict is not Verdict.BELOW or is_near) and not is_words
