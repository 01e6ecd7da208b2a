"""The tables of a formula's file: figures that no sum could use are told."""

from pathlib import Path

import pytest

from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.masters.formula_files import load

CHECK = "Check the number."


TOO_MUCH = f"""\
code = "orange-essence"
version = 0x{"f" * 5000}
product = "Orange essence"
kind = "essence"
basis = "480mL"
best-before-days = 36501

[[keeping]]
storage = "cool"
days = 36500
opened-days = 9999999999
"""


def test_figures_that_no_sum_could_use_are_told(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    """A date so many days away would be in no calendar, so no lot of it could be shown."""
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, TOO_MUCH)
    assert raised.value.problems == (
        ('orange.toml line 2: "version" is too long a number.', CHECK),
        ('orange.toml line 6: "best-before-days" is more than a hundred years.', CHECK),
        ('orange.toml line 11: "opened-days" is more than a hundred years.', CHECK),
    )


UNLIKE = """\
code = "orange-essence"
version = 1
product = "Orange essence"
kind = "essence"
basis = "480g"

[[line]]
material = "orange-oil"
amount = "30mL"

[[step]]
verb = "filter"
precoat-min = "4mL"
passes-min = -1
"""


def test_an_amount_in_another_measure_and_a_figure_below_nothing_are_told_with_an_example(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, UNLIKE)
    assert raised.value.problems == (
        (
            'orange.toml line 5: 480g is not a volume, so it cannot be the "basis".',
            "Write a volume, such as 480mL.",
        ),
        (
            'orange.toml line 13: 4mL is not a weight, so it cannot be the "precoat-min".',
            "Write a weight, such as 4g.",
        ),
        (
            'orange.toml line 14: "passes-min" is below zero.',
            "Write a number from zero up.",
        ),
    )


APART = """\
code = "orange-essence"
version = 1
product = "Orange essence"
kind = "essence"
basis = "480mL"
yield-min = "86%"
yield-max = "85%"
abv-min = 90
abv-max = "80%"
colour = "red"
claim = ["a"]

[[step]]
verb = "rest"
rest-for = "chill"
at-least = "3h"
at-most = "2h"
temp-min = "-2"
temp-max = "-4"
"""


def test_ends_that_are_the_wrong_way_round_are_told_and_those_that_are_one_are_not(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, APART)
    swap = "Exchange them, or put right whichever is wrong."
    first, low, (key, todo), *others = raised.value.problems
    assert (first, low, *others) == (
        ('orange.toml line 7: "yield-min" 86% is more than "yield-max" 85%.', swap),
        ('orange.toml line 9: "abv-min" 90 is more than "abv-max" 80%.', swap),
        ('orange.toml line 11: "claim" is not a single value.', 'Write it in "quotes".'),
        ('orange.toml line 17: "at-least" 3h is more than "at-most" 2h.', swap),
        ('orange.toml line 19: "temp-min" -2 is more than "temp-max" -4.', swap),
    )
    assert key == 'orange.toml line 10: "colour" is not known in the formula.'
    assert todo.startswith("Choose from: code, version, product, kind, basis, wanted-clarity, ")


def test_ends_that_are_one_are_in_order(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    same = (
        APART.replace("86%", "85%")
        .replace("abv-min = 90", "abv-min = 80")
        .replace('"3h"', '"2h"')
        .replace('"-4"', '"-2"')
    )
    told = [line for line in same.splitlines(keepends=True) if line[:5] not in ("colou", "claim")]
    assert load(sqlite_keeper, tmp_path, "".join(told))


def test_a_formula_without_what_it_is_made_of_and_called_is_told_so(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, "version = 1\n")
    told = [what for what, _ in raised.value.problems]
    assert told == [
        'orange.toml line 1: A formula has no "basis".',
        "orange.toml line 1: The code is missing.",
        "orange.toml line 1: The product is missing.",
        "orange.toml line 1: The kind of product is missing.",
    ]
