"""Money in a table is the book's, or is told apart."""

import json
from pathlib import Path

import pytest

from ledger.domain.tables.currency_marks import CODES, MARKS, mark_in, parted, plain_money
from ledger.errors import InputError

LIST_ONE = Path(__file__).parents[2] / "reference" / "iso4217.json"
"""ISO 4217, list one: every code with its minor unit; the file names its source."""


def test_codes_and_what_marks_mean_are_those_of_the_standard() -> None:
    assert set(json.loads(LIST_ONE.read_text("utf-8"))["minor_units"]) == CODES
    assert {code for codes in MARKS.values() for code in codes.split()} <= CODES


@pytest.mark.parametrize(
    ("cell", "sign", "currency", "figure"),
    [
        ("kr 120,50", ",", "DKK", "120.50"),
        ("1.120,50 kr.", ",", "SEK", "1120.50"),
        ("CHF 1'250.50", ".", "CHF", "1250.50"),
        ("Fr. 12.50", ".", "CHF", "12.50"),
        ("120,50 zł", ",", "PLN", "120.50"),
        ("R$ 1.120,50", ",", "BRL", "1120.50"),
        ("$12.50", ".", "CAD", "12.50"),
        ("120,-", ",", "SEK", "120"),
        ("€ -5,00", ",", "EUR", "-5.00"),
        ("12 per lot", ".", "EUR", "12 per lot"),
        ("free", ".", "EUR", "free"),
    ],
)
def test_a_mark_of_the_book_s_currency_is_left_off(
    cell: str, sign: str, currency: str, figure: str
) -> None:
    assert plain_money(cell, sign, currency) == figure


@pytest.mark.parametrize(
    ("cell", "head", "mark", "others"),
    [
        ("€ 5,00", "Pris", "€", "EUR"),
        ("5,00", "Price (USD)", "USD", "USD"),
        ("$5,00", "Pris kr", "$", "USD or CAD or AUD or NZD or MXN or SGD or HKD"),
    ],
)
def test_money_of_another_currency_is_never_read_as_the_book_s(
    cell: str, head: str, mark: str, others: str
) -> None:
    with pytest.raises(InputError) as caught:
        plain_money(cell, ",", "DKK", head)
    assert caught.value.problems == (
        (
            f'"{cell}" is money in {others} by its mark, "{mark}", and this book counts in DKK.',
            "Write what it came to in DKK.",
        ),
    )


def test_a_mark_of_the_heading_counts_where_the_cell_has_none_and_the_cell_s_before_it() -> None:
    assert plain_money("5,00", ",", "DKK", "Pris (kr.)") == "5.00"
    assert plain_money("5,00 kr", ",", "DKK", "Price USD") == "5.00"
    assert plain_money("5,00", ",", "DKK") == "5.00"
    assert plain_money("5,00 mL", ",", "DKK", "Pris kr") == "5,00 mL"


@pytest.mark.parametrize(
    ("head", "mark"),
    [
        *(("Preis in EUR", "EUR"), ("EURO", "EURO"), ("price [usd]", ""), ("Kr/kg", "Kr")),
        *(("All in lei", "lei"), ("", ""), ("USD or EUR", "USD")),
    ],
)
def test_a_heading_names_its_money_by_a_mark_or_a_code_in_capitals(head: str, mark: str) -> None:
    assert mark_in(head) == mark


@pytest.mark.parametrize(
    ("cell", "figure", "mark"),
    [
        *(("€5", "5", "€"), ("5€", "5", "€"), ("-5,50 €", "-5,50", "€"), ("5", "5", "")),
        *(("CHF 120.–", "120", "CHF"), ("kr. 120,--", "120", "kr"), ("free", "free", "")),
        *(("dollars 5", "dollars 5", ""), ("5 euros.", "5", "euros")),
    ],
)
def test_a_figure_and_its_mark_are_told_apart_on_either_side(
    cell: str, figure: str, mark: str
) -> None:
    assert parted(cell) == (figure, mark)
