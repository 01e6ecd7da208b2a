"""Dates: what was decided, else the formula's rule, and never later than the inputs."""

from datetime import date, timedelta

import pytest

from ledger.domain.entries import Formula
from ledger.domain.entries.masters import Keeping
from ledger.domain.lots.dates import Dated, Dates, asks_for_a_reading, dates, lowest, rule_of
from tests.domain.builders import make

FINISHED = date(2026, 3, 2)
KEY = ("orange", 1)
PLAIN = make(Formula, best_before_days=365)
BY_SYRUP = make(
    Formula,
    keeping=(
        Keeping("cool and dark", 180, 30, brix_min_mpct=65_000),
        Keeping("refrigerated", 28, 14, brix_min_mpct=50_000),
    ),
)


def syrup(**changes: object) -> Dated:
    return Dated(**{"code": "S-1", "formula": KEY, "finished_on": FINISHED, **changes})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("formula", "brix_mpct", "days"),
    [
        (PLAIN, None, 365),
        (BY_SYRUP, 66_000, 180),
        (BY_SYRUP, 65_000, 180),
        (BY_SYRUP, 64_900, 28),
        (BY_SYRUP, 40_000, None),
        (BY_SYRUP, None, None),
        (make(Formula), None, None),
    ],
)
def test_the_first_row_whose_reading_is_reached_counts(
    formula: Formula, brix_mpct: int | None, days: int | None
) -> None:
    rule = rule_of(formula, brix_mpct)
    assert (rule.days if rule else None) == days


def test_a_rule_counts_from_the_day_the_making_ended_and_says_so() -> None:
    assert dates(syrup(brix_mpct=66_000), (), {KEY: BY_SYRUP}) == Dates(
        date(2026, 8, 29),
        "180 days from finishing by orange version 1, cool and dark",
        "cool and dark",
        30,
    )


def test_a_date_that_was_decided_comes_before_the_rule() -> None:
    told = dates(syrup(told=date(2026, 5, 1)), (), {KEY: PLAIN})
    assert (told.best_before, told.set_by) == (date(2026, 5, 1), "as decided for it")


@pytest.mark.parametrize(
    ("days", "best_before", "words"),
    [(1, FINISHED + timedelta(days=1), "1 day"), (10**9, date.max, "1000000000 days")],
)
def test_a_rule_of_any_length_gives_a_date_of_the_calendar(
    days: int, best_before: date, words: str
) -> None:
    told = dates(syrup(), (), {KEY: make(Formula, best_before_days=days)})
    assert told.best_before == best_before
    assert told.set_by is not None
    assert told.set_by.startswith(f"{words} from finishing by ")


def test_the_date_of_a_delivery_is_its_supplier_s() -> None:
    oil = Dated("O-1", told=date(2026, 6, 30), is_bought=True)
    assert dates(oil, (), {}).set_by == "as its supplier gave it"


def test_a_date_is_never_later_than_that_of_an_input() -> None:
    oil = Dated("O-1", told=date(2026, 6, 30))
    essence = Dated("E-1", formula=("essence", 1), finished_on=date(2026, 2, 1))
    known = {KEY: PLAIN, ("essence", 1): make(Formula, best_before_days=60)}
    told = dates(syrup(), (essence, oil), known)
    assert told.best_before == date(2026, 4, 2)
    assert told.set_by == "never later than E-1, which it is made of"


def test_a_batch_that_is_not_finished_has_only_the_dates_of_its_inputs() -> None:
    oil = Dated("O-1", told=date(2027, 6, 30))
    assert dates(syrup(finished_on=None), (oil,), {KEY: PLAIN}).best_before == date(2027, 6, 30)
    assert dates(syrup(finished_on=None), (), {KEY: PLAIN}).best_before is None


def test_bottles_are_kept_by_the_rule_of_what_is_in_them() -> None:
    packed = Dated("P-1", filled_from="S-1")
    told = dates(packed, (syrup(brix_mpct=52_000),), {KEY: BY_SYRUP})
    assert (told.best_before, told.storage, told.opened_days) == (
        date(2026, 3, 30),
        "refrigerated",
        14,
    )


def test_bottles_that_are_read_weaker_than_what_they_were_filled_from_keep_by_that() -> None:
    packed = Dated("P-1", brix_mpct=64_000, filled_from="S-1")
    told = dates(packed, (syrup(brix_mpct=66_000),), {KEY: BY_SYRUP})
    assert (told.best_before, told.opened_days) == (date(2026, 3, 30), 14)


def test_how_long_a_syrup_keeps_once_opened_is_never_told_by_the_formula_of_its_essence() -> None:
    essence = Dated("E-1", formula=KEY, finished_on=FINISHED)
    by = {KEY: make(Formula, keeping=(Keeping("cool and dark", 540, 180),))}
    unguided = syrup(formula=None)
    packed = Dated("P-1", filled_from="S-1")
    for told in (dates(unguided, (essence,), by), dates(packed, (unguided, essence), by)):
        assert (told.storage, told.opened_days) == (None, None)
        assert told.best_before == FINISHED + timedelta(days=540)


def test_a_formula_that_is_not_in_the_book_sets_no_date() -> None:
    assert dates(syrup(), (), {}) == Dates()


def test_a_formula_asks_for_a_reading_where_a_row_hangs_on_one() -> None:
    assert asks_for_a_reading(BY_SYRUP)
    assert not asks_for_a_reading(PLAIN)
    assert not asks_for_a_reading(make(Formula, keeping=(Keeping("cool", 180, 30),)))


def test_the_weakest_strength_counts_and_none_where_none_is_known() -> None:
    assert lowest([None, 66_000, 0]) == 0
    assert lowest([]) is None


def test_where_a_rule_and_an_input_give_one_day_it_is_the_rule_that_set_it() -> None:
    oil = Dated("O-1", told=date(2027, 3, 2))
    told = dates(syrup(), (oil,), {KEY: PLAIN})
    assert (told.best_before, told.set_by) == (
        date(2027, 3, 2),
        "365 days from finishing by orange version 1",
    )
    assert told.storage is None
    assert told.opened_days is None


def test_a_formula_with_rows_says_nothing_besides_them() -> None:
    both = make(
        Formula, best_before_days=365, keeping=(Keeping("cool", 180, 30, brix_min_mpct=65_000),)
    )
    assert rule_of(both, 60_000) is None
    assert rule_of(make(Formula, best_before_days=0), None) == Keeping("", 0)
