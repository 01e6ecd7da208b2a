"""A strength for machines: the figures of the words, as text."""

from ledger.science.liquids.strength_asked import StrengthAnswer, strength_asked
from reports.json.glass.strength import strength_told
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check


def test_every_measure_is_a_decimal_string() -> None:
    told = strength_told(strength_asked("100 proof", "1 US gal", "60F"))
    assert (told.us_proof, told.source) == ("100", "OIML R 22:1975")
    assert told.amount is not None
    assert (told.amount.written, told.amount.measured_at_c) == ("1 US gal", "15.56")
    assert told.amount.proof_gallons == "1"
    assert float(told.specific_gravity) > float(told.specific_gravity_in_air)


def test_without_an_amount_there_is_none() -> None:
    assert strength_told(strength_asked("96%")).amount is None


def test_every_figure_of_a_strength_is_the_kept_one() -> None:
    check(
        "strength",
        strength_told(strength_asked("101.3 proof", "1 US gal", "60F")),
        strength_told(strength_asked("41.237%", "1.234567kg")),
    )


def test_every_part_of_a_strength_stands_under_its_own_key_and_without_an_amount_is_null() -> None:
    answers = (strength_told(each(StrengthAnswer)) for each in (filled, bare))
    check("strength_filled", *answers)
