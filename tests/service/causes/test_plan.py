"""A trial is planned from what is suspected, sized for a chance, and drawn from the book."""

from pathlib import Path

import pytest

from ledger.domain.entries.trials import TwoLevels
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.causes.layout import planned
from ledger.service.causes.rates import Seen, seen_on
from ledger.service.causes.tries import _level, read_tries
from ledger.service.evidence.seal import seal
from tests.formula_texts import line, orange
from tests.keeper import Keeper
from tests.path import receive_all
from tests.service.bench.makings import essence, oil_lots
from tests.service.causes.planned_jars import NAME, plan_oils
from tests.service.wrong_words import check_wrong_words


def test_a_plan_holds_the_root_of_the_book_before_it(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    before = seal(sqlite_keeper.book)
    sqlite_keeper.do("plan", name="pores", tries=f"pore=5/20;oil={lots.oil[-5:]}/none")
    plan = planned(sqlite_keeper.book, "pores").plan
    assert (plan.root, plan.entries) == (before.root, before.entries)
    assert plan.factors == (TwoLevels("pore", "5", "20"), TwoLevels("oil", lots.oil, "none"))


def test_a_lot_alone_is_tried_against_another_of_its_material_on_hand(
    sqlite_keeper: Keeper,
) -> None:
    lots = receive_all(sqlite_keeper)
    held, suspected = oil_lots(sqlite_keeper, 2)
    sqlite_keeper.do("judge", lot=held, verdict="hold", because="smells old")
    sqlite_keeper.do("plan", name=NAME, tries=suspected[-5:])
    assert planned(sqlite_keeper.book, NAME).plan.factors == (
        TwoLevels("orange-oil", lots.oil, suspected),
    )


def test_its_jars_are_named_after_what_the_suspect_was_put_into_not_after_the_syrup(
    sqlite_keeper: Keeper,
) -> None:
    lots = receive_all(sqlite_keeper)
    (suspected,) = oil_lots(sqlite_keeper, 1)
    sqlite_keeper.do("plan", name="before", tries=suspected)
    plan = planned(sqlite_keeper.book, "before").plan
    assert (plan.product, plan.product_kind) == ("before", "essence")
    essence(sqlite_keeper, lots, suspected, "cloudy")
    sqlite_keeper.do("plan", name="Orange syrup", tries=suspected)
    plan = planned(sqlite_keeper.book, "Orange syrup").plan
    assert (plan.product, plan.product_kind) == ("Orange essence", "essence")
    sqlite_keeper.do("plan", name="named", tries=suspected, product="Cordial", kind="syrup")
    plan = planned(sqlite_keeper.book, "named").plan
    assert (plan.product, plan.product_kind) == ("Cordial", "syrup")


def test_its_jars_are_of_the_kind_that_its_formula_or_what_has_the_suspect_is(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    lots = receive_all(sqlite_keeper)
    file = tmp_path / "syrup.toml"
    words = {"code": "lemon-syrup", "product": "Lemon syrup", "kind": "syrup"}
    file.write_text(orange("480mL", line("orange-oil", "30mL"), **words), encoding="utf-8")
    sqlite_keeper.do("formula", file=str(file))
    sqlite_keeper.do("plan", name="by formula", tries="chill=4C/none", formula="Lemon-Syrup")
    plan = planned(sqlite_keeper.book, "by formula").plan
    assert (plan.product, plan.product_kind, plan.formula, plan.formula_version) == (
        *("Lemon syrup", "syrup", "lemon-syrup", 1),
    )
    essence(sqlite_keeper, lots, lots.oil, "cloudy", product="Oil soda", kind="syrup")
    sqlite_keeper.do("plan", name="by suspect", tries=f"oil=none/{lots.oil}")
    plan = planned(sqlite_keeper.book, "by suspect").plan
    assert (plan.product, plan.product_kind, plan.formula) == ("Oil soda", "syrup", None)


def test_without_anything_seen_nine_in_ten_and_one_in_twenty_are_taken(
    sqlite_keeper: Keeper,
) -> None:
    _, found = plan_oils(sqlite_keeper)
    plan = found.plan
    assert (plan.fails_mpct, plan.else_mpct, plan.level_mpct) == (90_000, 5_000, 5_000)
    assert [evening.jars for evening in plan.evenings] == [6, 6]
    assert plan.chance_mpct == 94_000
    assert [jar.evening for jar in found.jars] == [1] * 6 + [2] * 6
    for evening in (1, 2):
        ours = [jar.levels[0][1] for jar in found.jars if jar.evening == evening]
        assert sorted(map(ours.count, set(ours))) == [3, 3]


def test_the_shares_seen_so_far_size_a_trial(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    (bad,) = oil_lots(sqlite_keeper, 1)
    for place in range(10):
        essence(
            sqlite_keeper, lots, bad if place % 2 else lots.oil, "cloudy" if place % 2 else "clear"
        )
    with sqlite_keeper.reading() as connection:
        found = seen_on(connection, {bad, "chilled"})
    assert found == Seen(failed_with=5, lots_with=5, failed_without=0, lots_without=5)
    assert found.fails == pytest.approx(5.5 / 6)
    assert found.otherwise == pytest.approx(0.5 / 6)
    sqlite_keeper.do("plan", name=NAME, tries=bad)
    plan = planned(sqlite_keeper.book, NAME).plan
    assert (plan.fails_mpct, plan.else_mpct) == (91_667, 8_333)


def test_a_second_plan_of_a_question_is_one_and_is_held_to_half_the_level(
    sqlite_keeper: Keeper,
) -> None:
    _, first = plan_oils(sqlite_keeper)
    item = first.plan.factors[0]
    sqlite_keeper.do("strike", entry=str(first.entry.seq), because="the wrong week")
    sqlite_keeper.do(
        "plan", name="again", tries=f"oil={item.usual}/{item.suspected}", product="ORANGE essence"
    )
    again = planned(sqlite_keeper.book, "Again")
    assert [entry.seq for entry in again.earlier] == [first.entry.seq]
    assert again.plan.level_mpct == 2_500
    assert sum(evening.jars for evening in again.plan.evenings) == 14
    assert planned(sqlite_keeper.book, NAME).is_struck


def test_a_plan_cannot_be_corrected(sqlite_keeper: Keeper) -> None:
    _, found = plan_oils(sqlite_keeper)
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do(
            "correct", entry=str(found.entry.seq), changes="name=other", because="misread"
        )
    assert refused.value.problems == (
        (
            f"Entry {found.entry.seq} plans a trial, and the order and the marks of its jars are "
            "drawn from what it says, so it cannot be corrected.",
            f"Strike it, then plan the trial under another name: pottle strike {found.entry.seq} "
            '--because "WHY"',
        ),
    )


def test_a_level_that_is_the_ending_of_a_lot_is_its_whole_code(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    with sqlite_keeper.reading() as connection:
        found = read_tries(connection, f"Oil = {lots.oil[-5:]} / none ; dose=1/2", "AB")
    assert found == (TwoLevels("oil", lots.oil, "none"), TwoLevels("dose", "1", "2"))


HOW = "Name a lot that is suspected, or write it as NAME=USUAL/SUSPECTED, such as chill=4C/none."
REFUSED: dict[str, tuple[dict[str, str], type[LedgerError], str, str]] = {
    "nothing to try": ({"tries": " ; "}, InputError, "It is not said what the trial tries.", HOW),
    "one level": (
        {"tries": "chill=4C"},
        InputError,
        '"chill=4C" does not name two levels.',
        HOW,
    ),
    "three levels": (
        {"tries": "dose=1 g/mL / 2 g/mL / 3 g/mL"},
        InputError,
        '"dose=1 g/mL / 2 g/mL / 3 g/mL" does not name two levels.',
        HOW,
    ),
    "the same level twice": (
        {"tries": "chill=4C/4C"},
        InputError,
        '"chill=4C/4C" names the same level twice.',
        HOW,
    ),
    "a level that is too long": (
        {"tries": f"chill=4C/{'x' * 2001}"},
        InputError,
        "The level has 2001 characters; at most 2000 are kept.",
        "Say it in fewer words, or in several notes.",
    ),
    "a name that is too long": (
        {"tries": f"{'x' * 2001}=4C/18C"},
        InputError,
        "The name has 2001 characters; at most 2000 are kept.",
        "Say it in fewer words, or in several notes.",
    ),
    "a name twice": (
        {"tries": "chill=4C/none;chill=4C/18C"},
        InputError,
        "Two things that the trial tries are both called chill.",
        "Write one of them with another name: NAME=USUAL/SUSPECTED",
    ),
    "too much at once": (
        {"tries": ";".join(f"f{place}=a/b" for place in range(8))},
        InputError,
        "A trial tries 7 things at most, and 8 are named.",
        "Leave out what is least likely.",
    ),
    "no lot to compare with": (
        {"tries": "NS-001-J"},
        RefusedError,
        "There is no other lot of Neutral spirit on hand to compare NS-001-J with.",
        "Receive one, or say what goes in instead: spirit=USUAL/NS-001-J",
    ),
    "what hardly differs": (
        {"tries": "chill=4C/none", "fails": "40%", "otherwise": "30"},
        RefusedError,
        "No trial of up to 48 jars names the cause with a chance of 90 %, where 40 % with the "
        "cause and 30 % without of the jars fail.",
        "Try fewer things at once, or ask for less: --chance 80",
    ),
    "a formula that is not there": (
        {"tries": "chill=4C/none", "formula": "rose"},
        RefusedError,
        "The formula rose is not in the book.",
        "pottle formula list shows those that are.",
    ),
}


@pytest.mark.parametrize(("words", "kind", "what", "todo"), REFUSED.values(), ids=list(REFUSED))
def test_what_cannot_be_planned_is_said_in_words(
    sqlite_keeper: Keeper, words: dict[str, str], kind: type[LedgerError], what: str, todo: str
) -> None:
    receive_all(sqlite_keeper)
    before = len(sqlite_keeper.entries())
    with pytest.raises(kind) as refused:
        sqlite_keeper.do("plan", name=NAME, **words)
    assert refused.value.problems == ((what, todo),)
    assert len(sqlite_keeper.entries()) == before


def test_two_trials_have_two_names(sqlite_keeper: Keeper) -> None:
    plan_oils(sqlite_keeper)
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("plan", name="Cloudy Orange", tries="chill=4C/none")
    assert refused.value.problems == (
        (
            'There is a trial "Cloudy Orange" in the book already.',
            'Give another name; pottle compare "Cloudy Orange" tells what came of that one.',
        ),
    )


def test_a_lot_of_which_nothing_is_left_cannot_be_tried_alone(sqlite_keeper: Keeper) -> None:
    receive_all(sqlite_keeper)
    (gone,) = oil_lots(sqlite_keeper, 1)
    sqlite_keeper.do("send", lot=gone, amount="500mL", moved_as="breakage", because="it fell")
    with pytest.raises(RefusedError) as refused:
        sqlite_keeper.do("plan", name=NAME, tries=gone)
    assert refused.value.problems == (
        (
            f"Nothing of {gone} is on hand, so no jar can be made with it.",
            "Leave it out, or name what is varied: NAME=USUAL/SUSPECTED",
        ),
    )


def test_a_level_is_a_lot_by_its_ending_and_else_stays_as_it_is_told(
    sqlite_keeper: Keeper,
) -> None:
    """A dot is a level like others: no lot in hand is meant by it."""
    lots = receive_all(sqlite_keeper)
    with sqlite_keeper.reading() as connection:
        told = [_level(connection, text, "AB") for text in (lots.oil[-5:].lower(), "4C", ".")]
    assert told == [lots.oil, "4C", "."]


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "plan")


def test_a_trial_that_is_not_planned_is_told_with_those_that_are(sqlite_keeper: Keeper) -> None:
    plan_oils(sqlite_keeper)
    with pytest.raises(RefusedError) as raised:
        planned(sqlite_keeper.book, " no  such ")
    assert raised.value.problems == (
        (
            f'No trial "no such" is planned. Planned are: "{NAME}".',
            'Plan one: pottle trial plan "NAME" --try LOT',
        ),
    )
    assert planned(sqlite_keeper.book, f" {NAME.upper()} ").plan.name == NAME
