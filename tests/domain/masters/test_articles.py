"""An article is one size of one product, however its size is written."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import House
from ledger.domain.entries.house import Article
from ledger.domain.masters.articles import (
    article_called,
    article_of,
    articles_with,
    product_and_size,
    read_article,
)
from ledger.errors import InputError

SMALL = Article("Orange syrup", "09521234543213", parse_quantity("250 mL"))
BULK = Article("Orange syrup", "00000095212341")
HOUSE = House("Quayside", "EUR", articles=(SMALL, BULK))


@pytest.mark.parametrize(
    ("name", "product", "size"),
    [
        ("Orange syrup, 250 mL", "Orange syrup", 250_000),
        ("Orange syrup 0.25L", "Orange syrup", 250_000),
        ("Syrup 3:2 12 fl oz", "Syrup 3:2", 354_882),
        ("Essence No 5, 100mL", "Essence No 5", 100_000),
        ("Essence No 5", "Essence No 5", None),
        ("250 mL", "250 mL", None),
        ("Essence XX, 100mL", "Essence XX", 100_000),
        ("Sugar 500 g", "Sugar 500 g", None),
    ],
)
def test_a_size_stands_at_the_end_of_a_name(name: str, product: str, size: int | None) -> None:
    called, found = article_called(name, "US")
    assert (called, found and found.amount) == (product, size)


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("Orange syrup, 250 mL", SMALL),
        ("ORANGE SYRUP, 0.25 L", SMALL),
        ("Orange syrup", BULK),
        ("Orange syrup, 500 mL", None),
        ("Lime syrup, 250 mL", None),
    ],
)
def test_an_article_is_found_by_what_its_lots_are_called(name: str, found: Article | None) -> None:
    assert article_of(HOUSE, name) == found
    assert article_of(House("Quayside", "EUR"), name) is None
    assert article_of(None, name) is None


@given(st.integers(1, 5000), st.sampled_from(["Orange syrup", "No 5", "Cola 2:1"]))
def test_what_an_article_is_called_is_read_as_that_article(size: int, product: str) -> None:
    quantity = parse_quantity(f"{size}mL")
    called, found = article_called(product_and_size(product, quantity), "US")
    assert (called, found and found.amount) == (product, quantity.amount)


def test_a_number_told_anew_takes_the_place_of_the_old_one_and_an_article_can_go() -> None:
    told = read_article("orange syrup 0.25 L = 9521234543206", "US")
    now = articles_with((SMALL, BULK), [told])
    assert [article.gtin for article in now] == ["09521234543206", "00000095212341"]
    assert articles_with(now, [read_article("Orange syrup=", "US")]) == now[:1]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (
            "Orange syrup",
            (
                "Orange syrup does not say of what it is the number.",
                'Write what it is, =, and its number, as in "Orange syrup, 250 mL=9521234543213".',
            ),
        ),
        *(
            (
                f"{nothing}=9521234543213",
                (
                    f"{nothing}=9521234543213 does not say of what it is the number.",
                    "Write what it is, =, and its number, as in "
                    '"Orange syrup, 250 mL=9521234543213".',
                ),
            )
            for nothing in ("", " ")
        ),
        (
            "Orange syrup=9521234543214",
            ("9521234543214 ends in 4, and its check digit is 3.", "Copy the number again."),
        ),
    ],
)
def test_what_is_no_article_with_its_number_is_told(text: str, problem: tuple[str, str]) -> None:
    with pytest.raises(InputError) as raised:
        read_article(text, "US")
    assert raised.value.problems == (problem,)


def test_only_what_is_there_can_be_taken_away() -> None:
    with pytest.raises(InputError) as raised:
        articles_with((SMALL,), [read_article("Lime syrup, 250mL=", "US")])
    assert raised.value.problems == (
        (
            "Lime syrup, 250 mL has no number that could be taken away.",
            "pottle house lists the articles that have one.",
        ),
    )
