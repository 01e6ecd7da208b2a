"""Calibrating on statements, by statements that were made up from a known slope."""

import pytest
from scipy import optimize, stats

from ledger.science.haze.calibration import Judged, Statement, calibrate, judge, student
from ledger.science.haze.strength import Calibration, Share, doubt, middle, oil_of
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


def test_what_is_off_by_turns_gives_the_line_of_least_squares() -> None:
    """Scipy's least squares on the same statements are the oracle of slope and constant."""
    told = made_up(off=3)

    def errors(line: tuple[float, float]) -> list[float]:
        law = Calibration(*line, 0.0)
        return [item.least - middle(item.oil, item.oil_share, law) for item in told]

    oracle = optimize.least_squares(errors, (0.93, 0.40), xtol=1e-12, ftol=1e-12).x
    found = calibrate(told)
    assert (found.slope, found.constant) == pytest.approx(tuple(oracle), rel=1e-5)


def test_the_band_is_the_error_of_what_was_left_out_by_students_quantile() -> None:
    """By the definition: the root of the mean square of errors in doubts, 8 groups less two."""
    told = made_up(off=3)
    squares = 0.0
    for item in told:
        others = calibrate([other for other in told if other is not item])
        off = item.least - middle(item.oil, item.oil_share, others)
        squares += (off / doubt(item.oil, item.oil_share, others)) ** 2
    assert calibrate(told).reach == pytest.approx(
        (squares / 8) ** 0.5 * stats.t.ppf(0.975, 6), rel=1e-6
    )


def test_a_statement_lies_inside_up_to_the_end_of_its_band() -> None:
    (first, *_) = made_up()
    ends = [Judged(first, first.stated + off, 4.0).is_inside for off in (-4.5, -4.0, 4.0, 4.5)]
    assert ends == [False, True, True, False]
    judged = judge(made_up(off=3))
    assert [item.statement.label for item in judged] == sorted(NAMES)
    for item in judged:
        others = calibrate([one for one in made_up(off=3) if one.group != item.statement.group])
        of = (item.statement.oil, item.statement.oil_share, others)
        assert (item.likely, item.half) == pytest.approx((middle(*of), others.reach * doubt(*of)))
