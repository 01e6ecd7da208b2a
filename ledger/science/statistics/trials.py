"""Comparing the batches of a trial: response by factor, what moved together, what is not beaten.

Guarantees: factors that always moved together have no effect of their own; grades are compared as
ranks and numbers as numbers, neither made of the other. Refuses: to call a difference real; repeats
show how large chance is.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import combinations

from msgspec import Struct


class Jar(Struct, frozen=True):
    """One batch of a trial, as it turned out."""

    lot: str
    """Code of its lot."""
    factors: Mapping[str, str]
    """Level of each factor set on purpose; empty for the control."""
    is_control: bool
    """Whether it is made the house's way, to compare with."""
    grades: tuple[tuple[str, int], ...]
    """Rank of its clarity by age, youngest first: 0 is the best grade."""
    ntu: Fraction | None
    """Last turbidity, NTU."""
    yield_pct: Fraction | None
    """What came out of the liquids put in, per cent."""

    @property
    def last_grade(self) -> int | None:
        """Rank of its clarity at its greatest age."""
        return self.grades[-1][1] if self.grades else None

    def grade_at(self, age: str) -> int | None:
        """Return the rank of its clarity at an age, or None."""
        return dict(self.grades).get(age)


class Factor(Struct, frozen=True):
    """A factor with the batches at each of its levels."""

    name: str
    """Its name."""
    levels: tuple[tuple[str, tuple[Jar, ...]], ...]
    """Each level with its batches."""
    moved_with: tuple[str, ...]
    """What always moved together with it; an effect is shown only when there is nothing."""


class Spread(Struct, frozen=True):
    """How far batches made alike lay apart at most: what chance alone does."""

    batches: int
    """How many batches have a repeat."""
    grade: int | None
    """In grades."""
    ntu: Fraction | None
    """In NTU."""
    yield_pct: Fraction | None
    """In points of yield."""


def factors_of(jars: Sequence[Jar], background: Mapping[str, frozenset[str]]) -> list[Factor]:
    """Return the factors of a trial.

    Args:
        jars: Its batches; the control takes no part.
        background: What was not planned, such as a lot that went in, with the batches that had it.
    """
    set_on_purpose = [jar for jar in jars if not jar.is_control]
    names = dict.fromkeys(name for jar in set_on_purpose for name in jar.factors)
    parts = {name: _partition(set_on_purpose, name) for name in names}
    varied = {name: part for name, part in parts.items() if len(part) > 1}
    lots = frozenset(jar.lot for jar in set_on_purpose)
    # As those with it and those without, to be held against how a factor divides the batches.
    beside = {what: frozenset({had & lots, lots - had}) for what, had in background.items()}
    return [
        Factor(
            name,
            tuple(_levels(set_on_purpose, name).items()),
            (
                *(
                    other
                    for other in varied
                    if other != name and moved_together(part, varied[other])
                ),
                *(what for what, other in beside.items() if moved_together(part, other)),
            )
            if name in varied
            else (),
        )
        for name, part in parts.items()
    ]


def _levels(jars: Sequence[Jar], name: str) -> dict[str, tuple[Jar, ...]]:
    jars_at: dict[str, tuple[Jar, ...]] = {}
    for jar in jars:
        level = jar.factors.get(name, "not set")
        jars_at[level] = (*jars_at.get(level, ()), jar)
    return dict(sorted(jars_at.items(), key=lambda item: in_order(item[0])))


def in_order(level: str) -> tuple[float, str]:
    """Return what levels are ordered by: their figure, then their words.

    >>> sorted(["24h", "6h", "none"], key=in_order)
    ['6h', '24h', 'none']
    >>> sorted(["4 °C", "−18 °C"], key=in_order)
    ['−18 °C', '4 °C']
    """
    digits = ""
    for letter in level.replace(",", ".").replace("−", "-"):
        if not (letter.isdecimal() or letter in ".-"):
            break
        digits += letter
    try:
        return float(digits), level
    except ValueError:
        return float("inf"), level


def _partition(jars: Sequence[Jar], name: str) -> frozenset[frozenset[str]]:
    return frozenset(frozenset(jar.lot for jar in level) for level in _levels(jars, name).values())


def moved_together(one: frozenset[frozenset[str]], other: frozenset[frozenset[str]]) -> bool:
    """Return whether the level of one always tells that of the other, with repeats to show it.

    Args:
        one: For each level of a factor the batches that had it.
        other: The same of another factor.

    >>> halves = frozenset({frozenset("ab"), frozenset("cd")})
    >>> moved_together(halves, halves)
    True
    >>> moved_together(halves, frozenset({frozenset("ac"), frozenset("bd")}))
    False
    """
    return one == other or _tells(one, other) or _tells(other, one)


def _tells(one: frozenset[frozenset[str]], other: frozenset[frozenset[str]]) -> bool:
    if any(len(part - {frozenset()}) < 2 for part in (one, other)):
        return False
    if len(one) == sum(map(len, one)):
        return False
    return all(any(group <= level for level in other) for group in one)


def front(jars: Sequence[Jar]) -> tuple[Jar, ...]:
    """Return the batches that no other beats on clarity and loss together."""
    known = [jar for jar in jars if jar.last_grade is not None and jar.yield_pct is not None]
    return tuple(jar for jar in known if not any(_beats(other, jar) for other in known))


def _beats(one: Jar, other: Jar) -> bool:
    clearer, more = _clarity(one, other), (one.yield_pct or 0) - (other.yield_pct or 0)
    return clearer >= 0 and more >= 0 and (clearer > 0 or more > 0)


def _clarity(one: Jar, other: Jar) -> Fraction:
    """Return above zero when one is clearer: by grade, then by turbidity where both have it."""
    by_grade = Fraction((other.last_grade or 0) - (one.last_grade or 0))
    if by_grade or one.ntu is None or other.ntu is None:
        return by_grade
    return other.ntu - one.ntu


def spread(jars: Sequence[Jar]) -> Spread:
    """Return how far batches with the same levels, or controls, lay apart at most."""
    alike: dict[tuple[tuple[str, str], ...], list[Jar]] = {}
    for jar in jars:
        key = () if jar.is_control else tuple(sorted(jar.factors.items()))
        alike.setdefault(key, []).append(jar)
    pairs = [pair for group in alike.values() for pair in combinations(group, 2)]
    return Spread(
        batches=sum(len(group) for group in alike.values() if len(group) > 1),
        grade=max(
            (
                abs(one.last_grade - other.last_grade)
                for one, other in pairs
                if one.last_grade is not None and other.last_grade is not None
            ),
            default=None,
        ),
        ntu=_widest([(one.ntu, other.ntu) for one, other in pairs]),
        yield_pct=_widest([(one.yield_pct, other.yield_pct) for one, other in pairs]),
    )


def _widest(pairs: Sequence[tuple[Fraction | None, Fraction | None]]) -> Fraction | None:
    gaps = [abs(one - other) for one, other in pairs if one is not None and other is not None]
    return max(gaps, default=None)


def mean(values: Sequence[Fraction | int | None]) -> Fraction | None:
    """Return the mean of the values that are known, or None.

    >>> mean([Fraction(1), None, 2])
    Fraction(3, 2)
    """
    known = [Fraction(value) for value in values if value is not None]
    return sum(known, Fraction(0)) / len(known) if known else None
