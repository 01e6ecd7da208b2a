"""A strength in words: every measure, with its temperature."""

from ledger.science.liquids.strength_asked import strength_asked
from reports.words.glass import strength as module
from reports.words.glass.strength import BASIS, DEFER, strength_lines
from tests.kept.said import check_constants, check_said


def test_a_strength_and_an_amount_of_it_are_told_in_lines() -> None:
    assert strength_lines(strength_asked("96%", "1L", "30C")) == (
        "96 % vol at 20 °C is 93.84 % w/w, 757.7 g of ethanol in a litre, and 192 US proof at "
        "60 °F.",
        "A litre weighs 807.4 g at 20 °C; specific gravity 20/20 °C: 0.8089 in vacuum, 0.8086 in "
        "air.",
        "1 L measured at 30 °C: 0.9892 L at 20 °C, 0.7977 kg on a scale in air.",
        "In it 0.9497 L of pure alcohol at 20 °C; US proof gallons: 0.4993.",
        BASIS,
        DEFER,
    )


def test_without_an_amount_the_strength_alone_is_told() -> None:
    lines = strength_lines(strength_asked("40%"))
    assert lines[2:] == (BASIS, DEFER)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
