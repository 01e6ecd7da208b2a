"""The decimal sign is the one that a table's own cells show."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.tables.numerals import decimal_sign, plain_number
from ledger.errors import InputError


@given(st.integers(0, 10**9), st.integers(1, 99))
def test_a_number_of_either_custom_comes_out_with_a_point(whole: int, hundredths: int) -> None:
    plain = f"{whole}.{hundredths:02d}"
    german = f"{whole:,}".replace(",", ".") + f",{hundredths:02d}"
    assert plain_number(german, ",") == plain
    assert plain_number(f"{whole:,}.{hundredths:02d}", ".") == plain
    assert decimal_sign([german, "1.250"]) == ","


@pytest.mark.parametrize(
    ("cells", "sign"),
    [
        (["30,5", "1.250", "7"], ","),
        (["30.5", "1,250"], "."),
        (["30,5", "30.5"], None),
        (["1.250", "7", "abc", ""], None),
        (["1.250.000"], ","),
    ],
)
def test_the_cells_show_their_sign_or_do_not(cells: list[str], sign: str | None) -> None:
    assert decimal_sign(cells) == sign


def test_a_number_with_two_readings_is_not_read_without_a_sign() -> None:
    with pytest.raises(InputError) as caught:
        plain_number("1,250 mL", None)
    assert caught.value.problems == (
        (
            '"1,250" could be 1.250 or 1250.',
            "Say which sign parts the decimals, with --decimal , or --decimal .",
        ),
    )
    assert plain_number("12 x 250 mL", None) == "12 x 250 mL"
    assert plain_number("1 250,5 mL", None) == "1250.5 mL"


@pytest.mark.parametrize(
    ("cell", "sign", "read"),
    [
        ("1,250.5", ",", "1,250.5"),
        ("1.250.5", ".", "1.250.5"),
        ("1 250", ".", "1250"),
        ("1'250,5 g", ",", "1250.5 g"),
        ("−1.250", ",", "−1250"),
        ("+5,0", ",", "+5.0"),
        ("5", None, "5"),
        (" 5 mL ", None, "5 mL"),
        ("0,5", None, "0.5"),
        ("1.250.000,5", None, "1250000.5"),
        ("1.2.3", None, "1.2.3"),
        ("about 5", ".", "about 5"),
        ("", None, ""),
    ],
)
def test_a_cell_is_read_by_its_sign_or_stays_as_it_is(
    cell: str, sign: str | None, read: str
) -> None:
    assert plain_number(cell, sign) == read


def test_thousands_stand_in_threes_whatever_parts_them() -> None:
    assert decimal_sign(["1.25"]) == "."
    assert decimal_sign(["12.3456"]) == "."
    assert decimal_sign(["1234.567"]) == "."
    assert decimal_sign(["123.456"]) is None
    assert decimal_sign(["1’234.567 mL"]) is None
    assert decimal_sign(["1’234.5 mL"]) == "."
