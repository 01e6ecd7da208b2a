"""A forecast in words."""

from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from msgspec.structs import replace

from ledger.domain.entries.forecasts import Carried
from ledger.science.haze.drops import Range
from ledger.science.haze.strength import Band
from ledger.service.glass.haze import Haze
from ledger.service.glass.scores import Score
from reports.words.glass import foretell as module
from reports.words.glass.foretell import (
    bands,
    carried_words,
    head,
    looks,
    notes,
    rests,
    score_words,
)
from tests.kept.said import check_constants, check_said

HAZE = Haze(
    "OE-001-5", "Orange essence", ("orange",), 1 / 16, 80.0, False, 7, ("A.",), (("B.", "C."),),
    Band(74.41, 84.8, 95.1), Carried.EDGE, Range(0, 4000), Range(0.24, 40), Range(3.9, 86),
    Range(18.2, 104), Range(0.53, 2.4),
)  # fmt: skip


def test_a_forecast_is_told_line_by_line() -> None:
    assert head(HAZE) == [
        "Orange essence (OE-001-5): orange oil.",
        "1 part of oil in 15 of spirit of 80.0 % vol.",
        "Clear by 74.4 to 95.1 % vol, most likely 84.8.",
        "Spirit of 80.0 % vol stands on the edge: try a jar first, or take it stronger.",
    ]
    assert bands(HAZE) == [
        ("neat", "0 to 4000", "bright to milky"),
        ("in syrup", "0.24 to 40", "bright to milky"),
        ("in the glass", "3.9 to 86", "hazy to milky"),
    ]
    assert notes(HAZE) == [
        "The same drops show 18 to 100 times more in the glass than in the syrup: a look in heavy "
        "syrup proves little.",
        "A glass of 1:7 stays bright up to 0.53 mL of it in a litre of syrup, at the best 2.4 mL.",
    ]
    assert rests(HAZE) == ["Rests on: A.", "Missing: B. C."]


def test_a_syrup_an_unknown_oil_and_what_was_narrowed_are_said() -> None:
    syrup = replace(HAZE, is_syrup=True, kinds=())
    assert head(syrup) == [
        "Orange essence (OE-001-5): no oil of a kind that is known.",
        "It is a syrup: whether spirit carries the oil is asked of its essence.",
    ]
    narrowed: Any = SimpleNamespace(readings=9, chance=Fraction(9, 11))
    assert notes(replace(syrup, narrowed=narrowed))[1:] == [
        "A glass of 1:7 stays bright up to 0.53 mL of its essence in a litre of syrup, at the best "
        "2.4 mL.",
        "Narrowed by 9 readings of this house: the next lies inside 9 times of 11.",
    ]


def test_what_cannot_be_foretold_is_said() -> None:
    bare = Haze("BE-001-5", "Bay essence", (), 0.05, 96.0, False, 7, (), ())
    assert head(bare)[-1] == "By which strength it is clear cannot be foretold."
    assert (bands(bare), notes(bare)) == ([], [])
    assert carried_words(Carried.NO, 40) == (
        "Spirit of 40.0 % vol cannot carry it: the oil parts. Take it stronger."
    )
    assert looks(Range(20, 25)) == "cloudy"


def test_a_score_is_told_of_all_and_by_kind() -> None:
    assert score_words((Score(None, 17, 20), Score("orange", 17, 20))) == [
        "All: inside 17 of 20.",
        "Orange: inside 17 of 20.",
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_a_band_that_only_touches_a_grade_is_not_of_it() -> None:
    assert [looks(Range(*ends)) for ends in ((3.0, 6.0), (2.9, 6.0), (3.0, 6.1))] == [
        "hazy",
        "clear to hazy",
        "hazy to opalescent",
    ]
