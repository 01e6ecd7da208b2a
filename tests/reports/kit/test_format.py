"""Values as people read them."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import When
from ledger.domain.entries.choices import Precision
from reports.kit import format as module
from reports.kit.format import celsius, clock, closed, day, duration, money, percent, scaled, tidy
from tests.kept.said import check_constants, check_said

LATE = datetime(2026, 3, 2, 23, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("value", "scale", "unit", "text"),
    [
        (9400, 1000, "NTU", "9.4 NTU"),
        (96000, 1000, "% vol", "96 % vol"),
        (845_000, 1_000_000, "g/mL", "0.845 g/mL"),
        (0, 1000, "kPa", "0 kPa"),
        (-18_000, 1000, "", "-18"),
        (1, 1_000_000, "", "0.000001"),
        (1_000_000, 1, "", "1000000"),
    ],
)
def test_a_smaller_unit_reads_as_the_one_people_write(
    value: int, scale: int, unit: str, text: str
) -> None:
    assert scaled(value, scale, unit) == text


@given(st.integers(-(10**15), 10**15), st.sampled_from([1, 100, 1000, 10_000, 1_000_000]))
def test_nothing_is_rounded_on_the_way(value: int, scale: int) -> None:
    from decimal import Decimal

    assert Decimal(scaled(value, scale)) * scale == value


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("250mL", "250 mL"),
        ("250 mL", "250 mL"),
        ("1.5kg", "1.5 kg"),
        ("20µL", "20 µL"),
        ("1lb 4oz", "1 lb 4 oz"),
        ("100", "100"),
        ("1 1/2 US fl oz", "1 1/2 US fl oz"),
    ],
)
def test_an_amount_has_a_space_between_figure_and_unit(written: str, text: str) -> None:
    assert tidy(written) == text
    assert tidy(text) == text


@pytest.mark.parametrize(
    ("minutes", "text"),
    [(0, "0 min"), (59, "59 min"), (60, "1 h"), (1440, "1 d"), (2881, "2 d 1 min")],
)
def test_a_length_of_time_is_told_in_its_largest_units(minutes: int, text: str) -> None:
    assert duration(minutes) == text


def test_a_temperature_below_zero_has_a_minus_sign() -> None:
    assert (celsius(-18_500), celsius(4000)) == ("−18.5 °C", "4 °C")


def test_money_has_two_decimals_and_its_currency() -> None:
    assert (money(4800, "EUR"), money(5, "EUR")) == ("48.00 EUR", "0.05 EUR")


@pytest.mark.parametrize(
    ("part", "whole", "text"),
    [(448, 450, "99.6 %"), (1, 3, "33.3 %"), (0, 5, "0.0 %"), (6, 5, "120.0 %")],
)
def test_a_share_has_one_decimal(part: int, whole: int, text: str) -> None:
    assert percent(part, whole) == text


@pytest.mark.parametrize(
    ("precision", "text"),
    [
        (Precision.EXACT, "2026-03-03 00:30"),
        (Precision.ABOUT, "~2026-03-03 00:30"),
        (Precision.DAY, "2026-03-03"),
    ],
)
def test_a_moment_is_told_on_its_own_clock_as_exactly_as_it_is_known(
    precision: Precision, text: str
) -> None:
    when = When(LATE, 60, precision)
    assert (clock(when), day(when)) == (text, "2026-03-03")
    assert clock(When(LATE - timedelta(hours=1), 120, precision)) == text


@pytest.mark.parametrize("text", ["It is so.", "Is it?", "Stop!", "and so on…"])
def test_a_sentence_is_not_closed_twice(text: str) -> None:
    assert closed(text) == text
    assert closed("Words") == "Words."


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
