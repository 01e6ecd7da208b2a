"""Trials compared from a book."""

from fractions import Fraction

import pytest

from ledger.domain.entries import Look
from ledger.errors import RefusedError
from ledger.service.causes.compare import Uneven, compare
from ledger.service.lots.journal import journal
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots
from tests.service.causes.planned_jars import NAME, plan_oils


def trial(keeper: Keeper, *factors: str, oils: tuple[str, ...] = ()) -> list[str]:
    lots = receive_all(keeper)
    return [
        essence(
            keeper,
            lots,
            oils[place % len(oils)] if oils else lots.oil,
            "hazy",
            "clear",
            factors=told,
            trial="Rest",
            ntu=f"{place + 1}",
            out=f"{80 + place}mL",
        )
        for place, told in enumerate(factors)
    ]


def test_responses_stand_by_factor_with_the_control_beside(sqlite_keeper: Keeper) -> None:
    codes = trial(sqlite_keeper, "rest=24h", "rest=48h", "rest=24h", "rest=48h", "", "control=old")
    found = compare(sqlite_keeper.book, "rest")
    assert found.group == "Rest"
    (rest,) = found.factors
    assert [(level, [jar.lot for jar in jars]) for level, jars in rest.levels] == [
        ("24h", [codes[0], codes[2]]),
        ("48h", [codes[1], codes[3]]),
    ]
    assert [jar.lot for jar in found.jars if jar.is_control] == codes[4:]
    assert found.ages == ("at once", "7 d")


def test_a_batch_has_its_grades_by_age_its_turbidity_and_its_yield(sqlite_keeper: Keeper) -> None:
    trial(sqlite_keeper, "rest=24h", "rest=48h")
    jar = compare(sqlite_keeper.book, "Rest").jars[1]
    assert jar.grades == (("at once", 2), ("7 d", 1))
    assert jar.ntu == 2
    assert jar.yield_pct == Fraction(8100, 96)


def test_what_went_into_every_batch_was_held_constant(sqlite_keeper: Keeper) -> None:
    trial(sqlite_keeper, "rest=24h", "rest=48h")
    found = compare(sqlite_keeper.book, "Rest")
    assert [brief.material for brief in found.held] == ["orange-oil", "spirit", "carb"]


def test_an_oil_lot_that_changed_with_the_factor_is_named(sqlite_keeper: Keeper) -> None:
    oils = tuple(oil_lots(sqlite_keeper, 2))
    trial(sqlite_keeper, "rest=24h", "rest=48h", "rest=24h", "rest=48h", oils=oils)
    (rest,) = compare(sqlite_keeper.book, "Rest").factors
    assert rest.moved_with == tuple(f"{code} Sweet orange oil" for code in oils)


def test_a_factor_about_the_oil_is_not_confounded_with_its_lots(sqlite_keeper: Keeper) -> None:
    oils = tuple(oil_lots(sqlite_keeper, 2))
    trial(sqlite_keeper, "oil=new", "oil=old", "oil=new", "oil=old", oils=oils)
    (oil,) = compare(sqlite_keeper.book, "Rest").factors
    assert oil.moved_with == ()


def test_a_correction_of_what_came_out_corrects_the_yield(sqlite_keeper: Keeper) -> None:
    codes = trial(sqlite_keeper, "rest=24h", "rest=48h")
    finish = next(e for e in sqlite_keeper.entries() if e.kind == "finish")
    assert finish.draft.lot == codes[0]
    sqlite_keeper.do("correct", entry=str(finish.seq), changes="volume=72mL", because="misread")
    assert compare(sqlite_keeper.book, "Rest").jars[0].yield_pct == 75


def test_an_unknown_trial_is_refused_with_those_that_are(sqlite_keeper: Keeper) -> None:
    with pytest.raises(RefusedError) as refused:
        compare(sqlite_keeper.book, "pores")
    assert refused.value.problems == (
        (
            'There is no trial "pores" in the book. It has no trial yet.',
            'Begin a batch of one: pottle start ... --trial "pores" --factor rest=48h',
        ),
    )
    trial(sqlite_keeper, "rest=24h")
    with pytest.raises(RefusedError) as refused:
        compare(sqlite_keeper.book, "pores")
    assert refused.value.problems == (
        (
            'There is no trial "pores" in the book. Its trials: "Rest".',
            'Begin a batch of one: pottle start ... --trial "pores" --factor rest=48h',
        ),
    )


def test_one_batch_compares_with_nothing(sqlite_keeper: Keeper) -> None:
    trial(sqlite_keeper, "rest=24h")
    with pytest.raises(RefusedError) as refused:
        compare(sqlite_keeper.book, "REST")
    assert refused.value.problems == (
        (
            'The trial "Rest" has one batch, and one batch compares with nothing.',
            'Begin another of it: pottle start ... --trial "Rest" --factor rest=48h',
        ),
    )


def test_a_jar_that_nobody_graded_at_an_age_is_left_out_of_that_age(sqlite_keeper: Keeper) -> None:
    codes = trial(sqlite_keeper, "rest=24h", "rest=48h", "rest=24h", "rest=48h")
    looks = [
        entry.seq
        for said in journal(sqlite_keeper.book).said
        if isinstance((entry := said.entry).facts, Look) and entry.draft.lot == codes[0]
    ]
    for number in looks:
        sqlite_keeper.do("strike", entry=str(number), because="the wrong jar")
    found = compare(sqlite_keeper.book, "rest")
    assert found.jars[0].grades == ()
    assert found.ages == ("at once", "7 d")
    short, long = ([jar.grade_at("7 d") for jar in jars] for _, jars in found.factors[0].levels)
    assert (short, long) == ([None, 1], [1, 1])


def test_another_spirit_in_some_jars_is_named(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper)
    other = sqlite_keeper.opens("receive", material="spirit", amount="1L")
    sqlite_keeper.do("jars", trial=NAME)
    for jar in found.jars[:6]:
        spirit = lots.spirit if jar.number < 5 else other
        sqlite_keeper.do("add", lot=jar.code, source=spirit, amount="40mL")
    assert compare(sqlite_keeper.book, NAME).uneven == (
        Uneven("Neutral spirit", ((lots.spirit, 4), (other, 2))),
    )
