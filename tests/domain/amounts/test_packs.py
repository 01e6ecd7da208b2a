"""Packs: a count and a size."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.packs import Pack, parse_cases, parse_pack
from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.errors import InputError, LedgerError, RefusedError


@pytest.mark.parametrize(
    ("text", "count", "amount", "written"),
    [
        ("15 x 250mL", 15, 250_000, "250mL"),
        ("15x250 mL", 15, 250_000, "250 mL"),
        ("15X250 mL", 15, 250_000, "250 mL"),
        ("15 × 8.5 fl oz", 15, 251_375, "8.5 fl oz"),
        (" 1  x  1½  L ", 1, 1_500_000, "1½ L"),
        ("1000000 x 1000 L", 1_000_000, 10**9, "1000 L"),
    ],
)
def test_a_pack_is_a_count_and_a_volume(text: str, count: int, amount: int, written: str) -> None:
    assert parse_pack(text) == Pack(count, Quantity(amount, Measure.UL, written))


def test_a_bare_fluid_ounce_is_that_of_the_house() -> None:
    assert parse_pack("15 x 8 fl oz", fluid_ounce="imperial").size.amount == 227_304


@pytest.mark.parametrize(
    ("kind", "text", "sentence"),
    [
        (
            InputError,
            "250 mL",
            '"250 mL" is not a pack, because it has no x between a count and a size. '
            "Write a count, x and a size, such as 15 x 250 mL.",
        ),
        (
            InputError,
            "1.5 x 250 mL",
            'The count of a pack must be a whole number, and "1.5" in 1.5 x 250 mL is not. '
            "Write a count, x and a size, such as 15 x 250 mL.",
        ),
        (
            InputError,
            "x 250 mL",
            'The count of a pack must be a whole number, and "" in x 250 mL is not. '
            "Write a count, x and a size, such as 15 x 250 mL.",
        ),
        (
            RefusedError,
            "0 x 250 mL",
            "The count of a pack must be at least 1, and 0 is not. "
            "Write how many there really were.",
        ),
        (
            RefusedError,
            "−3 x 250 mL",
            "The count of a pack must be at least 1, and −3 is not. "
            "Write how many there really were.",
        ),
        (
            InputError,
            "15 x 250 g",
            "The size of a container must be a volume, and 250 g is not. "
            "Write the size in mL, L or fl oz.",
        ),
        (
            InputError,
            "15 x 250",
            "250 has no unit. Write the unit too, as in 30 mL, 15 g or 200 each.",
        ),
        (
            RefusedError,
            "15 x 0 mL",
            "An amount must be more than zero, and 0 mL is not. Write how much there really was.",
        ),
        (
            InputError,
            "1000001 x 1000 L",
            "1000001 x 1000 L is more than the book holds: at most 1000000000 L. "
            "Check the count and the size.",
        ),
    ],
    ids=[
        "no x",
        "half a count",
        "no count",
        "count zero",
        "negative count",
        "size a mass",
        "size without unit",
        "size zero",
        "too much",
    ],
)
def test_what_is_no_pack_is_refused(kind: type[LedgerError], text: str, sentence: str) -> None:
    with pytest.raises(kind) as caught:
        parse_pack(text)
    assert type(caught.value) is kind
    assert str(caught.value) == sentence


def parsed(text: str) -> Pack | LedgerError:
    try:
        return parse_pack(text)
    except LedgerError as error:
        return error


@given(st.text("0123456789xX× mLg.-", max_size=16) | st.text(max_size=70))
def test_any_text_is_a_pack_or_an_error_in_words(text: str) -> None:
    pack = parsed(text)
    if isinstance(pack, LedgerError):
        assert pack.what.endswith(".")
        assert pack.todo.endswith(".")
    else:
        assert pack.count >= 1
        assert pack.size.measure is Measure.UL


@pytest.mark.parametrize("text", ["4 x 12", "4x12", " 4 × 12 ", "4X 12"])
def test_cases_are_two_counts(text: str) -> None:
    assert parse_cases(text) == (4, 12)


@pytest.mark.parametrize("text", ["", "12", "4 x 12 mL", "100001 x 1", "x 12", "-1 x 12"])
def test_what_is_no_two_counts_is_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        parse_cases(text)
    assert raised.value.problems == (
        (
            f'"{text}" is not a number of cases and a number of bottles in each.',
            "Write both with an x between, such as 4 x 12, neither above 100000.",
        ),
    )


def test_cases_and_bottles_in_each_are_a_hundred_thousand_at_most_in_plain_digits() -> None:
    assert parse_cases("100000 x 100000") == (100_000, 100_000)
    for text in ("100001 x 1", "1 x 100001", "٤ x 12"):
        with pytest.raises(InputError):
            parse_cases(text)
