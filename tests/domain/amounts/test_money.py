"""Currencies have the digits that ISO 4217 gives them."""

import json
from pathlib import Path

from ledger.domain.amounts.money import coins, digits_of, digits_told, in_hundredths

LIST_ONE = Path(__file__).parents[2] / "reference" / "iso4217.json"
"""ISO 4217, list one: every code with its minor unit; the file names its source."""


def test_every_currency_has_the_digits_of_the_standard() -> None:
    units = json.loads(LIST_ONE.read_text("utf-8"))["minor_units"]
    assert len(units) > 170
    # Gold, drawing rights and the code for tests have no minor unit; here they have two digits.
    wanted = {code: 2 if digits == "N.A." else int(digits) for code, digits in units.items()}
    assert {code: digits_of(code) for code in units} == wanted


def test_money_of_old_entries_is_told_in_hundredths() -> None:
    assert coins(33_786) == "337.86"
    assert [coins(0), coins(0, 0), coins(-1), coins(1, 3)] == ["0.00", "0", "-0.01", "0.001"]
    assert in_hundredths(33_786, None) == 33_786


def test_two_digits_are_not_said_and_all_others_are() -> None:
    assert [digits_told(digits) for digits in (0, 2, 3, 4)] == [0, None, 3, 4]
