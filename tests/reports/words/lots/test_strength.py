"""The strength of a lot in words, on its record and its label."""

from types import SimpleNamespace
from typing import Any

import pytest

from ledger.service.glass.card import ServingCard
from ledger.service.glass.serving import serving
from reports.words.lots import strength as module
from reports.words.lots.strength import content_facts, label_strength, oil_words, strength_words
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_a_record_has_two_decimals_and_a_label_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    card = serving(keeper.book, lots.packed)
    assert strength_words(card) == "0.69 % vol at 20 °C"
    assert label_strength(card) == "alc. 0.7 % vol"
    assert oil_words(card) == ("Sweet orange oil 0.421 g/L, 0.0498 % by volume",)


def test_the_contents_are_told_from_the_lot_to_the_glass(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert content_facts(serving(keeper.book, lots.packed)) == (
        ("Strength", "0.69 % vol at 20 °C"),
        ("Sugar", "611 g/L, 49.8 % by weight"),
        ("Oil", "Sweet orange oil 0.421 g/L, 0.0498 % by volume"),
        ("In a glass", "0.09 % vol, 18.3 g sugar, 240 mL (1:7)"),
    )


def of(abv: float, *, missing: bool = False) -> ServingCard:
    """Return a card of which only the strength is told."""
    contents = SimpleNamespace(abv=abv)
    made: Any = SimpleNamespace(contents=contents, missing=("x",) if missing else ())
    card: Any = SimpleNamespace(made=made)
    return card  # type: ignore[no-any-return]


@pytest.mark.parametrize(
    ("abv", "told"),
    [(0.0499, None), (0.05, "0.1"), (0.14, "0.1"), (0.25, "0.3"), (9.95, "10.0"), (89.73, "89.7")],
)
def test_a_label_rounds_half_up_to_a_tenth_and_says_nothing_below_a_twentieth(
    abv: float, told: str | None
) -> None:
    assert label_strength(of(abv)) == (told and f"alc. {told} % vol")
    assert label_strength(of(abv, missing=True)) is None
    assert label_strength(of(abv), "{abv} %") == (told and f"{told} %")


def test_a_strength_of_which_a_fact_is_missing_is_at_least_so_much() -> None:
    assert strength_words(of(12.3)) == "12.3 % vol at 20 °C"
    assert strength_words(of(12.3, missing=True)) == (
        "at least 12.3 % vol at 20 °C, a fact is missing"
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
