"""Which runs failed, and which they are compared with."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, Purpose
from ledger.domain.entries.masters import FormulaStep
from ledger.science.statistics.suspects import LEVEL
from ledger.service.causes.failed import (
    MOST_COMPARED,
    Sorted,
    Sought,
    _could_tell,
    _nearest,
    _stage,
    bad_look,
    counted_looks,
    sort_runs,
    wanted_of,
)
from ledger.store.read.runs import Found, Run, Seen
from tests.service.causes.brief_runs import found, run

ALL = Sought(frozenset(), complaints=True, looks=True, worse_than=None, since="")


def formula(wanted: str) -> dict[tuple[str, int], Formula]:
    basis = parse_quantity("1L")
    made = Formula("f", 1, "F", ProductKind.SYRUP, basis, wanted_clarity=Grade(wanted))
    return {("f", 1): made}


def sort(runs: list[Run], known: Found, sought: Sought = ALL, wanted: str | None = None) -> Sorted:
    return sort_runs(runs, known, formula(wanted) if wanted else {}, sought, LEVEL)


def lots(runs: tuple[Run, ...]) -> list[int]:
    return [item.lot for item in runs]


@pytest.mark.parametrize(
    ("wanted", "worse_than", "grade", "has_failed"),
    [
        (None, None, "clear", False),
        (None, None, "hazy", True),
        (None, "hazy", "hazy", False),
        ("bright", None, "clear", True),
        ("bright", "hazy", "clear", False),
        ("cloudy", None, "cloudy", False),
        ("cloudy", "hazy", "cloudy", False),
        ("cloudy", None, "milky", True),
    ],
)
def test_a_look_fails_that_is_worse_than_the_formula_wants_and_than_asked(
    wanted: str | None, worse_than: str | None, grade: str, has_failed: bool
) -> None:
    """A gum emulsion is meant to be cloudy."""
    sought = replace(ALL, worse_than=Grade(worse_than) if worse_than else None)
    made = run(1, formula=("f", 1) if wanted else None)
    assert bool(sort([made], found({1: grade}), sought, wanted).failed) is has_failed


def test_a_complaint_about_a_packed_lot_is_one_about_its_bulk() -> None:
    known = found({1: "bright"}, complaints={7: ["cloudy", "cloudy"]}, packed={1: [7]})
    parted = sort([run(1)], known)
    assert (lots(parted.failed), parted.reasons) == ([1], {1: 'complaint of "cloudy"'})


def test_after_the_making_ended_the_bad_look_counts_and_before_it_the_last() -> None:
    early = [Seen(Grade.MILKY, "2026-03"), Seen(Grade.HAZY, "2026-04")]
    late = [Seen(Grade.CLOUDY, "2026-06"), Seen(Grade.CLEAR, "2026-07")]
    known = Found({1: [*early, *late], 2: early}, {1: "2026-05", 2: "2026-05"}, {}, frozenset(), {})
    assert [bad_look(run(lot), known, {}) for lot in (1, 2, 3)] == [Grade.CLOUDY, Grade.HAZY, None]


def test_a_glass_that_is_as_its_formula_wants_it_is_no_fault_of_the_syrup() -> None:
    """Oil that syrup holds comes out in soda water: a glass of citrus is never bright."""
    step = FormulaStep("look", looked_at=LookedAt.AS_POURED, worst=Grade.OPALESCENT)
    made = formula("clear")
    with_step = {("f", 1): replace(made["f", 1], steps=(step,))}
    for grade, is_bad in (("opalescent", False), ("cloudy", True)):
        glass = Seen(Grade(grade), "2026-09", LookedAt.AS_POURED)
        known = Found({1: [glass]}, {}, {}, frozenset(), {})
        syrup = run(1, formula=("f", 1))
        assert (bad_look(syrup, known, with_step) is not None) is is_bad
        assert bad_look(syrup, known, made) is Grade(grade)
    neat = Found({1: [Seen(Grade.HAZY, "2026-09")]}, {}, {}, frozenset(), {})
    assert bad_look(run(1, formula=("f", 1)), neat, with_step) is Grade.HAZY


def test_stages_are_not_mixed() -> None:
    runs = [run(1, "Essence", "essence"), run(2), run(3), run(4)]
    parted = sort(runs, found({1: "milky", 2: "milky", 3: "milky", 4: "bright"}))
    assert (lots(parted.failed), lots(parted.other_stage)) == ([2, 3], [1])


def test_other_products_help_to_tell_apart_when_one_has_enough() -> None:
    runs = [run(lot, "Orange" if lot < 9 else "Lemon") for lot in range(1, 12)]
    looks = {lot: "milky" if lot < 5 else "bright" for lot in range(1, 12)}
    parted = sort(runs, found(looks))
    assert not parted.is_by_kind
    assert lots(parted.clear) == [5, 6, 7, 8]
    assert lots(parted.elsewhere) == [9, 10, 11]


def test_with_too_few_of_one_product_all_of_the_kind_are_compared() -> None:
    runs = [run(lot, "Orange" if lot < 4 else "Lemon") for lot in range(1, 12)]
    parted = sort(runs, found({lot: "milky" if lot < 3 else "bright" for lot in range(1, 12)}))
    assert parted.is_by_kind
    assert lots(parted.clear) == list(range(3, 12))
    assert parted.elsewhere == ()


def test_what_failed_otherwise_is_left_out() -> None:
    sought = Sought(frozenset({1}), complaints=True, looks=True, worse_than=None, since="")
    parted = sort([run(1), run(2), run(3)], found({1: "bright", 2: "milky", 3: "clear"}), sought)
    assert (lots(parted.failed), lots(parted.otherwise_failed)) == ([1], [2])
    assert lots(parted.clear) == [3]


def test_what_was_sent_counts_as_seen_and_the_rest_does_not() -> None:
    parted = sort([run(1), run(2), run(3)], found({1: "milky"}, sent=frozenset({2})))
    assert (lots(parted.clear), parted.not_seen) == ([2], 1)


def test_trials_take_part_only_beside_one_that_is_named() -> None:
    runs = [run(1, purpose=Purpose.TRIAL), run(2, purpose=Purpose.TRIAL), run(3)]
    known = found({1: "milky", 2: "bright", 3: "bright"})
    assert sort(runs, known).failed == ()
    parted = sort(runs, known, replace(ALL, lots=frozenset({1})))
    assert (lots(parted.failed), lots(parted.clear)) == ([1], [2, 3])


def test_of_very_many_clear_runs_the_nearest_in_time_are_compared() -> None:
    runs = [run(lot) for lot in range(1, MOST_COMPARED + 12)]
    bad = {1, 2, 3}
    looks = {item.lot: "milky" if item.lot in bad else "bright" for item in runs}
    parted = sort_runs(runs, found(looks), {}, ALL, Fraction(1, 20))
    assert len(parted.clear) == MOST_COMPARED
    assert parted.too_far == 8
    assert max(lots(parted.clear)) == MOST_COMPARED + 3


def test_the_nearest_in_time_lie_on_both_sides_of_the_middle_failure() -> None:
    """Of 405 clear runs around run 200 the last five lie furthest; those kept stand in time."""
    clear = [run(lot) for lot in range(1, MOST_COMPARED + 6) if lot != 200]
    near = _nearest(clear, [run(300), run(200), run(100)])
    assert lots(near) == [lot for lot in range(1, MOST_COMPARED + 2) if lot != 200]
    late = _nearest(clear, [run(MOST_COMPARED + 9)])
    assert lots(late) == lots(tuple(clear))[4:]
    assert _nearest(clear, []) == tuple(clear)
    assert _nearest(clear[:MOST_COMPARED], [run(200)]) == tuple(clear[:MOST_COMPARED])


def test_runs_that_began_at_the_same_moment_stand_by_their_lots() -> None:
    first = run(1).began_at
    clear = [replace(run(lot), began_at=first) for lot in range(MOST_COMPARED + 5, 0, -1)]
    assert lots(_nearest(clear, [run(0)])) == list(range(1, MOST_COMPARED + 1))


def test_the_stage_is_that_of_most_failures_and_among_equals_of_the_latest() -> None:
    syrups, essences = [run(1), run(2)], [run(lot, "E", "essence") for lot in (3, 4)]
    assert _stage([*syrups, *essences]) == "essence"
    assert _stage([*syrups, essences[0]]) == "syrup"
    assert _stage([essences[0], run(9)]) == "syrup"


@pytest.mark.parametrize(
    ("failed", "clear", "could"), [(0, 0, False), (1, 19, True), (1, 18, False), (3, 3, True)]
)
def test_a_split_could_tell_that_chance_makes_in_one_of_twenty_at_most(
    failed: int, clear: int, could: bool
) -> None:
    """By hand: of 20 lots one fails in 20 ways, of 6 three fail in 20 ways."""
    assert _could_tell(failed, clear, Fraction(1, 20)) is could


def test_a_run_is_told_with_all_that_was_wrong_with_it() -> None:
    known = found({1: "clear", 7: "milky"}, complaints={1: ["ring"], 7: ["ring", "gas"]},
                  packed={1: [7]})  # fmt: skip
    parted = sort([run(1)], known)
    assert parted.reasons == {1: 'complaint of "ring", "gas"; looked milky'}
    asked = {
        name: lots(sort([run(1), run(2)], found({1: "milky"}, complaints={2: ["gas"]}),
                        replace(ALL, **{name: False})).failed)
        for name in ("looks", "complaints")
    }  # fmt: skip
    assert asked == {"looks": [2], "complaints": [1]}


def test_only_runs_begun_from_a_moment_on_take_part_and_those_that_are_named() -> None:
    runs = [run(1), run(2), run(3)]
    known = found({1: "milky", 2: "milky", 3: "milky"})
    since = replace(ALL, since=runs[1].began_at)
    assert lots(sort(runs, known, since).failed) == [2, 3]
    named = sort(runs, known, replace(since, lots=frozenset({1})))
    assert (lots(named.failed), lots(named.otherwise_failed)) == ([1], [2, 3])


def test_the_worst_of_several_bad_looks_is_told_and_where_all_were_good_none() -> None:
    """The usual want is a clear one, and each of the looks counts."""

    def worst(*grades: str) -> Grade | None:
        looks = {1: [Seen(Grade(grade), "2026-09") for grade in grades]}
        ends = {1: "2026-08"}
        return bad_look(run(1), Found(looks, ends, {}, frozenset(), {}), {})

    assert [worst("clear", "bright"), worst(), worst("cloudy", "hazy", "clear")] == [
        *(None, None, Grade.CLOUDY),
    ]


def test_a_run_is_wanted_as_its_formula_says_else_as_is_usual_unless_worse_is_asked_for() -> None:
    hazy, made = formula("hazy"), run(1, formula=("f", 1))
    assert [
        wanted_of(run(1), hazy),
        wanted_of(made, hazy),
        wanted_of(made, {}),
        wanted_of(made, hazy, Grade.MILKY),
        wanted_of(made, hazy, Grade.BRIGHT),
        wanted_of(run(1), hazy, Grade.HAZY),
    ] == [Grade.CLEAR, Grade.HAZY, Grade.CLEAR, Grade.MILKY, Grade.HAZY, Grade.HAZY]


def test_looks_count_from_the_very_end_of_the_making_else_the_last_and_all_of_bottles() -> None:
    looks = [
        Seen(Grade(grade), at) for grade, at in (("milky", "1"), ("hazy", "2"), ("clear", "3"))
    ]
    bottled = [Seen(Grade.BRIGHT, "0")]

    def counted(end: str | None) -> list[str]:
        ends = {1: end} if end else {}
        known = Found({1: looks, 8: bottled}, ends, {}, frozenset(), {1: [8, 9]})
        return [str(seen.grade) for seen in counted_looks(1, known)]

    assert counted("2") == ["hazy", "clear", "bright"]
    assert counted("1") == ["milky", "hazy", "clear", "bright"]
    assert counted("4") == counted(None) == ["clear", "bright"]
    assert counted_looks(2, Found({}, {}, {}, frozenset(), {})) == []
