"""Turbidity against loss: scales from nought to a round figure, half as far is half as much."""

from fractions import Fraction

import pytest

from ledger.science.statistics.trials import Jar
from reports.words.causes import scatter as module
from reports.words.causes.scatter import scatter_of
from tests.kept.said import check_constants, check_said


def jar(lot: str, ntu: str | None, percent: str | None, *, is_control: bool = False) -> Jar:
    figures = (Fraction(text) if text else None for text in (ntu, percent))
    return Jar(lot, {}, is_control, (), *figures)


def test_a_batch_stands_by_what_it_lost_and_how_turbid_it_was() -> None:
    """20 and 10 % were lost, 8 and 2 NTU read: scales end at 20 % and 8 NTU."""
    scatter = scatter_of([jar("A-1", "8", "80"), jar("A-2", "2", "90", is_control=True)])
    assert scatter is not None
    one, control = scatter.points
    assert (one.along, one.up, control.along, control.up) == pytest.approx((1, 1, 0.5, 0.25))
    assert (one.is_control, control.is_control) == (False, True)
    assert [text for _, text in scatter.along] == ["0", "5", "10", "15", "20"]


def test_a_batch_without_both_figures_is_in_no_scatter() -> None:
    assert scatter_of([jar("A-1", "8", "80"), jar("A-2", None, "90")]) is None


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
