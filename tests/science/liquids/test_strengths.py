"""Strengths and temperatures as makers write them."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import InputError, LedgerError, RefusedError
from ledger.science.liquids.alcohol import Base, abv_from_mass_percent, abv_on_base
from ledger.science.liquids.strengths import dilution_asked, parse_strength, parse_temperature

WAYS = "Write % vol at 20 °C, such as 96.3%; or % w/w, g/100 mL or proof (US)."


@pytest.mark.parametrize(
    "text",
    ["96.3", "96.3%", " 96,3 % ", "96.3 % vol", "96.3% v/v", "96.3 %ABV", "96.3 vol. %", "+96.3"],
)
def test_per_cent_by_volume_is_read_however_it_is_written(text: str) -> None:
    assert parse_strength(text) == 96.3


@pytest.mark.parametrize("text", ["94 % w/w", "94% mass", "94 % by mass", "94 %m/m"])
def test_per_cent_by_mass_becomes_per_cent_by_volume(text: str) -> None:
    assert parse_strength(text) == abv_from_mass_percent(94)


@pytest.mark.parametrize("text", ["31.5696 g/100 mL", "31.5696 % w/v"])
def test_grams_in_100_ml_become_per_cent_by_volume(text: str) -> None:
    assert parse_strength(text) == pytest.approx(40, abs=1e-3)


@pytest.mark.parametrize("text", ["190 proof", "190 US proof", "190Proof"])
def test_us_proof_becomes_per_cent_by_volume_at_20_degrees(text: str) -> None:
    assert parse_strength(text) == abv_on_base(95, Base.FAHRENHEIT_60, Base.CELSIUS_20)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("strong", '"strong"'),
        ("", '""'),
        ("95°", '"95°"'),
        ("9.6.3%", '"9.6.3%"'),
        ("1e2%", '"1e2%"'),
        ("95 mL", '"95 mL"'),
        ("\u0669\u0665%", '"\u0669\u0665%"'),
        ("95\x1b[1m%", '"95?[1m%"'),
        ("9" * 41, f'"{"9" * 40}…"'),
        ("9" * 40, f'"{"9" * 40}"'),
        ("nan", '"nan"'),
    ],
)
def test_a_strength_that_cannot_be_read_is_quoted(text: str, shown: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_strength(text)
    assert str(caught.value) == f"{shown} is not a strength. {WAYS}"


@pytest.mark.parametrize("text", ["100.1%", "-1", "−1 %"])
def test_an_impossible_strength_is_refused(text: str) -> None:
    with pytest.raises(RefusedError) as caught:
        parse_strength(text)
    got = text.replace("-", "−").rstrip("% ")
    assert str(caught.value) == (
        f"A strength is from 0 to 100 % vol, and {got} % vol is outside. "
        "Read the label or the instrument again."
    )


@pytest.mark.parametrize(
    ("text", "celsius"),
    [("25", 25), ("25 °C", 25), ("25c", 25), ("77F", 25), ("-4 °F", -20), ("25 deg C", 25)],
)
def test_a_temperature_is_read_in_either_scale(text: str, celsius: float) -> None:
    assert parse_temperature(text) == pytest.approx(celsius, abs=1e-12)


@pytest.mark.parametrize("text", ["warm", "300 K", "", "°C", "2O C"])
def test_a_temperature_that_cannot_be_read_is_quoted(text: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_temperature(text)
    assert str(caught.value) == (
        f'"{text}" is not a temperature. Write it in °C or °F, such as 25C or 77F.'
    )


def test_all_that_is_wrong_with_a_dilution_is_told_at_once() -> None:
    with pytest.raises(RefusedError) as caught:
        dilution_asked("150%", "weak", "2 gal", "90C")
    assert caught.value.problems == (
        (
            "A strength is from 0 to 100 % vol, and 150 % vol is outside.",
            "Read the label or the instrument again.",
        ),
        ('"weak" is not a strength to dilute to.', WAYS),
        (
            "2 gal could be US or imperial, and the imperial is a fifth larger.",
            "Write US gal or imp gal.",
        ),
        (
            "The table of ethanol and water (OIML R 22) runs from −20 to 40 °C, "
            "and 90 °C is outside.",
            "Bring the liquid into that range, best to 20 °C, and read again.",
        ),
    )


def test_a_bare_fluid_ounce_is_not_guessed_since_no_house_is_asked() -> None:
    with pytest.raises(InputError) as caught:
        dilution_asked("96%", "50%", "16 fl oz")
    assert str(caught.value) == (
        "16 fl oz could be in US or imperial fluid ounces. Write US fl oz or imp fl oz."
    )
    assert dilution_asked("96%", "50%", "16 imp fl oz").final_ul == 454_610


TYPED = st.text("0123456789.,%-−+ °volvwmassproofCFe", max_size=16) | st.text(max_size=60)


def outcome(read: Callable[[str], float], text: str) -> float | LedgerError:
    try:
        return read(text)
    except LedgerError as error:
        return error


@pytest.mark.parametrize(
    ("read", "most"), [(parse_strength, 100), (parse_temperature, 1e10)], ids=["strength", "temp"]
)
@given(text=TYPED)
def test_any_text_is_a_number_or_an_error_in_words(
    read: Callable[[str], float], most: float, text: str
) -> None:
    found = outcome(read, text)
    if isinstance(found, LedgerError):
        assert found.what.endswith(".")
        assert found.todo.endswith(".")
    else:
        assert abs(found) <= most
