"""Lines wrapped at words: nothing wider than the screen, a number beside its unit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from cli.kit import wrapping as module
from cli.kit.wrapping import pieces, wrapped
from ledger.domain.amounts.units import UNITS
from ledger.domain.entries.choices import LimitUnit
from tests.kept.said import check_constants


def test_what_a_list_carries_over_stands_under_its_own_line() -> None:
    line = "10. Pretend Hotel: 01 555 0104, day and night"
    assert wrapped(line, 32) == ["10. Pretend Hotel: 01 555 0104,", "    day and night"]
    assert wrapped("  OS-005-G: cloudy, dusty", 16) == ["  OS-005-G:", "    cloudy,", "    dusty"]
    assert wrapped("A plain sentence goes on at the left.", 20)[1] == "goes on at the left."


def test_a_number_stays_beside_its_unit_while_there_is_room() -> None:
    words = "Orange syrup, 250 mL, at 20 °C, 48.00 EUR"
    assert wrapped(words, 18) == ["Orange syrup,", "250 mL, at 20 °C,", "48.00 EUR"]
    assert list(pieces("it cost 48.00 EUR.")) == ["it", " cost", " 48.00 EUR."]
    assert wrapped(words, 7)[2:5] == ["250 mL,", "at", "20 °C,"]
    assert wrapped("250000 mL", 6) == ["250000", "mL"]
    assert wrapped("room 12 left of it", 9) == ["room 12", "left of", "it"]


@given(st.text(alphabet="ab1. 漢mL", max_size=60), st.integers(8, 30))
def test_no_wrapped_line_is_wider_than_the_screen_and_no_letter_is_lost(
    line: str, width: int
) -> None:
    lines = wrapped(line, width, "  ")
    if cell_len(line) > width:
        assert max(map(cell_len, lines)) <= width
    assert "".join("".join(lines).split()) == "".join(line.split())


@pytest.mark.parametrize("unit", [*LimitUnit, *(unit.name for unit in UNITS)])
def test_whatever_an_amount_or_a_limit_is_told_in_stays_beside_its_number(unit: str) -> None:
    assert list(pieces(f"at most 5 {unit}: so")) == ["at", " most", f" 5 {unit}:", " so"]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
