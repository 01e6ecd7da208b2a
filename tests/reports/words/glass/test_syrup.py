"""A simple syrup in words, in every measure of its strength."""

from ledger.science.liquids.syrup_asked import syrup_asked
from reports.words.glass import syrup as module
from reports.words.glass.syrup import BASIS, syrup_lines
from tests.kept.said import check_constants, check_said


def test_parts_say_by_what_and_how_much_they_make() -> None:
    assert syrup_lines(syrup_asked("3:2", "weight")) == (
        "3 parts of sugar to 2 of water by weight make syrup of 60 °Bx.",
        "1 kg of water makes 1.943 L of it.",
        "At 20 °C a litre holds 772 g of sugar and weighs 1286.6 g; its specific gravity is "
        "1.2889 (20/20 °C).",
        BASIS,
    )


def test_parts_are_told_to_six_places_and_one_part_is_a_part() -> None:
    (first, *_) = syrup_lines(syrup_asked("1:1.123456", "weight"))
    assert first.startswith("1 part of sugar to 1.123456 of water by weight make syrup of ")
    (first, *_) = syrup_lines(syrup_asked("1.123456:1", "weight"))
    assert first.startswith("1.123456 parts of sugar to 1 of water by weight make syrup of ")


def test_a_syrup_near_saturation_is_warned_of() -> None:
    lines = syrup_lines(syrup_asked("69 Bx", kept_at="4C"))
    assert any("crystal" in line for line in lines)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
