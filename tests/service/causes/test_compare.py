"""Trials compared from a book."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import FACTS, Entry, Finish, Look
from ledger.domain.entries.choices import Grade, LotType, MaterialKind
from ledger.domain.lots.lot import Lot, Status
from ledger.errors import RefusedError
from ledger.science.statistics.trials import Jar
from ledger.service.causes.compare import (
    KINDS,
    Uneven,
    _background,
    _grades,
    _held,
    _uneven,
    compare,
)
from ledger.service.lots.journal import journal
from tests.domain.builders import at, entry, make
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots
from tests.service.causes.brief_runs import run
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


def jar(lot: str, **factors: str) -> Jar:
    return Jar(lot, factors, not factors, (), None, None)


def bought(code: str, material: str, name: str, sort: MaterialKind | None = None) -> Lot:
    return Lot(
        seq=1,
        code=code,
        lot_type=LotType.RECEIVED,
        measure=Measure.UL,
        opened_at=None,
        name=name,
        status=Status.IN_STOCK,
        on_hand=1,
        material=material,
        sort=sort,
    )


OLD, NEW = (bought(code, "orange-oil", "Sweet oil", MaterialKind.OIL) for code in ("O-1", "O-2"))
WATER = bought("W-1", "water", "Water", MaterialKind.WATER)
CAPS, CAPS_TOO = (bought(code, "cap", "Cap", MaterialKind.CLOSURE) for code in ("C-1", "C-2"))


def test_what_only_some_batches_had_is_told_but_for_what_a_factor_is_about() -> None:
    """A factor is about a lot whose code, name, kind or material has a word of it."""
    made = [run(1, maker="AB"), run(2, maker="CD"), run(3, maker="AB")]
    inputs = {"L-1": {"O-1": OLD, "W-1": WATER}, "L-2": {"O-2": NEW}, "L-3": {"O-1": OLD}}
    people = {"made by AB": {"L-1", "L-3"}, "made by CD": {"L-2"}}
    whole = {"O-1 Sweet oil": {"L-1", "L-3"}, "O-2 Sweet oil": {"L-2"}, "W-1 Water": {"L-1"}}
    without_oil = {"W-1 Water": {"L-1"}}
    for factors, lots in (
        ({"rest": "24 h"}, whole),
        ({"Sweet taste": "more"}, without_oil),
        ({"which": "ORANGE"}, without_oil),
        ({"oil": "new"}, without_oil),
        ({"which": "o-1"}, {key: whole[key] for key in ("O-2 Sweet oil", "W-1 Water")}),
    ):
        jars = [jar("L-1", rest="24 h"), jar("L-2", **factors)]
        assert _background(made, inputs, jars) == {**lots, **people}, factors


def test_a_material_is_uneven_of_which_not_all_batches_had_one_lot_unless_it_was_meant() -> None:
    """Packing goes into no liquid, and what is made here is no material."""
    rework = replace(OLD, code="R-1", material=None)
    inputs = {
        "L-1": {"O-2": NEW, "W-1": WATER, "C-1": CAPS},
        "L-2": {"O-1": OLD, "W-1": WATER, "C-2": CAPS_TOO},
        "L-3": {"O-1": OLD, "R-1": rework},
    }
    jars = [jar("L-1", rest="24 h"), jar("L-2", rest="48 h"), jar("L-3")]
    assert _uneven(inputs, jars) == (Uneven("Sweet oil", (("O-1", 2), ("O-2", 1))),)
    assert _uneven(inputs, [*jars, jar("L-4", oil="O-2")]) == ()
    assert [lot.code for lot in _held({key: inputs[key] for key in ("L-1", "L-2")})] == ["W-1"]
    assert _held(inputs) == ()


def test_people_who_made_some_jars_each_are_told_beside_the_factor(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    keeper.do("person", initials="CD", name="Cora Dunne")
    lots = receive_all(keeper)
    for place in range(4):
        keeper.by = "CD" if place % 2 else "AB"
        essence(keeper, lots, lots.oil, "clear", factors=f"rest={24 + place % 2}h", trial="Rest")
    (rest,) = compare(keeper.book, "Rest").factors
    assert rest.moved_with == ("made by AB", "made by CD")


def test_what_is_read_of_runs_is_of_kinds_that_entries_have() -> None:
    assert set(KINDS) <= set(FACTS)


def test_of_an_age_the_worst_look_is_told_and_a_bright_one_is_the_best() -> None:
    """Grades by their place from bright to milky."""

    def seen(*grades: str) -> list[Entry]:
        looks = [
            entry(make(Look, grade=Grade(grade)), number, at(13), lot="E-1")
            for number, grade in enumerate(grades, 2)
        ]
        return [entry(make(Finish), 1, at(12), lot="E-1"), *looks]

    assert _grades(seen("bright")) == (("at once", 0),)
    assert _grades(seen("clear", "milky", "bright")) == (("at once", 5),)
    assert _grades(seen()) == ()
