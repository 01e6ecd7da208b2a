"""The words of a line at the bench: joined, parted, and put where a command has them."""

import re

import pytest

from cli.screens.bench import words
from cli.screens.bench.slots import LASTS, Slot, Verb
from ledger.errors import InputError
from tests.kept.said import check_constants, check_said


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(words)


def test_what_is_made_of_every_word_alone_is_the_kept_one() -> None:
    check_said(words, "told", "filled_slots")


MIX = Verb(
    "mix",
    (
        Slot("temperature", re.compile(r"\d+ ?C"), "--temp"),
        Slot("times shaken", re.compile(r"\d+x"), "--shaken"),
        Slot("flag", re.compile("ring|floc"), "--flag", takes_many=True),
        Slot("volume in", re.compile(r"\d+"), "--in", "mL", is_needed=True),
        Slot("volume out", re.compile(r"\d+"), "--out", "mL", is_needed=True),
        Slot("vessel", re.compile("[a-z]+")),
    ),
    "mix 10 8",
)
TEMP, SHAKEN, FLAG, IN, OUT, VESSEL = MIX.slots


def test_each_word_fills_the_first_slot_that_it_fits_and_that_is_free() -> None:
    assert words.filled_slots("mix", MIX, ["10", "19C", "ring", "8", "jar", "floc", "6x"]) == [
        *((IN, "10"), (TEMP, "19C"), (FLAG, "ring"), (OUT, "8")),
        *((VESSEL, "jar"), (FLAG, "floc"), (SHAKEN, "6x")),
    ]


@pytest.mark.parametrize(
    ("said", "what", "todo"),
    [
        ("10", "The volume out is missing.", "Write it as: mix 10 8"),
        ("jar", "The volume in and the volume out are missing.", "Write it as: mix 10 8"),
        *(
            (
                said,
                f'"{last}" has no place in a line of mix.',
                "It takes temperature, times shaken, flag, volume in, volume out, vessel; such as: "
                "mix 10 8",
            )
            for said, last in (("10 8 6", "6"), ("10 8 jar pot", "pot"), ("1.5", "1.5"))
        ),
    ],
)
def test_a_word_without_a_place_and_one_that_is_missing_are_told(
    said: str, what: str, todo: str
) -> None:
    with pytest.raises(InputError) as refused:
        words.filled_slots("mix", MIX, said.split())
    assert refused.value.problems == ((what, todo),)


@pytest.mark.parametrize(
    ("slot", "value", "option"),
    [
        (VESSEL, "jar", ()),
        (Slot("length", re.compile(".*"), LASTS, "h"), "48", ()),
        *((TEMP, said, ("--temp", "19")) for said in ("19", "19C", "19 c", "19 °C")),
        (SHAKEN, "6x", ("--shaken", "6")),
        (IN, "10", ("--in", "10mL")),
        (IN, "16x30", ("--in", "16x30mL")),
        (IN, "16 × 1,5", ("--in", "16 × 1,5mL")),
        (IN, "10 g", ("--in", "10 g")),
        (FLAG, "6x", ("--flag", "6x")),
    ],
)
def test_a_word_is_given_to_the_option_of_its_slot(
    slot: Slot, value: str, option: tuple[str, ...]
) -> None:
    assert words.told(slot, value) == option


@pytest.mark.parametrize(
    ("said", "parts"),
    [
        ("15", ("15", [])),
        ("because it was", ("", ["--because", "it was"])),
        ("15 --temp 19", ("15", ["--temp", "19"])),
        ("--a 'b c' because d -- e", ("", ["--a", "b c", "--because", "d -- e"])),
        ("15 because", ("15 because", [])),
    ],
)
def test_options_and_a_reason_are_parted_from_a_line(
    said: str, parts: tuple[str, list[str]]
) -> None:
    assert words.parted(said) == parts


def test_a_quotation_that_is_not_closed_is_refused() -> None:
    assert words.split("a 'b c' \"d\"") == ["a", "b c", "d"]
    with pytest.raises(InputError) as refused:
        words.split("a 'b")
    assert refused.value.problems == (
        ("A quotation mark in the line has no other to close it.", "Close it, or leave it out."),
    )


@pytest.mark.parametrize(
    ("said", "joined"),
    [
        ("", []),
        ("g x", ["g", "x"]),
        ("oil 15 mL 19 °C", ["oil", "15 mL", "19 °C"]),
        ("-5 C −18 °C", ["-5 C", "−18 °C"]),
        ("oil all m", ["oil", "all", "m"]),
        ("4 X 30 mL 2 × 5", ["4x30 mL", "2x5"]),
        ("a x 30", ["a", "x", "30"]),
        ("6x 30", ["6x30"]),
        ("6x spirit", ["6x", "spirit"]),
        ("ax 30", ["ax", "30"]),
        ("0.5 fl oz 2 h", ["0.5 fl oz", "2 h"]),
        ("oil 15 2 KG", ["oil", "15", "2 KG"]),
    ],
)
def test_a_unit_stays_with_its_number(said: str, joined: list[str]) -> None:
    assert words.joined(said.split()) == joined
