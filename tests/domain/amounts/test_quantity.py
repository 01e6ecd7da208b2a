"""Amounts: read as written, kept exactly, shown plainly."""

from collections.abc import Callable

import pytest

from ledger.domain.amounts.quantity import (
    MOST,
    Measure,
    Quantity,
    mass_from_volume,
    parse_quantity,
    reckoned,
    show,
    show_alike,
    show_apart,
    show_exactly,
    tidy,
    volume_from_mass,
)
from ledger.domain.amounts.units import UNITS
from ledger.errors import InputError, RefusedError

UL, MG, UEACH = Measure.UL, Measure.MG, Measure.UEACH

KNOWN = f"{', '.join(unit.name for unit in UNITS[:-1])} and {UNITS[-1].name}"


@pytest.mark.parametrize(
    ("text", "amount", "measure"),
    [
        ("30mL", 30_000, UL),
        ("30 ml", 30_000, UL),
        ("30 ML.", 30_000, UL),
        ("0,5 L", 500_000, UL),
        ("1½ L", 1_500_000, UL),
        ("3 cL", 30_000, UL),
        ("1 dL", 100_000, UL),
        ("5 µL", 5, UL),
        ("5 uL", 5, UL),
        ("1/2 US gal", 1_892_706, UL),
        ("1 gal US", 3_785_412, UL),
        ("1 imp gal", 4_546_090, UL),
        ("0.5 fl oz", 14_787, UL),
        ("1 1/2 fl oz", 44_360, UL),
        ("1 US fl oz", 29_574, UL),
        ("1 imp fl oz", 28_413, UL),
        ("1 US pt", 473_176, UL),
        ("1 imp pt", 568_261, UL),
        ("1 US qt", 946_353, UL),
        ("1 imp qt", 1_136_522, UL),
        ("1 imp gal 2 pt", 5_682_612, UL),
        ("5 mg", 5, MG),
        ("15 g", 15_000, MG),
        ("2.4kg", 2_400_000, MG),
        ("1 lb", 453_592, MG),
        ("1 oz av", 28_350, MG),
        ("1 oz wt", 28_350, MG),
        ("1 lb 4 oz", 566_990, MG),
        ("1 lb, .5 oz", 467_767, MG),
        ("200 each", 200_000_000, UEACH),
        ("200 ea", 200_000_000, UEACH),
        ("200pcs", 200_000_000, UEACH),
        ("1/3 each", 333_333, UEACH),
    ],
)
def test_an_amount_is_read_as_makers_write_it(text: str, amount: int, measure: Measure) -> None:
    """Expected amounts follow from the factors of units.csv, rounded once."""
    assert parse_quantity(text) == Quantity(amount, measure, text)


def test_a_bare_fluid_ounce_is_that_of_the_house() -> None:
    assert parse_quantity("8 fl oz").amount == 236_588
    assert parse_quantity("8 fl oz", fluid_ounce="imperial").amount == 227_304


def test_a_bare_number_is_each_only_where_things_are_counted() -> None:
    assert parse_quantity("15", counted=True) == Quantity(15_000_000, UEACH, "15")
    assert parse_quantity("30 mL", counted=True).measure is UL


def test_the_text_is_kept_as_written_with_white_space_folded() -> None:
    assert parse_quantity("  1½ \t fl. oz. ").written == "1½ fl. oz."


@pytest.mark.parametrize(
    ("text", "amount"),
    [("1.5 µL", 2), ("2.5 µL", 2), ("2.51 µL", 3), ("0.51 µL", 1), ("1 US gal 0.216 µL", 3785412)],
)
def test_a_sum_is_rounded_half_to_even_once(text: str, amount: int) -> None:
    assert parse_quantity(text).amount == amount


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("30 oz", "30 oz could be a volume or a weight. Write US fl oz, imp fl oz or oz av."),
        (
            "1,000 mL",
            "1,000 mL could be 1000 mL or 1.000 mL, because a comma can part thousands or "
            "decimals. Write 1000 mL or 1.000 mL.",
        ),
        ("30", "30 has no unit. Write the unit too, as in 30 mL, 15 g or 200 each."),
        *(
            (
                f"5 {word}",
                f'"{word}" in 5 {word} is not a unit the book knows; it knows {KNOWN}. '
                "Write the amount again with one of these.",
            )
            for word in ("XX", "oxX")
        ),
        ("1 lb 4", "4 has no unit. Write the unit too, as in 30 mL, 15 g or 200 each."),
        (
            "NaN mL",
            '"NaN mL" is not an amount, because it does not begin with a number. '
            "Write a number and a unit, such as 30 mL.",
        ),
        (
            "about 5 mL",
            '"about 5 mL" is not an amount, because it does not begin with a number. '
            "Write a number and a unit, such as 30 mL.",
        ),
        (
            "1 L 5 g",
            "1 L 5 g mixes a volume in L with a mass in g. Write one amount at a time.",
        ),
        (
            "30 mL 30 mL",
            "30 mL 30 mL has mL after mL, so it could be two amounts run together. "
            "Write one amount, with its largest unit first.",
        ),
        (
            "1000000000.000001 L",
            "1000000000.000001 L is more than the book holds: at most 1000000000 L. "
            "Check the number and the unit.",
        ),
        (
            "99999999999 kg",
            "99999999999 kg is more than the book holds: at most 1000000000 kg. "
            "Check the number and the unit.",
        ),
        (
            "99999999999 each",
            "99999999999 each is more than the book holds: at most 1000000000 each. "
            "Check the number and the unit.",
        ),
    ],
    ids=[
        "bare ounce",
        "comma",
        "no unit",
        "capitals alone",
        "a capital at its end",
        "no last unit",
        "NaN",
        "no number first",
        "two measures",
        "twice",
        "too many litres",
        "too many kilograms",
        "too many things",
    ],
)
def test_what_cannot_be_read_is_refused_in_words(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_quantity(text)
    assert str(caught.value) == sentence


@pytest.mark.parametrize(
    "text", ["0 mL", "0/5 g", "-5 mL", "−5 mL", "- .5 g", "-½ L", "-5 parsecs"]
)
def test_nothing_and_less_are_refused(text: str) -> None:
    with pytest.raises(RefusedError) as caught:
        parse_quantity(text)
    assert str(caught.value) == (
        f"An amount must be more than zero, and {text} is not. Write how much there really was."
    )


@pytest.mark.parametrize(
    ("text", "least"),
    [
        ("0.5 µL", "volume the book keeps is 1 µL"),
        ("0.1 mg", "mass the book keeps is 1 mg"),
        ("0.0000001 each", "count the book keeps is 0.000001 each"),
    ],
    ids=["volume", "mass", "count"],
)
def test_what_rounds_to_nothing_is_refused(text: str, least: str) -> None:
    with pytest.raises(RefusedError) as caught:
        parse_quantity(text)
    assert str(caught.value) == (
        f"{text} rounds to nothing: the smallest {least}. Check the number and the unit."
    )


def test_the_largest_amount_is_held() -> None:
    assert parse_quantity("1000000000 L").amount == MOST


@pytest.mark.parametrize(
    ("amount", "measure", "shown"),
    [
        (0, UL, "0 mL"),
        (5, UL, "0.005 mL"),
        (500, UL, "0.5 mL"),
        (30_000, UL, "30 mL"),
        (999_999, UL, "999.999 mL"),
        (1_000_000, UL, "1 L"),
        (1_250_000, UL, "1.25 L"),
        (3_800_000, UL, "3.8 L"),
        (3_785_412, UL, "3.785 L"),
        (1_000_500, UL, "1 L"),
        (1_001_500, UL, "1.002 L"),
        (-30_000, UL, "-30 mL"),
        (-1_250_000, UL, "-1.25 L"),
        (-5, UL, "-0.005 mL"),
        (MOST, UL, "1000000000 L"),
        (0, MG, "0 g"),
        (850, MG, "850 mg"),
        (-850, MG, "-850 mg"),
        (1_000, MG, "1 g"),
        (15_000, MG, "15 g"),
        (2_400_000, MG, "2.4 kg"),
        (0, UEACH, "0"),
        (15_000_000, UEACH, "15"),
        (-1_500_000, UEACH, "-1.5"),
        (1, UEACH, "0.000001"),
    ],
)
def test_an_amount_is_shown_in_metric_units(amount: int, measure: Measure, shown: str) -> None:
    assert show(amount, measure) == shown


@pytest.mark.parametrize("convert", [mass_from_volume, volume_from_mass], ids=["mass", "volume"])
@pytest.mark.parametrize("density", [0, -842_000])
def test_a_density_that_is_not_above_zero_is_refused(
    convert: Callable[[int, int], int], density: int
) -> None:
    with pytest.raises(RefusedError) as caught:
        convert(1000, density)
    assert str(caught.value) == (
        f"A density must be more than zero, and {density} mg/L is not. "
        "Enter the density on the certificate, or measure it."
    )


@pytest.mark.parametrize(
    ("amount", "measure", "shown", "exactly"),
    [
        (1_000_000, UL, "1 L", "1 L"),
        (-1_000_000, MG, "-1 kg", "-1 kg"),
        (999_999, UL, "999.999 mL", "999.999 mL"),
        (1_000_600, MG, "1.001 kg", "1000.6 g"),
        (-1_000_600, UL, "-1.001 L", "-1000.6 mL"),
        (999, MG, "999 mg", "999 mg"),
        (-1, MG, "-1 mg", "-1 mg"),
        (1000, MG, "1 g", "1 g"),
        (0, MG, "0 g", "0 g"),
        (1, UL, "0.001 mL", "0.001 mL"),
        (1_000_001, UEACH, "1.000001", "1.000001"),
    ],
)
def test_an_amount_is_shown_in_the_large_unit_from_one_of_it_on_and_exactly_in_the_small(
    amount: int, measure: Measure, shown: str, exactly: str
) -> None:
    assert (show(amount, measure), show_exactly(amount, measure)) == (shown, exactly)


def test_amounts_beside_each_other_are_shown_alike_or_at_least_apart() -> None:
    assert show_alike(MG, 1_000_001, 1_000_000, 5) == ("1000.001 g", "1000 g", "5 mg")
    assert show_alike(UL, 1_000_000, 999_999) == ("1 L", "999.999 mL")
    assert show_alike(UEACH, 1_000_001, 2_000_000) == ("1.000001", "2")
    assert show_apart(MG, 1_000_400, 1_000_000, 2) == ("1.0004 kg", "1 kg", "2 mg")
    assert show_apart(UL, 1_000_400, 1_000_000) == ("1.0004 L", "1 L")
    assert show_apart(UL, 1_000_400, 1_000_400) == ("1 L", "1 L")
    assert show_apart(UL, 1_000_400, 1_001_000) == ("1 L", "1.001 L")


@pytest.mark.parametrize(
    ("written", "told"),
    [
        *(("4 000 mL", "4 000 mL"), ("250 mL", "250 mL"), ("12345g", "12.345 kg")),
        *(("8.5fl oz", "8.5 fl oz"), ("1lb 4oz", "1 lb 4 oz"), ("15", "15")),
    ],
)
def test_what_was_written_is_tidied_and_large_numbers_of_a_small_unit_are_told_in_the_large(
    written: str, told: str
) -> None:
    assert tidy(written) == told


def test_what_is_reckoned_is_told_to_three_digits() -> None:
    amounts = [3_746_512, -3_746_512, 999_500, 1234, 999, 0]
    assert [reckoned(amount) for amount in amounts] == [
        *(3_750_000, -3_750_000, 1_000_000, 1230, 999, 0),
    ]


def test_nothing_is_an_amount_where_it_may_be_one() -> None:
    assert parse_quantity("0 mL", may_be_nothing=True) == Quantity(0, UL, "0 mL")
    assert parse_quantity("0 L 0 mL", may_be_nothing=True).amount == 0
    assert parse_quantity("0.001 mL", may_be_nothing=True).amount == 1
    with pytest.raises(RefusedError):
        parse_quantity("0.0001 mL", may_be_nothing=True)
