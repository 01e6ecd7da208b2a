"""Figures of a glass beside the limits and ceilings of laws and of evaluations.

Guarantees: each limit is compared on the basis it is stated for, in its own unit; what cannot be
compared is left out. A figure has its doubt where one was reckoned. Results are floats and not
rounded. Refuses: to convert a unit whose meaning differs.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, LimitBasis, LimitUnit
from ledger.domain.masters.limits import is_passed
from ledger.science.contents.composition import Contents
from ledger.science.contents.serving import BASE, Concern, Glass, concern_of
from ledger.science.doubt.conformity import Verdict, verdict
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3

ALCOHOL, SUGAR = "alcohol", "sugar"
"""What limits and markers call the ethanol and the sucrose of a liquid."""


class Compared(Struct, frozen=True):
    """A figure beside a limit."""

    limit: Limit
    """The limit."""
    figure: float
    """What it is, in the limit's unit."""
    is_passed: bool
    """Whether the figure is on the side of the limit that is the matter."""
    doubt: float = 0.0
    """Half the width of its interval, in the limit's unit."""
    by: str | None = None
    """What adds most to that doubt; None where there is none."""

    @property
    def verdict(self) -> Verdict:
        """On which side of the limit it is, for all its doubt."""
        value = self.limit.value_micro / 1_000_000
        return verdict(self.figure, self.doubt, value, at_limit=_at(self.limit.bound))


def _at(bound: Bound) -> Verdict:
    """Return what a figure just at a limit counts as, as `is_passed` has it."""
    return Verdict.BELOW if bound in (Bound.AT_MOST, Bound.ABOVE) else Verdict.ABOVE


def compared(concern: Concern, limits: Iterable[Limit]) -> tuple[Compared, ...]:
    """Return the limits of a substance as served and as sold, with its figures.

    Those that cannot be compared are left out; daily ones are for `daily`.
    """
    beside_limits = []
    for limit in limits:
        # By the substance that the limit names: one for a salt looks at that salt, one for an acid
        # at the acid with what its salts count as.
        figure = _figure(concern, limit) if limit.substance == concern.substance else None
        if figure is not None:
            beside_limits.append(Compared(limit, figure, is_passed(figure, limit)))
    return tuple(beside_limits)


def _figure(concern: Concern, limit: Limit) -> float | None:
    """Return a concern in a limit's unit and on its basis; None where it has no such figure."""
    if limit.basis is LimitBasis.PER_DAY:
        return None
    drink = limit.basis is LimitBasis.IN_DRINK
    mg_per_kg = concern.mg_per_kg_drink if drink else concern.mg_per_kg_lot
    mg_per_l = concern.mg_per_l_drink if drink else concern.mg_per_l_lot
    match limit.unit:
        case LimitUnit.MG_PER_KG:
            return mg_per_kg
        case LimitUnit.PERCENT_MASS:
            return mg_per_kg / 10_000
        case LimitUnit.MG_PER_L:
            return mg_per_l
        case LimitUnit.G_PER_100ML:
            return mg_per_l / 10_000
        case LimitUnit.PERCENT_VOL if concern.substance == ALCOHOL:
            # mg over the g that a litre of pure ethanol weighs, in per cent.
            return mg_per_l / 10 / ETHANOL_KG_PER_M3
        case _:
            return None


class Daily(Struct, frozen=True):
    """A daily ceiling for somebody."""

    limit: Limit
    """The limit, in mg for each kg of body weight."""
    who: str
    """For whom: an adult, a child."""
    body_kg: int
    """Body weight in kg."""
    ceiling_mg: float
    """The most a day, in mg."""
    percent: float | None
    """How much of it a glass takes, in per cent; None where nothing at all is allowed."""
    taken_mg: float
    """How much a glass takes, in mg."""
    doubt: float = 0.0
    """Half the width of the interval of what it takes, in mg."""
    by: str | None = None
    """What adds most to that doubt; None where there is none."""

    @property
    def verdict(self) -> Verdict:
        """On which side of the ceiling it is, for all its doubt."""
        return verdict(self.taken_mg, self.doubt, self.ceiling_mg, at_limit=Verdict.BELOW)

    @property
    def is_passed(self) -> bool:
        """Whether one glass is more than a day's ceiling."""
        return self.percent is None or self.percent > 100


def daily(
    concern: Concern, limits: Iterable[Limit], bodies: Sequence[tuple[str, int]]
) -> tuple[Daily, ...]:
    """Return the daily ceilings of a substance for bodies of so many kg; none where none is in."""
    return tuple(
        _daily(concern, limit, who, kg)
        for limit in limits
        if limit.substance == concern.substance
        and limit.basis is LimitBasis.PER_DAY
        and limit.unit is LimitUnit.MG_PER_KG_BODY
        and concern.mg_per_glass > 0
        for who, kg in bodies
    )


def _daily(concern: Concern, limit: Limit, who: str, body_kg: int) -> Daily:
    ceiling_mg = limit.value_micro / 1_000_000 * body_kg
    percent = 100 * concern.mg_per_glass / ceiling_mg if ceiling_mg else None
    return Daily(limit, who, body_kg, ceiling_mg, percent, concern.mg_per_glass)


def markers(syrup: Contents, glass: Glass, limits: Iterable[Limit]) -> tuple[Compared, ...]:
    """Return the limits and markers of alcohol and of sugar with the figures they look at.

    Those of sugar are left out where a syrup is told only by what an essence brings into it.

    Args:
        syrup: The syrup that is poured, or sold.
        glass: A glass of it.
        limits: The limits.
    """
    held = [(ALCOHOL, glass.syrup.ethanol_mg, syrup.ethanol_mg)]
    if BASE not in syrup.unknown_ul:
        held.append((SUGAR, glass.syrup.sucrose_mg, syrup.sucrose_mg))
    told = tuple(limits)
    return tuple(
        item
        for substance, in_glass_mg, in_syrup_mg in held
        for item in compared(concern_of(substance, in_glass_mg, in_syrup_mg, glass, syrup), told)
    )
