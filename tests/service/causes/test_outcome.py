"""A planned trial is unblinded and judged by its draw; what was lost or changed is said."""

from fractions import Fraction

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Look, Start
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import Grade
from ledger.domain.entries.trials import Decides
from ledger.errors import RefusedError
from ledger.science.statistics.randomisation import Shown
from ledger.service.causes.compare import compare
from ledger.service.causes.layout import Planned, planned
from ledger.service.causes.outcome import JarState, Outcome, _changed, _score
from ledger.service.causes.redrawn import root_faults
from ledger.store.read.planned import jars_begun
from tests.domain.builders import entry, make
from tests.keeper import Keeper
from tests.service.causes.planned_jars import NAME, make_jars, plan_oils


def outcome_of(keeper: Keeper) -> Outcome:
    found = compare(keeper.book, NAME).outcome
    assert found is not None
    return found


def by_oil(found: Planned, *, but: tuple[int, ...] = ()) -> dict[int, str | None]:
    return {
        jar.number: None if jar.number in but else "cloudy" if jar.row[0] else "clear"
        for jar in found.jars
    }


def test_the_oil_that_clouds_every_jar_is_shown_as_the_cause(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper)
    make_jars(sqlite_keeper, lots, found, lambda jar: by_oil(found)[jar.number])
    outcome = outcome_of(sqlite_keeper)
    assert outcome.shown == (found.plan.factors[0].suspected,)
    assert outcome.tried[0].p * 20**2 == 1
    assert {(one.state, one.why) for one in outcome.jars} == {(JarState.KEPT, "")}


def test_looks_of_a_day_and_of_a_week_stay_apart_where_no_jar_was_finished(
    sqlite_keeper: Keeper,
) -> None:
    lots, found = plan_oils(sqlite_keeper)
    make_jars(sqlite_keeper, lots, found, lambda jar: by_oil(found)[jar.number])
    compared = compare(sqlite_keeper.book, NAME)
    assert compared.ages == ("1 d", "7 d")
    assert {jar.grade_at("1 d") for jar in compared.jars} == {0}
    assert {jar.grade_at("7 d") for jar in compared.jars} == {1, 4}


def test_where_nothing_clouds_nothing_is_shown(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper)
    make_jars(sqlite_keeper, lots, found, lambda _: "clear")
    assert [item.shown for item in outcome_of(sqlite_keeper).tried] == [Shown.NONE]


def test_jars_that_are_lost_or_not_begun_count_against_the_accusation(
    sqlite_keeper: Keeper,
) -> None:
    lots, found = plan_oils(sqlite_keeper)
    sqlite_keeper.do("jars", trial=NAME)
    early = outcome_of(sqlite_keeper)
    states = [one.state for one in early.jars]
    assert states == [JarState.NOT_SEEN] * 6 + [JarState.NOT_BEGUN] * 6
    assert {(one.why, one.score) for one in early.jars} == {("", None)}
    assert early.tried[0].p == 1
    # The evening that is begun is not begun again.
    with sqlite_keeper.reading() as connection:
        assert sorted(jars_begun(connection, found.entry.seq)) == [1, 2, 3, 4, 5, 6]
    assert lots.oil in {jar.levels[0][1] for jar in found.jars}


def test_a_jar_that_was_not_looked_at_in_time_is_lost(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper)
    lost = next(jar.number for jar in found.jars if jar.row[0])
    make_jars(sqlite_keeper, lots, found, lambda jar: by_oil(found, but=(lost,))[jar.number])
    outcome = outcome_of(sqlite_keeper)
    assert outcome.jars[lost - 1].state is JarState.NOT_SEEN
    assert outcome.tried[0].p * 400 > 1
    assert outcome.tried[0].shown is Shown.CAUSE


def test_a_jar_with_the_other_oil_in_it_is_changed(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper)
    make_jars(sqlite_keeper, lots, found, lambda jar: by_oil(found)[jar.number])
    item = found.plan.factors[0]
    wrong = next(jar for jar in found.jars if not jar.row[0])
    sqlite_keeper.do(
        "add", lot=wrong.code, source=item.suspected, amount="1mL", because="the wrong bottle"
    )
    jar = outcome_of(sqlite_keeper).jars[wrong.number - 1]
    assert (jar.state, jar.why) == (JarState.CHANGED, f"{item.suspected} is in it")


def test_a_level_in_words_is_no_lot_that_could_be_missing(sqlite_keeper: Keeper) -> None:
    _, found = plan_oils(sqlite_keeper, tries="chill=4C/none")
    assert found.plan.factors[0].name == "chill"
    sqlite_keeper.do("jars", trial=NAME)
    first = found.jars[0]
    sqlite_keeper.clock.forward(days=7)
    sqlite_keeper.do("look", lot=first.code, grade="clear")
    assert outcome_of(sqlite_keeper).jars[0].state is JarState.KEPT


def test_where_a_meter_decides_the_figures_are_ranked(sqlite_keeper: Keeper) -> None:
    lots, found = plan_oils(sqlite_keeper, decides="ntu")
    assert [evening.jars for evening in found.plan.evenings] == [8]
    make_jars(sqlite_keeper, lots, found, lambda jar: by_oil(found)[jar.number])
    outcome = outcome_of(sqlite_keeper)
    assert outcome.tried[0].p * 70 == 1
    assert {float(one.score or 0) for one in outcome.jars} == {2.0, 9.0}


def test_all_jars_are_begun_once_and_those_of_a_struck_plan_never(sqlite_keeper: Keeper) -> None:
    _, found = plan_oils(sqlite_keeper)
    with pytest.raises(RefusedError) as refused:
        compare(sqlite_keeper.book, NAME)
    assert refused.value.problems == (
        (
            f'The trial "{NAME}" is planned, and no jar of it is begun.',
            f'Begin its jars: pottle start --from-plan "{NAME}"',
        ),
    )
    done = [sqlite_keeper.do("jars", trial=NAME) for _ in found.plan.evenings]
    codes = [each.code for first in done for each in (first, *first.others)]
    assert codes == [jar.code for jar in found.jars]
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("jars", trial=NAME)
    assert refused.value.problems == (
        (
            f'All 12 jars of the trial "{NAME}" are begun.',
            f'See what came of them: pottle compare "{NAME}"',
        ),
    )
    sqlite_keeper.do("plan", name="other", tries="chill=4C/none")
    other = planned(sqlite_keeper.book, "other")
    sqlite_keeper.do("strike", entry=str(other.entry.seq), because="no time")
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("jars", trial="other")
    assert refused.value.problems == (
        (
            'The plan of the trial "other" was struck out.',
            'Plan another: pottle trial plan "NAME" --try LOT',
        ),
    )


def test_the_root_of_a_plan_is_proved_to_be_the_books(sqlite_keeper: Keeper) -> None:
    _, found = plan_oils(sqlite_keeper)
    sqlite_keeper.do("jars", trial=NAME)
    assert root_faults(sqlite_keeper.book, found) == ()
    draft = found.entry.draft
    forged = replace(draft, facts=replace(found.plan, root="00" * 32, entries=3))
    wrong = replace(found, entry=replace(found.entry, draft=forged))
    seq = found.entry.seq
    assert root_faults(sqlite_keeper.book, wrong) == (
        f"Entry {seq} is drawn from the root of 3 entries, not of {seq - 1}.",
        "The first 3 entries of this book do not have the root of the seal: at least one of them "
        "is not as it was when the seal was made.",
    )


def test_a_jar_without_the_oil_of_its_level_or_set_otherwise_is_changed(
    sqlite_keeper: Keeper,
) -> None:
    """All in which it departs from its plan is told, in the order of the plan."""
    _, found = plan_oils(sqlite_keeper)
    item, jar = found.plan.factors[0], found.jars[0]
    level = jar.levels[0][1]
    other = item.suspected if level == item.usual else item.usual
    lots, kept = {item.usual, item.suspected}, Factor(item.name, level)

    def changed(inputs: set[str], *factors: Factor) -> str:
        said = [entry(make(Start, factors=factors))]
        return _changed(found, jar, said, inputs, lots)

    assert changed({level}, kept) == ""
    assert changed({"NS-001-J"}, kept) == f"{level} is not in it"
    assert changed({other, level}, kept) == f"{other} is in it"
    assert changed({level}) == f"{item.name} was set to nothing, not {level}"
    assert changed({other}, replace(kept, planned=other)) == (
        f"{item.name} was set to {other}, not {level}, {level} is not in it, {other} is in it"
    )
    assert _changed(found, jar, [entry(make(Start, factors=(kept,)))], set(), ()) == ""


def test_a_jar_is_scored_by_its_worst_look_or_its_highest_reading_at_the_age_of_the_plan(
    sqlite_keeper: Keeper,
) -> None:
    _, found = plan_oils(sqlite_keeper)
    assert (found.plan.decides, found.plan.age, found.plan.worst) == ("look", "7 d", "clear")

    def look(grade: Grade, ntu: int | None, days: int) -> Look:
        return make(Look, grade=grade, ntu_milli=ntu, age_minutes=days * 24 * 60)

    def score(by: Decides, *looks: Look) -> Fraction | None:
        planned = replace(
            found,
            entry=replace(
                found.entry, draft=replace(found.entry.draft, facts=replace(found.plan, decides=by))
            ),
        )
        return _score(planned, [entry(each, number) for number, each in enumerate(looks, 1)])

    early, clear, hazy = (
        look(Grade.MILKY, 90_000, 1),
        look(Grade.CLEAR, 2_500, 7),
        (look(Grade.HAZY, None, 8)),
    )
    assert [score(Decides.LOOK, *told) for told in ((early,), (clear,), (hazy, clear))] == [
        None,
        0,
        1,
    ]
    assert [score(Decides.NTU, *told) for told in ((early,), (hazy,), (clear, hazy))] == [
        None,
        None,
        Fraction(5, 2),
    ]
    assert score(Decides.NTU, clear, look(Grade.CLEAR, 1_000, 8)) == Fraction(5, 2)
