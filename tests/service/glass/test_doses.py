"""A dose is the one asked for, else the formula's, else the usual one of the trade."""

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.errors import InputError
from ledger.service.glass.doses import USUAL, dose_of, read_dose

FORMULA = Formula("test", 1, "Test", ProductKind.ESSENCE, parse_quantity("100mL"))

GALLON = replace(FORMULA, dose=parse_quantity("1US fl oz"), dose_into=parse_quantity("1 US gal"))


def test_what_the_formula_says_counts_before_the_usual_and_what_is_asked_before_both() -> None:
    assert dose_of(None) == dose_of(FORMULA) == USUAL
    said = dose_of(GALLON)
    assert (said.said, said.dose_ul, said.into) == (
        "1 US fl oz",
        29_574,
        (("1 US gal", 3_785_412),),
    )
    asked = dose_of(GALLON, read_dose("45mL", "US"))
    assert (asked.said, asked.dose_ul, asked.into) == ("45 mL", 45_000, said.into)
    assert dose_of(None, read_dose("45mL", "US")).into == USUAL.into


def test_nothing_is_asked_by_no_words() -> None:
    assert read_dose(None, "US") is None
    assert read_dose("", "US") is None
    assert [read_dose("1 fl oz", ounce) for ounce in ("US", "imperial")] == [
        *(("1 fl oz", 29_574), ("1 fl oz", 28_413)),
    ]
    half = replace(FORMULA, dose=parse_quantity("3mL"))
    assert dose_of(half) == USUAL


def test_what_is_no_volume_is_no_dose() -> None:
    with pytest.raises(InputError) as raised:
        read_dose("3g", "US")
    assert raised.value.problems == (
        ('"3g" is not a dose of essence.', "Write a volume, such as 30mL."),
    )
