"""Readings of an instrument: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries import Measurement
from ledger.errors import InputError
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a reading": (
        "measure",
        {"lot": "OE-001-5", "what": "density", "reading": "0.8123", "temp": "20"},
        None,
        {
            "what": "density",
            "reading_micro": 812_300,
            "unit": "g/mL",
            "written": "0.8123",
            "temp_mdegc": 20_000,
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a reading in the wrong unit": (
        "measure",
        {"lot": "OE-001-5", "what": "brix", "reading": "65 %"},
        InputError,
        (('"65 %" is not a brix in °Bx.', "Write a number in °Bx."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


@pytest.mark.parametrize(
    ("what", "reading", "micro", "unit"),
    [
        ("brix", "49.8 °Bx", 49_800_000, "°Bx"),
        ("abv", "89.9 %", 89_900_000, "%"),
        ("density", "0.81 g/mL", 810_000, "g/mL"),
        ("ph", "5.2", 5_200_000, "pH"),
        ("temperature", "21.5 °C", 21_500_000, "°C"),
        ("weight", "367.25 g", 367_250_000, "g"),
    ],
)
def test_a_reading_is_kept_in_the_unit_of_what_was_measured_whether_it_is_said_or_not(
    what: str, reading: str, micro: int, unit: str, bench: Keeper
) -> None:
    for said in (reading, reading.split(" ")[0]):
        facts = bench.do("measure", lot="OE-001-5", what=what, reading=said).entry.facts
        assert isinstance(facts, Measurement)
        assert (facts.reading_micro, facts.unit, facts.written) == (micro, unit, said)


ALONE: Alone = (
    {"lot": "OE-001-5", "what": "abv", "reading": "89.9"},
    {
        "temp": ("20 °C", {"temp_mdegc": 20_000}),
        "instrument": ("Hydrometer 1", {"instrument": "Hydrometer 1"}),
    },
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "measure", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "measure")
