"""Chance among all suspects: what goes together counts once, what cannot stand out not at all."""

from fractions import Fraction

from ledger.science.statistics.chance import adjusted, families, weight
from ledger.science.statistics.columns import Group, columns
from ledger.science.statistics.levels import grounds
from ledger.science.statistics.suspects import LEVEL, Level, Observed
from tests.science.statistics.judged import lot, observed


def groups(lots: list[Observed]) -> tuple[Group, ...]:
    return columns(lots, grounds(lots), frozenset()).groups


def split(*settings: str) -> list[Observed]:
    """Return five failed lots with an oil and five without, and some settings that never differ."""
    return [
        observed(f"L{n}", n < 5, *(["OIL"] if n < 5 else []), **dict.fromkeys(settings, "on"))
        for n in range(10)
    ]


def test_one_suspect_alone_keeps_its_exact_p() -> None:
    """Five failures leave 4/5 of the level, so p of once in 252 is told as 5/4 of it."""
    found = families(groups(split()), LEVEL)
    ((key, p),) = adjusted(found, LEVEL, Level.RUN).items()
    assert key[0] is Level.RUN
    assert p == Fraction(1, 252) * Fraction(5, 4)


def test_what_goes_together_counts_once_where_something_may_stand_out() -> None:
    """Oil is in all five that failed and sugar in four of them, and in no other.

    Alone once in 252 and once in 42; whenever chance deals sugar so, it is as rare for the oil.
    """
    lots = [
        observed(f"L{n}", n < 5, *(["OIL"] if n < 5 else []), *(["SUGAR"] if n < 4 else []))
        for n in range(10)
    ]
    found = families(groups(lots), LEVEL)
    once = Fraction(1, 252) * Fraction(5, 4)
    assert list(adjusted(found, LEVEL, Level.RUN).values()) == [once, 6 * once]
    assert list(adjusted(found, once / 2, Level.RUN).values()) == [2 * once, 6 * once]


def test_a_delivered_lot_weighs_twice() -> None:
    (oil,) = groups(split())
    assert (oil.causes, weight(oil)) == ((lot("OIL"),), 2)
    chilled = [observed(f"L{n}", n < 5, chill="cold" if n < 5 else "warm") for n in range(15)]
    assert {weight(group) for group in groups(chilled)} == {1}


def test_what_could_not_stand_out_is_left_out() -> None:
    lots = [observed(f"L{n}", n < 5, *(["ONCE"] if n == 0 else [])) for n in range(15)]
    assert families(groups(lots), LEVEL) == {}


def test_what_is_below_batches_takes_a_quarter_of_the_level() -> None:
    """Each of five batches has a failed lot with it and a clear one without: once in 2^5."""
    lots = [
        observed(f"S-{n}-{had}", had, *(["X"] if had else []), batch=f"E-{n}")
        for n in range(5)
        for had in (True, False)
    ]
    found = families(groups(lots), LEVEL)
    ((key, p),) = adjusted(found, LEVEL, Level.BATCH).items()
    assert key[0] is Level.RUN
    assert p == Fraction(1, 32) * 4 * Fraction(5, 4)


def test_two_levels_below_batches_share_the_quarter() -> None:
    lots = [
        observed(f"S-{n}-{had}", had, *(["X"] if had else []), batch=f"E-{n}")
        for n in range(5)
        for had in (True, False)
    ]
    (once,) = families(groups(lots), LEVEL).values()
    for levels, times in (((Level.BATCH, Level.RUN), 4), ((Level.BATCH, Level.BASE, Level.RUN), 8)):
        (p,) = adjusted(dict.fromkeys(levels, once), LEVEL, Level.BATCH).values()
        assert p == Fraction(1, 32) * times * Fraction(5, 4)


def test_the_top_level_keeps_what_those_below_it_leave() -> None:
    """By hand: all of it alone, three quarters beside one or two others."""
    lots = [
        observed(f"S-{n}-{had}", had, *(["X"] if had else []), batch=f"E-{n}")
        for n in range(5)
        for had in (True, False)
    ]
    (once,) = families(groups(lots), LEVEL).values()
    shares = {
        (top, *others): next(
            iter(adjusted(dict.fromkeys((*others, top), once), LEVEL, top).values())
        )
        / (Fraction(1, 32) * Fraction(5, 4))
        for top, *others in (
            (Level.RUN,),
            (Level.RUN, Level.BATCH),
            (Level.RUN, Level.BATCH, Level.BASE),
        )
    }
    assert list(shares.values()) == [1, Fraction(4, 3), Fraction(4, 3)]
