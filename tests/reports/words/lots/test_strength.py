"""The strength of a lot in words, on its record and its label."""

from ledger.service.glass.serving import serving
from reports.words.lots.strength import content_facts, label_strength, oil_words, strength_words
from tests.keeper import Keeper
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
