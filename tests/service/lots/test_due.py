"""What is due: rests, samples, dates and holds, each when it is due, the nearest first."""

from datetime import UTC, datetime

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import LookedAt, ProductKind, RestFor
from ledger.domain.entries.masters import FormulaStep, Keeping
from ledger.domain.rules.always import verdicts
from ledger.service.lots.due import Waits, due
from reports.words.lots.due import rows
from tests.keeper import Keeper
from tests.path import Lots, receive_all
from tests.service.engines import ON_EACH_ENGINE

FORMULA = Formula(
    "plain",
    1,
    "Plain essence",
    ProductKind.ESSENCE,
    parse_quantity("400mL"),
    steps=(
        FormulaStep("rest", rest_for=RestFor.MACERATE, minutes_min=24 * 60),
        FormulaStep("rest", rest_for=RestFor.CHILL, minutes_min=12 * 60),
        FormulaStep("finish"),
        FormulaStep("bottle"),
        FormulaStep("look", looked_at=LookedAt.NEAT, age_minutes=7 * 24 * 60),
        FormulaStep("look", looked_at=LookedAt.NEAT, age_minutes=30 * 24 * 60),
    ),
    keeping=(Keeping("cool and dark", 40),),
)


@pytest.fixture
def lots(keeper: Keeper) -> Lots:
    """Deliveries whose dates are far away; the last comes at 09:30."""
    keeper.record(FORMULA)
    return receive_all(keeper)


def shown(keeper: Keeper) -> list[tuple[str, str, str, str]]:
    """Return how long it is, when, which lot and what to do, of each thing that is due."""
    return [(left, when, lot, todo) for left, when, lot, _, todo in rows(due(keeper.book))]


def begin(keeper: Keeper, lots: Lots) -> str:
    """Begin a batch by the formula, without any step."""
    code = keeper.opens("start", formula="plain", target="400mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="400mL")
    return code


def filled(keeper: Keeper, lots: Lots) -> str:
    """Fill a plain batch on the first day, release the bottles and keep one back."""
    bulk = keeper.opens("start", product="Plain", kind="blend", target="1L")
    keeper.do("add", lot=bulk, source=lots.spirit, amount="1L")
    keeper.do("finish", lot=bulk, volume="1L")
    keeper.do("look", lot=bulk, grade="bright")
    packed = keeper.opens("bottle", source=bulk, pack="4 x 250mL", bottles=lots.bottles)
    keeper.do("judge", lot=packed, verdict="release")
    keeper.do("send", lot=packed, amount="1", moved_as="retained")
    return packed


@pytest.mark.usefixtures("lots")
def test_nothing_is_due_in_a_book_of_deliveries_that_keep(keeper: Keeper) -> None:
    assert due(keeper.book).items == ()


def test_a_rest_by_a_formula_is_due_after_its_least_time(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    keeper.do("rest", lot=code, purpose="macerate")
    assert shown(keeper) == [("in 1 d", "2026-03-03 09:50", code, "rest to macerate, 0 min so far")]
    keeper.clock.forward(hours=21, minutes=30)
    assert shown(keeper) == [
        ("in 2 h 30 min", "2026-03-03 09:50", code, "rest to macerate, 21 h 30 min so far")
    ]
    keeper.clock.forward(hours=4)
    assert shown(keeper) == [
        ("1 h 30 min ago", "2026-03-03 09:50", code, "rest to macerate, 1 d 1 h 30 min so far")
    ]


@ON_EACH_ENGINE
def test_a_rest_that_has_ended_is_not_due_and_the_next_has_its_own_time(
    keeper: Keeper, lots: Lots
) -> None:
    code = begin(keeper, lots)
    keeper.do("rest", lot=code, purpose="macerate")
    keeper.clock.forward(days=2)
    keeper.do("rest", lot=code, ended="yes")
    assert shown(keeper) == []
    keeper.do("rest", lot=code, purpose="chill", temp="2")
    assert shown(keeper) == [("in 12 h", "2026-03-04 22:00", code, "rest to chill, 0 min so far")]


def test_a_rest_without_a_formula_has_no_time_and_comes_last(keeper: Keeper, lots: Lots) -> None:
    free = keeper.opens("start", product="Free", kind="blend", target="1L")
    keeper.do("add", lot=free, source=lots.spirit, amount="1L")
    keeper.do("rest", lot=free, purpose="settle")
    code = begin(keeper, lots)
    keeper.do("rest", lot=code, purpose="chill")
    keeper.clock.forward(hours=1)
    assert [(item.waits, item.lot, item.at is None) for item in due(keeper.book).items] == [
        (Waits.REST, code, False),
        (Waits.REST, free, True),
    ]
    assert shown(keeper)[-1] == ("–", "", free, "rest to settle, 1 h 15 min so far")


def test_a_rest_whose_beginning_was_struck_is_not_due(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    begun = keeper.do("rest", lot=code, purpose="macerate")
    keeper.do("strike", entry=str(begun.seq), because="another vessel")
    assert shown(keeper) == []


def test_a_rest_whose_end_was_struck_is_due_again(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    keeper.do("rest", lot=code, purpose="macerate")
    keeper.clock.forward(days=2)
    ended = keeper.do("rest", lot=code, ended="yes")
    keeper.do("strike", entry=str(ended.seq), because="it goes on")
    assert [lot for _, _, lot, _ in shown(keeper)] == [code]


@pytest.mark.parametrize(
    ("looked_after_hours", "left", "when", "todo"),
    [
        ((), "in 23 h 50 min", "2026-03-03 10:00", "look at the sample, 1 d old"),
        ((12,), "in 11 h 45 min", "2026-03-03 10:00", "look at the sample, 1 d old"),
        ((22,), "in 6 d", "2026-03-09 10:00", "look at the sample, 7 d old"),
        ((24, 7 * 24), "in 22 d", "2026-04-01 11:00", "look at the sample, 30 d old"),
        ((30 * 24,), "in 59 d", "2026-05-31 11:00", "look at the sample, 90 d old"),
    ],
    ids=["not yet", "too early for the first", "a little early", "a week", "a month"],
)
def test_a_retained_sample_is_looked_at_on_its_days(
    looked_after_hours: tuple[int, ...],
    left: str,
    when: str,
    todo: str,
    keeper: Keeper,
    lots: Lots,
) -> None:
    """Days 1, 7, 30 and 90 since it was filled (common practice, no source)."""
    packed = filled(keeper, lots)
    passed = 0
    for hours in looked_after_hours:
        keeper.clock.forward(hours=hours - passed)
        keeper.do("look", lot=packed, grade="bright")
        passed = hours
    assert shown(keeper) == [(left, when, packed, todo)]


@pytest.mark.parametrize(("days", "age"), [(1, 1), (6, 1), (8, 7), (40, 30), (90, 90), (308, 90)])
def test_of_several_looks_that_were_missed_the_last_is_due(
    days: int, age: int, keeper: Keeper, lots: Lots
) -> None:
    """One look stands for all that were missed before it."""
    packed = filled(keeper, lots)
    keeper.clock.forward(days=days)
    assert [todo for _, _, lot, todo in shown(keeper) if lot == packed and "look" in todo] == [
        f"look at the sample, {age} d old"
    ]


def test_a_sample_that_was_looked_at_on_its_last_day_is_done(keeper: Keeper, lots: Lots) -> None:
    packed = filled(keeper, lots)
    keeper.clock.forward(days=90)
    keeper.do("look", lot=packed, grade="bright")
    assert shown(keeper) == []


def test_a_look_that_was_struck_does_not_count(keeper: Keeper, lots: Lots) -> None:
    packed = filled(keeper, lots)
    keeper.clock.forward(days=1)
    look = keeper.do("look", lot=packed, grade="bright")
    keeper.do("strike", entry=str(look.seq), because="the wrong bottle")
    assert [todo for *_, todo in shown(keeper)] == ["look at the sample, 1 d old"]


@pytest.mark.parametrize("verdict", ["reject", "hold"])
@ON_EACH_ENGINE
def test_a_sample_of_rejected_goods_is_let_be_and_one_on_hold_is_not(
    verdict: str, keeper: Keeper, lots: Lots
) -> None:
    packed = filled(keeper, lots)
    keeper.do("judge", lot=packed, verdict=verdict, because="it smells")
    told = {item.waits for item in due(keeper.book).items}
    assert told == {"reject": set(), "hold": {Waits.LOOK, Waits.HOLD}}[verdict]


@pytest.mark.parametrize(("verdict", "is_told"), [("reject", False), ("hold", True)])
def test_the_date_of_rejected_goods_matters_no_more(
    verdict: str, is_told: bool, keeper: Keeper
) -> None:
    code = keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-03-05")
    keeper.clock.forward(days=5)
    assert [row[2:] for row in shown(keeper)] == [(code, "past its date: reject it")]
    keeper.do("judge", lot=code, verdict=verdict, because="it is old")
    assert (Waits.DATE in {item.waits for item in due(keeper.book).items}) is is_told


def test_a_formula_asks_for_looks_at_ages_since_the_finish(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    assert shown(keeper) == []
    keeper.do("finish", lot=code, volume="400mL")
    assert shown(keeper) == [("in 7 d", "2026-03-09 09:50", code, "look at the sample, 7 d old")]
    keeper.clock.forward(days=8)
    assert [row[0] for row in shown(keeper)] == ["1 d ago"]
    keeper.do("look", lot=code, grade="bright")
    assert [row[2:] for row in shown(keeper) if "look" in row[3]] == [
        (code, "look at the sample, 30 d old")
    ]


def test_a_date_is_told_of_thirty_days_ahead(keeper: Keeper, lots: Lots) -> None:
    """Common practice, no source."""
    soon = keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-04-01")
    keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-04-02")
    assert [row[1:] for row in shown(keeper)] == [
        ("2026-04-01", soon, "use it first: its date comes")
    ]
    assert lots.sugar not in {item.lot for item in due(keeper.book).items}


def test_a_date_that_has_passed_is_told_until_the_lot_is_gone(keeper: Keeper, lots: Lots) -> None:
    old = keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-03-04")
    keeper.clock.forward(days=3)
    assert shown(keeper) == [("9 h 41 min ago", "2026-03-04", old, "past its date: reject it")]
    keeper.do("send", lot=old, amount="1kg", moved_as="destroyed", because="past its date")
    assert shown(keeper) == []
    assert lots.sugar in keeper.lot_codes()


@ON_EACH_ENGINE
def test_a_date_that_the_formula_sets_is_told_of_too(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    keeper.do("finish", lot=code, volume="400mL")
    keeper.clock.forward(days=29)
    keeper.do("look", lot=code, grade="bright")
    assert [row[1:] for row in shown(keeper)] == [
        ("2026-04-11", code, "use it first: its date comes")
    ]


def test_no_sample_is_looked_at_after_the_date_of_its_lot(keeper: Keeper, lots: Lots) -> None:
    code = begin(keeper, lots)
    keeper.do("finish", lot=code, volume="400mL")
    keeper.clock.forward(days=41)
    assert [row[2:] for row in shown(keeper)] == [(code, "past its date: reject it")]


def test_a_hold_says_why_and_has_no_time(keeper: Keeper, lots: Lots) -> None:
    keeper.do("judge", lot=lots.oil, verdict="hold", because="smells of pine")
    assert shown(keeper) == [("–", "", lots.oil, "on hold: smells of pine")]
    (held,) = due(keeper.book).items
    assert f"{held.since:%F %H:%M}" == "2026-03-02 09:40"
    keeper.do("judge", lot=lots.oil, verdict="release", because="it was the drum")
    assert shown(keeper) == []


def test_a_hold_without_a_reason_asks_for_a_decision(
    keeper: Keeper, lots: Lots, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As books have them from before a hold had to say why."""
    monkeypatch.setattr(verdicts, "RULES", ())
    keeper.do("judge", lot=lots.oil, verdict="hold")
    assert [todo for *_, todo in shown(keeper)] == ["on hold: decide about it"]


@ON_EACH_ENGINE
def test_the_nearest_comes_first_and_what_has_no_time_last(keeper: Keeper, lots: Lots) -> None:
    old = keeper.opens("receive", material="sugar", amount="1kg", best_before="2026-03-01",
                       because="cheap")  # fmt: skip
    packed = filled(keeper, lots)
    code = begin(keeper, lots)
    keeper.do("rest", lot=code, purpose="chill")
    keeper.do("judge", lot=lots.oil, verdict="hold", because="no papers")
    keeper.do("complain", lot=packed, symptom="cloudy", because="told on the phone")
    assert [(str(item.waits), item.lot) for item in due(keeper.book).items] == [
        ("date", old),
        ("rest", code),
        ("look", packed),
        ("answer", packed),
        ("hold", lots.oil),
    ]


def test_a_complaint_is_to_be_answered_by_the_end_of_its_day_on_the_clock_of_the_house(
    keeper: Keeper, lots: Lots
) -> None:
    """From the end of March an hour before that by UTC; what is answered is due no more."""
    packed = filled(keeper, lots)
    told = {"symptom": "cloudy", "party": "Quay Bar", "because": "told on the phone"}
    made = [keeper.do("complain", lot=packed, answer_days=days, **told) for days in ("7", "30")]
    items = [item for item in due(keeper.book).items if item.waits is Waits.ANSWER]
    assert [(item.at, item.since, item.number) for item in items] == [
        (datetime(2026, 3, 9, 23, 59, tzinfo=UTC), made[0].entry.draft.happened.at, made[0].seq),
        (datetime(2026, 4, 1, 22, 59, tzinfo=UTC), made[1].entry.draft.happened.at, made[1].seq),
    ]
    assert items[0].about == "cloudy, from Quay Bar"
    keeper.do("answer", complaint=str(made[0].seq), outcome="explained", told_by="AB")
    assert [item.number for item in due(keeper.book).items if item.number] == [made[1].seq]
