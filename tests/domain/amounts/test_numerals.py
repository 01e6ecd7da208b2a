"""Numbers as makers write them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.numerals import LONGEST_TEXT, fold_text, read_number, spread_fractions
from ledger.errors import InputError

UNREADABLE = (
    '"{0}" in {0} mL is not a number the book can read. '
    "Write a number such as 30, 0.5, 1/2 or 1 1/2, with nothing between thousands."
)


@pytest.mark.parametrize(
    ("number", "value"),
    [
        ("30", Fraction(30)),
        ("007", Fraction(7)),
        ("0.5", Fraction(1, 2)),
        (".5", Fraction(1, 2)),
        ("0,5", Fraction(1, 2)),
        ("0,125", Fraction(1, 8)),
        ("1,25", Fraction(5, 4)),
        ("1,2500", Fraction(5, 4)),
        ("1000,125", Fraction(8001, 8)),
        ("1.000", Fraction(1)),
        ("1/2", Fraction(1, 2)),
        ("1 1/2", Fraction(3, 2)),
        ("3/2", Fraction(3, 2)),
    ],
)
def test_a_number_is_read_exactly(number: str, value: Fraction) -> None:
    assert read_number(number, piece=number) == value


@pytest.mark.parametrize(
    ("text", "spread"),
    [
        ("1½ L", "1 1/2 L"),
        ("1 ½ L", "1 1/2 L"),
        ("¾ L", "3/4 L"),
        ("⅞ L", "7/8 L"),
        ("⅒ L", "1/10 L"),
        ("1 / 2 L", "1/2 L"),
        ("1\u20442 L", "1/2 L"),
    ],
)
def test_fraction_signs_are_spread(text: str, spread: str) -> None:
    assert spread_fractions(text) == spread


@pytest.mark.parametrize("number", ["1,000", "12,500", "999,999"])
def test_a_comma_that_may_part_thousands_is_refused_with_the_choice(number: str) -> None:
    whole, decimal = number.replace(",", ""), number.replace(",", ".")
    with pytest.raises(InputError) as caught:
        read_number(number, piece=f"{number} mL")
    assert str(caught.value) == (
        f"{number} mL could be {whole} mL or {decimal} mL, "
        f"because a comma can part thousands or decimals. Write {whole} mL or {decimal} mL."
    )


@pytest.mark.parametrize(
    "number", ["1,000,000", "1 000", "1,000.5", "1.2.3", "5.", "1/0", "1/2/3", "0.5 1/2", "1 2 1/2"]
)
def test_what_is_no_number_is_refused(number: str) -> None:
    with pytest.raises(InputError) as caught:
        read_number(number, piece=f"{number} mL")
    assert str(caught.value) == UNREADABLE.format(number)


def test_white_space_is_folded() -> None:
    assert fold_text(" 1\t lb\n\u00a04\u2009oz ") == "1 lb 4 oz"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "No amount was given. Write a number and a unit, such as 30 mL."),
        (" \n", "No amount was given. Write a number and a unit, such as 30 mL."),
        (
            "9" * (LONGEST_TEXT + 1),
            "An amount has at most 60 characters, and this text has 61. "
            "Write the amount alone, such as 30 mL, and put the rest in a note.",
        ),
        (
            "5\x07 mL",
            "The amount holds a character that cannot be seen (U+0007). "
            "Type the amount again by hand.",
        ),
        (
            "5 mL\u200b",
            "The amount holds a character that cannot be seen (U+200B). "
            "Type the amount again by hand.",
        ),
        (
            "5 \ud800L",
            "The amount holds a character that cannot be seen (U+D800). "
            "Type the amount again by hand.",
        ),
        (
            "٣ mL",
            'The amount holds "٣" (U+0663), which is not one of the digits 0 to 9. '
            "Write the amount with the digits 0 to 9.",
        ),
        (
            "5² mL",
            'The amount holds "²" (U+00B2), which is not one of the digits 0 to 9. '
            "Write the amount with the digits 0 to 9.",
        ),
    ],
    ids=["empty", "blank", "long", "bell", "zero width", "surrogate", "Arabic", "superscript"],
)
def test_text_that_cannot_be_an_amount_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        fold_text(text)
    assert str(caught.value) == sentence


@given(whole=st.integers(0, 999), over=st.integers(0, 999), under=st.integers(1, 999))
def test_a_mixed_number_is_its_whole_and_its_part(whole: int, over: int, under: int) -> None:
    number = f"{whole} {over}/{under}"
    assert read_number(number, piece=number) == whole + Fraction(over, under)
