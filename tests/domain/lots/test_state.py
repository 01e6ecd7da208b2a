"""What the book knows of a lot at a moment, folded from its entries in force."""

from datetime import date, timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import (
    Bottle,
    Filter,
    Finish,
    Judge,
    Look,
    Material,
    Receipt,
    Rest,
    Start,
)
from ledger.domain.entries.choices import (
    FoodGrade,
    Grade,
    LotType,
    MaterialKind,
    ProductKind,
    Purpose,
    Verdict,
)
from ledger.domain.lots.lot import Lot, Status
from ledger.domain.lots.state import (
    STAYS_IN_THE_CAKE,
    LotState,
    finished_at,
    food_grade,
    has_before,
    in_brief,
    is_past_date,
    is_trial,
    last_look,
    latest,
    name,
    open_rest,
    opener,
    passes,
    status,
)
from tests.domain.builders import (
    BEGUN,
    at,
    entry,
    lot,
    make,
    ml,
    oil,
    packed,
    powder,
    struck,
)


def test_a_lot_has_the_code_and_measure_it_was_opened_with() -> None:
    assert (powder("C-7").code, powder("C-7").measure) == ("C-7", Measure.MG)


def test_the_opener_is_the_entry_in_force_that_stands_for_the_lot() -> None:
    corrected = replace(entry(make(Start, product="Mended"), 6), stands_for=1)
    assert opener(lot(opening=corrected)) is corrected
    assert opener(struck(lot("E-1", make(Finish)))) is None


def test_the_latest_facts_of_a_kind_are_those_that_happened_last() -> None:
    state = lot("E-1", make(Finish, volume=ml(440)), make(Finish, volume=ml(430)), make(Look))
    assert latest(state, Finish) == make(Finish, volume=ml(430))
    assert latest(state, Judge) is None


def test_a_kind_is_there_from_the_moment_it_happened() -> None:
    state, moment = lot("E-1", make(Finish)), BEGUN + timedelta(minutes=10)
    assert has_before(state, Finish, moment)
    assert not has_before(state, Finish, moment - timedelta(seconds=1))
    assert not has_before(state, Judge, moment)


NAMES: list[tuple[str, LotState, str]] = [
    ("a received lot has its material's name", oil(), "Orange oil"),
    ("without the material, its code", oil(material=None), "oil"),
    ("a batch has its product's name", lot(), "Orange essence"),
    ("bottles have the bulk's name and their size", packed(bulk=lot()), "Orange essence, 30 mL"),
    ("bottles of who knows what", packed(), "bottled, 30 mL"),
    ("rinse liquor", lot(kind="rinse"), "Rinse liquor"),
    ("a struck lot", struck(oil()), "Struck lot"),
]


@pytest.mark.parametrize(("state", "shown"), [row[1:] for row in NAMES], ids=[r[0] for r in NAMES])
def test_a_lot_has_a_name_for_people(state: LotState, shown: str) -> None:
    assert name(state) == shown


def judged(*verdicts: str) -> tuple[Judge, ...]:
    return tuple(make(Judge, verdict=Verdict(word)) for word in verdicts)


STATUSES: list[tuple[LotState, str]] = [
    (oil(), "in stock"),
    (lot(kind="rinse"), "in stock"),
    (lot(), "being made"),
    (lot("E-1", make(Finish)), "finished"),
    (packed(), "packed"),
    (lot("E-1", *judged("hold")), "on hold"),
    (lot("E-1", make(Finish), *judged("release")), "released"),
    (packed("P-1", *judged("release", "hold", "reject")), "rejected"),
    (lot("E-1", *judged("reject", "rework")), "to be reworked"),
    (packed("P-1", *judged("release", "recall")), "recalled"),
    (struck(lot("E-1", *judged("release"))), "struck out"),
]


@pytest.mark.parametrize(
    ("state", "word"), STATUSES, ids=[f"{n} {row[1]}" for n, row in enumerate(STATUSES)]
)
def test_the_latest_verdict_is_the_status_else_how_far_the_making_is(
    state: LotState, word: str
) -> None:
    assert status(state) is Status(word)


@pytest.mark.parametrize("verdict", Verdict)
def test_every_verdict_makes_a_status(verdict: Verdict) -> None:
    assert status(lot("E-1", make(Judge, verdict=verdict))) not in (Status.MAKING, Status.STRUCK)


BEGINS, ENDS = make(Rest), make(Rest, ended_at=at(11), began=2)
WHOLE = make(Rest, ended_at=at(10))
RESTS: list[tuple[str, LotState, int | None]] = [
    ("no rest", lot(), None),
    ("a rest goes on", lot("E-1", BEGINS), 2),
    ("it has ended", lot("E-1", BEGINS, ENDS), None),
    ("it was told whole", lot("E-1", WHOLE), None),
    ("the next one goes on", lot("E-1", BEGINS, ENDS, make(Look), BEGINS), 5),
    ("a whole one was told besides", lot("E-1", BEGINS, WHOLE), 2),
]


@pytest.mark.parametrize(("state", "seq"), [row[1:] for row in RESTS], ids=[r[0] for r in RESTS])
def test_the_open_rest_is_the_one_that_began_and_did_not_end(
    state: LotState, seq: int | None
) -> None:
    resting = open_rest(state)
    assert (resting.seq if resting else None) == seq


def test_a_corrected_beginning_still_ends_by_the_number_of_its_first_entry() -> None:
    mended = replace(entry(make(Rest), 9, at(9)), stands_for=2)
    assert open_rest(lot("E-1", mended)) is mended
    assert open_rest(lot("E-1", mended, ENDS)) is None


def test_passes_are_counted() -> None:
    assert passes(lot()) == 0
    assert passes(lot("E-1", make(Filter), make(Look), make(Filter, pass_no=2))) == 2


BRIGHT, HAZY = make(Look), make(Look, grade=Grade.HAZY)
LOOKS: list[tuple[str, LotState, Look | None]] = [
    ("never", lot(), None),
    ("the latest", lot("E-1", HAZY, BRIGHT), BRIGHT),
    ("bottles inherit it", packed(bulk=lot("E-1", HAZY)), HAZY),
    ("bottles have their own", packed("P-1", BRIGHT, bulk=lot("E-1", HAZY)), BRIGHT),
    ("neither was seen", packed(bulk=lot()), None),
]


@pytest.mark.parametrize(("state", "look"), [row[1:] for row in LOOKS], ids=[r[0] for r in LOOKS])
def test_the_last_look_is_at_the_lot_or_its_bulk(state: LotState, look: Look | None) -> None:
    assert last_look(state) == look


@pytest.mark.parametrize(
    ("best_before", "is_past"),
    [(None, False), (date(2026, 3, 1), True), (date(2026, 3, 2), False), (date(2026, 3, 3), False)],
    ids=str,
)
def test_the_best_before_date_is_the_last_good_day(best_before: Any, is_past: bool) -> None:
    assert is_past_date(lot(best_before=best_before), date(2026, 3, 2)) is is_past


def graded(word: str) -> Any:
    return make(Material, food_grade=FoodGrade(word))


FOOD: list[tuple[str, LotState, str]] = [
    ("nothing is known", lot(), "unknown"),
    ("as its material", oil(material=graded("no")), "no"),
    (
        "its own papers count more",
        oil(material=graded("no"), opening=make(Receipt, food_grade=FoodGrade.YES)),
        "yes",
    ),
]


@pytest.mark.parametrize(("state", "word"), [row[1:] for row in FOOD], ids=[r[0] for r in FOOD])
def test_food_grade_is_what_the_papers_say(state: LotState, word: str) -> None:
    assert food_grade(state) is FoodGrade(word)


def test_a_trial_is_known_in_the_batch_and_in_its_bottles() -> None:
    trial = lot(opening=make(Start, purpose=Purpose.TRIAL))
    assert is_trial(trial)
    assert is_trial(packed(bulk=trial))
    assert not is_trial(packed(bulk=lot()))
    assert not is_trial(oil())
    assert not is_trial(lot("P-1", kind="packed", opening=make(Bottle)))


def test_a_clarifier_never_counts_as_dissolving_and_sugar_does() -> None:
    """Nor does what a filter is made of."""
    assert [kind for kind in MaterialKind if kind in STAYS_IN_THE_CAKE] == [
        MaterialKind.CLARIFIER,
        MaterialKind.FILTER,
    ]


def test_the_making_ended_when_the_last_finish_happened() -> None:
    assert finished_at(lot("E-1", make(Look))) is None
    ended = finished_at(lot("E-1", make(Finish), make(Look), make(Finish), make(Look)))
    assert ended == BEGUN + timedelta(minutes=30)


CAME = make(Receipt, supplier="Pretend Oils", supplier_lot="77")
SYRUP = make(Start, product="Cordial", product_kind=ProductKind.SYRUP)


def brief(state: LotState, lot_type: LotType, name: str, status: str, **told: Any) -> Lot:
    first = opener(state)
    return Lot(
        seq=1,
        code=state.code,
        lot_type=lot_type,
        measure=state.measure,
        opened_at=first.draft.happened if first else None,
        name=name,
        status=Status(status),
        on_hand=state.on_hand,
        **told,
    )


def test_a_lot_in_brief_says_what_came_what_is_made_and_what_was_filled() -> None:
    came = replace(oil(opening=CAME), is_reckoned=True)
    supplied = {"material": "oil", "supplier": "Pretend Oils", "supplier_lot": "77"}
    told = {**supplied, "is_reckoned": True}
    assert in_brief(came) == brief(
        came, LotType.RECEIVED, "Orange oil", "in stock", sort=MaterialKind.OIL, **told
    )
    unknown = replace(came, material=None)
    assert in_brief(unknown) == brief(unknown, LotType.RECEIVED, "oil", "in stock", **told)
    made = lot("S-1", HAZY, opening=SYRUP, best_before=date(2027, 3, 2))
    of_made = {"product": "Cordial", "product_kind": ProductKind.SYRUP}
    assert in_brief(made) == brief(
        made,
        LotType.MADE,
        "Cordial",
        "being made",
        best_before=date(2027, 3, 2),
        grade=Grade.HAZY,
        **of_made,
    )
    filled = packed(bulk=made)
    assert in_brief(filled) == brief(
        filled, LotType.PACKED, "Cordial, 30 mL", "packed", bulk=1, grade=Grade.HAZY, **of_made
    )
    alone, gone = packed(), struck(made)
    assert in_brief(alone) == brief(alone, LotType.PACKED, "bottled, 30 mL", "packed")
    assert in_brief(gone) == brief(
        gone,
        LotType.MADE,
        "Struck lot",
        "struck out",
        best_before=date(2027, 3, 2),
        grade=Grade.HAZY,
    )
