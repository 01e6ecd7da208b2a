"""Figures beside their limits, for machines: each with its doubt and its verdict."""

from collections.abc import Iterator

from ledger.domain.entries.choices import LimitBasis
from ledger.science.contents.against import Compared, Daily
from ledger.science.doubt.conformity import Verdict
from ledger.science.ranges import significant
from ledger.service.glass.card import Pouring
from reports.json.kit.answer import Answer, Figure
from reports.kit.amounts import decimal_amount


class LimitHeld(Answer, frozen=True):
    """A figure beside a limit."""

    limit: str
    """Code of the limit."""
    place: str
    """Where it holds."""
    substance: str
    """What is limited."""
    basis: LimitBasis
    """What it counts in."""
    pour: str
    """How the lot is poured, in words."""
    who: str | None
    """For whom a daily ceiling is told."""
    value: Figure
    """The figure, in `unit`."""
    doubt: Figure
    """Half the width of the interval that holds the truth in some 95 of 100 cases, in `unit`."""
    limit_value: Figure
    """The limit, in `unit`; of a daily ceiling what it is for that body."""
    unit: str
    """The unit of the three."""
    verdict: Verdict
    """On which side of the limit it is, for all its doubt."""
    doubted_by: str | None
    """What adds most to the doubt; null where there is none."""


def limits_held(way: Pouring) -> Iterator[LimitHeld]:
    """Yield every figure of a way to pour that stands beside a limit."""
    for served in way.concerns:
        for daily in served.daily:
            yield _daily(daily, way)
        for item in served.limits:
            yield _compared(item, way)
    for item in way.markers:
        yield _compared(item, way)


def _daily(item: Daily, way: Pouring) -> LimitHeld:
    return LimitHeld(
        limit=item.limit.code,
        place=item.limit.place,
        substance=item.limit.substance,
        basis=item.limit.basis,
        pour=way.said,
        who=item.who,
        value=significant(item.taken_mg, 4),
        doubt=significant(item.doubt, 2),
        limit_value=significant(item.ceiling_mg, 4),
        unit="mg a day",
        verdict=item.verdict,
        doubted_by=item.by,
    )


def _compared(item: Compared, way: Pouring) -> LimitHeld:
    return LimitHeld(
        limit=item.limit.code,
        place=item.limit.place,
        substance=item.limit.substance,
        basis=item.limit.basis,
        pour=way.said,
        who=None,
        value=significant(item.figure, 4),
        doubt=significant(item.doubt, 2),
        limit_value=decimal_amount(item.limit.value_micro, 6),
        unit=item.limit.unit,
        verdict=item.verdict,
        doubted_by=item.by,
    )
