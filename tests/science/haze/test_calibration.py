"""Calibrating on statements, by statements that were made up from a known slope."""

import pytest
from scipy import stats

from ledger.science.haze.calibration import Statement, calibrate, judge, student
from ledger.science.haze.strength import Calibration, Share, middle, oil_of
from ledger.service.account.shipped import solubilities

KNOWN = solubilities()
TRUE = Calibration(0.6, 2.4, 0.0)
NAMES = ("limonene", "linalool", "citral", "eugenol", "carvone", "menthol", "myrcene", "p-cymene")


def made_up(off: float = 0.0, copies: int = 1) -> list[Statement]:
    """Return statements that a known calibration gives, by turns off upward and downward."""
    found = []
    for number, name in enumerate(NAMES):
        oil = oil_of([Share(KNOWN[name], 1, 1)], KNOWN)
        least = middle(oil, 0.2, TRUE) + (off if number % 2 else -off)
        found += [Statement(name, name, oil, 0.2, least, least)] * (copies if number == 0 else 1)
    return found


def test_what_follows_one_law_gives_that_law_and_needs_no_band() -> None:
    found = calibrate(made_up())
    assert (found.slope, found.constant) == pytest.approx((0.6, 2.4))
    assert found.reach == pytest.approx(0, abs=1e-9)


def test_a_group_counts_once_however_often_it_is_told() -> None:
    once, often = calibrate(made_up(off=3)), calibrate(made_up(off=3, copies=9))
    assert (once.slope, once.constant, once.reach) == pytest.approx(
        (often.slope, often.constant, often.reach)
    )


def test_an_oil_is_judged_without_its_own_statement() -> None:
    far = made_up(off=1)
    odd = far[0]
    far[0] = Statement("odd", odd.group, odd.oil, 0.2, odd.stated + 40, odd.least + 40)
    judged = {item.statement.label: item for item in judge(far)}
    assert not judged["odd"].is_inside
    assert judged["odd"].likely == pytest.approx(odd.stated, abs=5)


def test_what_is_not_fitted_is_judged_and_moves_nothing() -> None:
    told = made_up(off=2)
    odd = Statement("odd", "odd", told[0].oil, 0.2, 10.0, 10.0, is_fitted=False)
    assert calibrate([*told, odd]) == calibrate(told)
    assert not next(item for item in judge([*told, odd]) if item.statement is odd).is_inside


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 7, 12, 13])
def test_quantiles_are_those_of_student(freedom: int) -> None:
    """Against scipy."""
    assert student(0.95, freedom) == pytest.approx(stats.t.ppf(0.975, freedom), rel=1e-6)
