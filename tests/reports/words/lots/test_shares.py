"""Shares in words: like in like by per cent, else the one in the other."""

from math import isclose
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure
from ledger.service.lots.shares import Share
from reports.json.kit.answer import Amount
from reports.json.lots.trace import ShareTold, share_told
from reports.words.lots import shares as module
from reports.words.lots.shares import concentration, share_words
from tests.kept.said import check_constants, check_said

UL, MG, EACH = Measure.UL, Measure.MG, Measure.UEACH
UNITS = {
    "%": "percent",
    "g/L": "g/L",
    "mL/kg": "mL/kg",
    "mL each": "mL/count",
    "g each": "g/count",
    "each": "count/count",
    "to 1 L": "count/L",
    "to 1 kg": "count/kg",
}
PINT: Any = pint.UnitRegistry()
SMALLEST = {UL: "uL", MG: "mg", EACH: "1e-6 count"}


@given(
    measure=st.sampled_from(Measure),
    of=st.sampled_from(Measure),
    amount=st.integers(1, 10**9),
    whole=st.integers(1, 10**9),
)
def test_a_concentration_is_what_pint_makes_of_it(
    measure: Measure, of: Measure, amount: int, whole: int
) -> None:
    number, unit = concentration(Share(float(amount), measure, whole, of, is_all=True))
    ratio = amount * PINT(SMALLEST[measure]) / (whole * PINT(SMALLEST[of]))
    if unit == "each":
        expected = float(ratio.to("dimensionless").magnitude)
    else:
        expected = float(ratio.to(UNITS[unit]).magnitude)
    assert isclose(float(number), expected, rel_tol=6e-3)


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (Share(30_000.0, UL, 450_000, UL, is_all=True), "6.67 %"),
        (Share(9.0, UL, 10**9, UL, is_all=True), "0.0000009 %"),
        (Share(15_000.0, MG, 450_000, UL, is_all=True), "33.3 g/L"),
        (Share(2e6, EACH, 1_000_000, UL, is_all=True), "2 to 1 L"),
        (Share(450_000.0, UL, 450_000, UL, is_all=False), "at least 100 %"),
        (Share(0.0, UL, 450_000, UL, is_all=False), "not measured"),
        (Share(0.0, UL, 450_000, UL, is_all=True), "0 %"),
        (Share(5.0, UL, 0, UL, is_all=False), "not measured"),
    ],
)
def test_a_share_is_told_in_three_figures(share: Share, words: str) -> None:
    assert share_words(share) == words


def test_a_share_for_machines_is_in_amounts_and_one_that_nobody_measured_has_no_figure() -> None:
    assert share_told(Share(3_749.6, UL, 15_000_000, EACH, is_all=True)) == ShareTold(
        carried=Amount("3.75", "mL"),
        whole=Amount("15", "each"),
        concentration="0.25",
        concentration_unit="mL each",
        all_measured=True,
    )
    assert share_told(Share(0.0, UL, 450_000, UL, is_all=False)).concentration is None


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
