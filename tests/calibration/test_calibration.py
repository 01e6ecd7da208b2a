"""The calibration that is kept, against the published statements it was made of."""

import pytest

from ledger.science.haze.strength import least_strength
from ledger.service.account.oils import calibration, oil_called
from tests.calibration.kept import KEPT, Reckoned, reckoned, text_of
from tests.calibration.statements import NEAR_EQUAL, closings, rows


@pytest.fixture(scope="module")
def found() -> Reckoned:
    return reckoned(rows())


def test_the_calibration_that_is_kept_is_what_the_statements_give(found: Reckoned) -> None:
    assert KEPT.read_text(encoding="utf-8") == text_of(found)


def test_nine_of_ten_statements_lie_in_the_band_that_all_other_oils_give(found: Reckoned) -> None:
    """Statements: tests/reference/solubility_in_spirit.csv, each row with its source.

    Most oils of it have no published composition; for them nothing is foretold. The band is wider
    than the 20 points that were hoped for: the statements do not carry less.
    """
    assert (len(found.judged), found.statements) == (29, 67)
    assert found.inside >= 0.9 * len(found.judged)
    assert found.inside < len(found.judged)
    assert 20 < found.width < 22.5


@pytest.mark.parametrize(("substance", "measured"), [("limonene", 79.6), ("citral", 52.7)])
def test_the_strength_at_which_a_gap_closes_lies_in_the_band(
    substance: str, measured: float
) -> None:
    """J Chem Eng Data 1995, 40, 578 (abstract): 0.73 and 0.45 of ethanol by mass, at 293 K."""
    known = oil_called(substance)
    assert known
    band = least_strength(known.oil, NEAR_EQUAL, calibration())
    assert band
    assert band.low < measured < band.high
    assert [round(item.stated) for item in closings() if item.label == substance] == [
        pytest.approx(measured, abs=0.7)
    ]


def test_what_was_measured_says_that_vodka_cannot_and_strong_spirit_can() -> None:
    """1 part of orange oil in 15 of spirit: the house's own example."""
    known = oil_called("orange")
    assert known
    band = least_strength(known.oil, 1 / 16, calibration())
    assert band
    assert 40 < band.low < 80 < band.high < 96


@pytest.mark.parametrize(
    ("oil", "stated", "volumes"),
    [("clove", 70, 2), ("wintergreen", 70, 7), ("cassia", 70, 3)],
)
def test_without_calibration_aromatic_oils_would_ask_too_much(
    oil: str, stated: float, volumes: float
) -> None:
    """Slope and constant for ethanol of the pharmaceutical literature are 0.93 and 0.40 (memory).

    Clove and cassia as in solubility_in_spirit.csv; wintergreen from memory.
    """
    known = oil_called(oil)
    assert known
    band = least_strength(known.oil, 1 / (1 + volumes), calibration())
    assert band
    assert band.low < stated < band.high
