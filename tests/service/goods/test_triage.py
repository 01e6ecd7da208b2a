"""A complaint points to the lot or to its customer, by the last look and by other complaints."""

import pytest

from ledger.domain.entries import Complaint, is_of
from ledger.domain.entries.choices import Grade
from ledger.service.goods.triage import Question, Triage, triage
from reports.words.goods.triage import triage_lines, triage_step
from tests.keeper import Keeper
from tests.path import Lots, make_syrup

ALL = {"opened": "Monday", "stored": "cellar", "mixed": "1 to 7", "photo": "a.jpg"}


def complained(keeper: Keeper, lot: str, symptom: str = "cloudy", **words: str) -> Triage:
    done = keeper.do("complain", lot=lot, symptom=symptom, **words)
    assert is_of(done.entry, Complaint)
    return triage(keeper.book, done.entry)


def test_the_questions_that_are_still_open_are_named(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert [str(question) for question in complained(keeper, lots.packed).still_open] == [
        *("when it was opened", "where it was stored", "how it was mixed", "a photo"),
    ]
    assert complained(keeper, lots.packed, **ALL).still_open == ()
    some = complained(keeper, lots.packed, opened="Monday", mixed="1 to 7")
    assert some.still_open == (Question.STORED, Question.PHOTO)
    assert triage_lines(some)[0] == (
        "Still to ask: where it was stored, a photo. When it is known: pottle correct "
        f'{some.complaint.seq} --set stored=ANSWER --because "asked later"'
    )


def test_an_answer_that_comes_later_is_a_correction(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="cloudy")
    later = keeper.do("correct", entry=str(done.seq), changes="stored=cellar", because="asked")
    assert is_of(later.entry, Complaint)
    found = triage(keeper.book, later.entry)
    assert Question.STORED not in found.still_open
    assert done.seq not in {entry.seq for entry in found.others}
    assert later.seq not in {entry.seq for entry in found.others}


def test_a_look_at_the_bulk_before_the_complaint_asks_for_one_at_the_bottle(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    lot, _ = another(keeper, walked[1], "bright")
    keeper.clock.forward(days=3)
    found = complained(keeper, lot)
    assert (found.grade, found.is_of_the_lot, found.is_fresh) == (Grade.BRIGHT, False, False)
    assert triage_lines(found)[2] == "No bottle of it was looked at: look at a bottle of it today."
    assert triage_step(found) == f"pottle look {lot} GRADE --of neat"
    keeper.do("look", lot=lot, grade="bright", of="neat")
    keeper.do("send", lot=lot, amount="1", moved_as="retained")
    keeper.clock.forward(days=3)
    found = complained(keeper, lot)
    assert (found.is_of_the_lot, found.is_fresh) == (True, False)
    assert triage_lines(found)[2] == (
        "That was before the complaint: look at the bottle kept back today."
    )


def another(keeper: Keeper, lots: Lots, grade: str) -> tuple[str, str]:
    """Make and fill another syrup of the same essence; return its bottles and its bulk."""
    syrup = make_syrup(keeper, lots, lots.essence)
    keeper.do("look", lot=syrup, grade=grade, of="neat")
    return keeper.opens("bottle", source=syrup, pack="3 x 250mL"), syrup


@pytest.mark.parametrize(
    ("grade", "points", "step"),
    [
        (
            "bright",
            "So the bottle kept back is bright: that points to how theirs was stored or mixed, not "
            "to the lot.",
            'pottle note {} "WHAT THE CUSTOMER WAS TOLD"',
        ),
        (
            "cloudy",
            "So the bottle kept back is not clear either: that points to the lot.",
            'pottle hold {} --because "WHY"',
        ),
    ],
)
def test_the_bottle_kept_back_decides_where_it_points(
    walked: tuple[Keeper, Lots], grade: str, points: str, step: str
) -> None:
    """A bright one: storage or mixing; a cloudy one: the lot (common practice, no source)."""
    keeper, lots = walked
    lot, _ = another(keeper, lots, "bright")
    keeper.do("send", lot=lot, amount="1", moved_as="retained")
    keeper.clock.forward(days=3)
    keeper.do("look", lot=lot, grade=grade, of="neat")
    found = complained(keeper, lot, **ALL)
    assert (found.is_of_the_lot, found.is_fresh, found.kept_back) == (True, True, True)
    assert points in triage_lines(found)
    assert triage_step(found) == step.format(lot)


def test_a_complaint_of_something_else_than_clarity_points_nowhere(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = complained(keeper, lots.packed, "flat")
    assert not found.is_about_clarity
    assert not any("points" in line or "today" in line for line in triage_lines(found))


def test_other_complaints_of_the_lot_are_told_and_ask_for_a_hold(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = complained(keeper, lots.packed, "flat")
    assert [e.facts for e in found.others] == [Complaint(symptom="cloudy", answer_days=7)]
    assert (
        "1 other complaint of BOS-001-S: 2026-03-04 cloudy, to be answered in 7 d."
        in triage_lines(found)
    )
    assert triage_step(found) == f'pottle hold {lots.packed} --because "WHY"'


def test_inputs_shared_with_other_lots_complained_of_are_counted(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    lot, _ = another(keeper, lots, "cloudy")
    keeper.do("complain", lot=lots.packed, symptom="ring")
    found = complained(keeper, lot)
    told = {item.brief.code: (item.complaints, item.lots) for item in found.shared}
    assert told == dict.fromkeys(
        (lots.oil, lots.spirit, lots.carb, lots.sugar, lots.water, lots.essence), (2, 1)
    )
    assert [item.brief.code for item in found.shared][:2] == [lots.oil, lots.essence]
    lines = triage_lines(found)
    assert f"  {lots.oil} Sweet orange oil: 2 complaints of 1 other lot" in lines
    assert lines[-1] == "  and 1 more input"


def test_a_held_lot_goes_on_to_its_suspects_and_else_to_a_drill(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.do("judge", lot=lots.packed, verdict="hold", because="cloudy")
    assert triage_step(complained(keeper, lots.packed)) == f"pottle recall {lots.packed} --drill"
    lot, _ = another(keeper, lots, "cloudy")
    keeper.do("complain", lot=lot, symptom="cloudy")
    assert triage_step(complained(keeper, lots.packed)) == f"pottle suspects {lots.packed}"


def test_a_lot_that_nobody_looked_at_is_told_so(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = complained(keeper, lots.water, "smells of pipe", **ALL)
    assert triage_lines(found)[0] == (
        f"Nobody has looked at {lots.water} or what it was filled from."
    )


@pytest.mark.parametrize(
    ("symptom", "is_so"),
    [
        *((f"Looks {grade.upper()} now", True) for grade in ("hazy", "opalescent", "cloudy")),
        ("milky", True),
        *((word, False) for word in ("bright", "clear", "ring", "gas")),
    ],
)
def test_a_complaint_is_about_clarity_that_names_a_grade_below_clear(
    symptom: str, is_so: bool, walked: tuple[Keeper, Lots]
) -> None:
    keeper, lots = walked
    assert complained(keeper, lots.packed, symptom).is_about_clarity is is_so


@pytest.mark.parametrize("grade", Grade)
def test_the_last_look_at_the_lot_decides_whether_it_is_unclear_here(
    grade: Grade, walked: tuple[Keeper, Lots]
) -> None:
    keeper, lots = walked
    keeper.do("look", lot=lots.packed, grade="milky" if grade is Grade.CLEAR else "clear")
    keeper.do("look", lot=lots.packed, grade=str(grade))
    found = complained(keeper, lots.packed)
    assert (found.grade, found.is_of_the_lot, found.is_fresh) == (grade, True, True)
    assert found.is_unclear_here is (grade not in (Grade.BRIGHT, Grade.CLEAR))
