"""A reading that does not fit the book is told at once, and stands in the way of a release."""

from ledger.domain.entries import Judge, Look, Measurement
from ledger.domain.entries.choices import Grade, Measured, Verdict
from ledger.domain.lots.control import Control, Doubted
from ledger.domain.lots.readings import Reading, Reckoned
from ledger.domain.rules.finding import Finding, Severity
from ledger.domain.rules.usual.readings import (
    a_clear_drink_can_hold_its_oil,
    last_readings_fit_the_book,
    reading_fits_the_book,
)
from tests.domain.builders import draft, lot, make, scene

WRONG = Reading("E-1", Measured.ABV, Reckoned(70.0, 1.0, 90.0, 90.0, 90.0, 1.8))
RIGHT = Reading("E-1", Measured.ABV, Reckoned(89.0, 1.0, 90.0, 90.0, 90.0, 1.8))
APART = (
    "E-1 was measured at 70.0 % vol, and the book reckons 90.0 % vol; for the doubt of both they "
    "may differ by 2.1."
)
READ = draft(make(Measurement))
RELEASE = draft(Judge(Verdict.RELEASE))


def test_a_reading_apart_is_remarked_on_and_one_within_the_doubt_is_not() -> None:
    told = reading_fits_the_book(READ, scene(lot(), control=Control(readings=(WRONG, RIGHT))))
    assert list(told) == [
        Finding(
            Severity.REMARK,
            "measured and reckoned",
            APART,
            "Read it again; if it stays so, something else or another amount went in: "
            "pottle journal E-1",
        )
    ]
    assert not list(
        reading_fits_the_book(RELEASE, scene(lot(), control=Control(readings=(WRONG,))))
    )


def test_a_reading_apart_stands_in_the_way_of_a_release_alone() -> None:
    among = scene(lot(), control=Control(readings=(WRONG,)))
    command = "pottle measure E-1 abv READING --temp TEMP"
    todo = "Correct what went in where the book is wrong, or measure it again"
    assert list(last_readings_fit_the_book(RELEASE, among)) == [
        Finding(Severity.GATE, "release", APART, f"{todo}: {command}", command)
    ]
    hold = draft(Judge(Verdict.HOLD))
    assert not list(last_readings_fit_the_book(hold, among))


def test_a_clear_look_at_more_oil_than_dissolves_is_doubted_and_nothing_else_is() -> None:
    doubted = scene(lot(), control=Control(doubted=Doubted("sweet orange", 100.4, 80.32)))
    look = draft(make(Look, grade=Grade.CLEAR))
    assert list(a_clear_drink_can_hold_its_oil(look, doubted)) == [
        Finding(
            Severity.REMARK,
            "clear beyond what dissolves",
            "100 mg/L of sweet orange oil looked clear as poured, where the drink dissolves 80 % "
            "of it at the best.",
            "Was it the syrup that was looked at, or has the oil risen as a ring? Look again in "
            "the glass; if the entry is wrong, correct it.",
        )
    ]
    assert not list(a_clear_drink_can_hold_its_oil(look, scene(lot())))
    assert not list(a_clear_drink_can_hold_its_oil(READ, doubted))
