"""Trials compared: what moved together has no effect, and the best are on the front."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from ledger.science.statistics.trials import (
    Jar,
    Spread,
    factors_of,
    front,
    in_order,
    mean,
    moved_together,
    spread,
)


def jar(
    lot: str, grade: int | None = 1, yield_pct: int | None = 90, ntu: int | None = None,
    **factors: str,
) -> Jar:  # fmt: skip
    return Jar(
        lot,
        factors,
        not factors,
        () if grade is None else (("7 d", grade),),
        None if ntu is None else Fraction(ntu),
        None if yield_pct is None else Fraction(yield_pct),
    )


def test_crossed_factors_are_told_apart_and_ordered_by_their_figures() -> None:
    jars = [
        jar("a", rest="100h", dose="2g"),
        jar("b", rest="24h", dose="2g"),
        jar("c", rest="100h", dose="6g"),
        jar("d", rest="24h", dose="6g"),
        jar("e"),
    ]
    rest, dose = factors_of(jars, {})
    assert [level for level, _ in rest.levels] == ["24h", "100h"]
    assert [[item.lot for item in found] for _, found in dose.levels] == [["a", "b"], ["c", "d"]]
    assert (rest.moved_with, dose.moved_with) == ((), ())


def test_factors_that_always_moved_together_name_each_other() -> None:
    jars = [jar(lot, rest=rest, dose=dose) for lot, rest, dose in zip(
        "abcd", ("24h", "24h", "48h", "48h"), ("2g", "2g", "6g", "6g"), strict=True
    )]  # fmt: skip
    assert [item.moved_with for item in factors_of(jars, {})] == [("dose",), ("rest",)]


def test_a_factor_within_another_is_not_told_apart_from_it() -> None:
    levels = [(rest, dose) for rest, dose in (("1", "2"), ("4", "6"), ("4", "8")) for _ in "ab"]
    jars = [jar(str(n), rest=rest, dose=dose) for n, (rest, dose) in enumerate(levels)]
    assert [item.moved_with for item in factors_of(jars, {})] == [("dose",), ("rest",)]


def test_a_lot_that_only_one_level_had_moved_together_with_it() -> None:
    jars = [jar(lot, rest=rest) for lot, rest in zip("abcd", "1122", strict=True)]
    (rest,) = factors_of(jars, {"OIL-1": frozenset("ab"), "JAR": frozenset("ac")})
    assert rest.moved_with == ("OIL-1",)
    (rest,) = factors_of(jars, {"all": frozenset("abcd"), "none": frozenset("x")})
    assert rest.moved_with == ()


def test_a_factor_of_one_level_moves_with_nothing() -> None:
    jars = [jar(lot, rest="24h", dose=dose) for lot, dose in zip("abcd", "1122", strict=True)]
    assert [item.moved_with for item in factors_of(jars, {})] == [(), ()]


@given(st.lists(st.tuples(st.sampled_from("12"), st.sampled_from("xyz")), min_size=2, max_size=9))
def test_moving_together_is_mutual(levels: list[tuple[str, str]]) -> None:
    def parts(place: int) -> frozenset[frozenset[str]]:
        met = {pair[place] for pair in levels}
        return frozenset(
            frozenset(str(n) for n, pair in enumerate(levels) if pair[place] == level)
            for level in met
        )

    one, other = parts(0), parts(1)
    assert moved_together(one, other) == moved_together(other, one)


def test_the_front_holds_what_no_other_beats_on_both() -> None:
    jars = [jar("clear", 0, 80), jar("much", 3, 95), jar("beaten", 3, 94), jar("unseen", None, 99)]
    assert [item.lot for item in front(jars)] == ["clear", "much"]


def test_of_one_grade_the_lower_turbidity_is_the_clearer() -> None:
    assert [item.lot for item in front([jar("a", 1, 90, 2), jar("b", 1, 90, 3)])] == ["a"]
    assert len(front([jar("a", 1, 90, 2), jar("b", 1, 90)])) == 2
    # A batch of which nothing came through is the worst by its yield, however clear.
    assert len(front([jar("a", 0, 0), jar("b", 1, 1)])) == 2
    assert [item.lot for item in front([jar("a", 1, 0), jar("b", 1, 1)])] == ["b"]


JARS = st.lists(
    st.builds(lambda g, y: jar("x", g, y), st.integers(0, 5), st.integers(70, 99)),
    min_size=1,
    max_size=12,
)


@given(JARS)
def test_every_batch_is_on_the_front_or_beaten_by_one_that_is(jars: list[Jar]) -> None:
    best = front(jars)
    assert best
    for item in jars:
        assert item in best or any(
            (one.last_grade or 0) <= (item.last_grade or 0)
            and (one.yield_pct or 0) >= (item.yield_pct or 0)
            for one in best
        )


def test_repeats_show_what_chance_alone_does() -> None:
    jars = [
        jar("a", 1, 90, 2, rest="1"),
        jar("b", 2, 86, 3, rest="1"),
        jar("c", 5, 50, 9, rest="2"),
        jar("d", 0, 90),
        jar("e", 0, 89),
    ]
    found = spread(jars)
    assert found == Spread(4, 1, Fraction(1), Fraction(4))
    assert spread(jars[2:4]).batches == 0


def test_an_ungraded_jar_among_graded_ones_is_apart_from_none_by_its_grade() -> None:
    graded = [jar("a", 1, 90, 2), jar("b", 3, 88, 5)]
    for ungraded in ([jar("n", None, 80, 9), *graded], [*graded, jar("n", None, 80, 9)]):
        assert spread(ungraded) == Spread(3, 2, Fraction(7), Fraction(10))
    assert spread([jar("n", None), jar("a", 1)]).grade is None


def test_the_mean_of_what_nobody_knows_is_not_known() -> None:
    assert [mean([]), mean([None, None]), mean([None, 3])] == [None, None, Fraction(3)]


def test_a_level_that_begins_with_signs_that_are_no_figure_stands_last() -> None:
    assert sorted(["1.2.3 g", "7 g", "-"], key=in_order) == ["7 g", "-", "1.2.3 g"]


def test_levels_stand_by_their_figures_with_a_comma_as_with_a_point() -> None:
    told = ["none", "10 g", "0,5 g", "0.25 g", "-4 C", "1,5 g", "a 2"]
    assert sorted(told, key=in_order) == ["-4 C", "0.25 g", "0,5 g", "1,5 g", "10 g", "a 2", "none"]
    assert in_order("0,5 g") == (0.5, "0,5 g")
