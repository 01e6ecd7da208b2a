"""The words for a number: read in its smaller unit, or refused."""

import pytest

from ledger.domain.amounts.scaled import read_scaled
from ledger.errors import InputError


@pytest.mark.parametrize(
    ("text", "scale", "unit", "number"),
    [
        ("0.845", 1_000_000, "g/mL", 845_000),
        ("0,845 g/mL", 1_000_000, "g/mL", 845_000),
        ("20", 1000, "°C", 20_000),
        ("20C", 1000, "°C", 20_000),
        ("-4.5 °C", 1000, "°C", -4_500),
        ("−4", 1000, "°C", -4_000),
        ("+4", 1000, "°C", 4_000),
        ("96%", 1000, "%", 96_000),
        ("40 kpa", 1000, "kPa", 40_000),
        *((f"20 {micro}m", 1000, "µm", 20_000) for micro in "µμu"),
        ("1" + "0" * 15, 1, "", 10**15),
        ("-1" + "0" * 15, 1, "", -(10**15)),
        ("48.00", 100, "", 4_800),
        ("12", 1, "", 12),
    ],
)
def test_a_number_is_read_in_its_smaller_unit(
    text: str, scale: int, unit: str, number: int
) -> None:
    assert read_scaled(text, scale, unit, "number") == number


@pytest.mark.parametrize(
    ("text", "scale", "unit", "problem"),
    [
        ("", 1000, "°C", ("The temperature is missing.", "Write a number in °C.")),
        (" ", 1, "", ("The temperature is missing.", "Write a number.")),
        ("warm", 1000, "°C", ('"warm" is not a temperature in °C.', "Write a number in °C.")),
        ("68 K", 1000, "°C", ('"68 K" is not a temperature in °C.', "Write a number in °C.")),
        ("1,000.5", 1, "", ('"1,000.5" is not a temperature.', "Write a number.")),
        ("1e3", 1, "", ('"1e3" is not a temperature.', "Write a number.")),
        ("٣", 1, "", ('"٣" is not a temperature.', "Write a number.")),
        (
            "20.0001",
            1000,
            "°C",
            (
                '"20.0001" is a finer temperature than the book keeps.',
                "Round it and write it again.",
            ),
        ),
        (
            f"20.{'0' * 30}1",
            1000,
            "°C",
            (
                f'"20.{"0" * 30}1" is a finer temperature than the book keeps.',
                "Round it and write it again.",
            ),
        ),
        (
            "1.5",
            1,
            "",
            ('"1.5" is a finer temperature than the book keeps.', "Round it and write it again."),
        ),
        *(
            (
                number,
                1,
                "",
                (f'"{number}" is too large for a temperature.', "Check the number."),
            )
            for number in ("9" * 16, str(10**15 + 1), str(-(10**15) - 1))
        ),
        ("20 XXm", 1000, "µm", ('"20 XXm" is not a temperature in µm.', "Write a number in µm.")),
    ],
)
def test_what_is_no_such_number_is_refused(
    text: str, scale: int, unit: str, problem: tuple[str, str]
) -> None:
    with pytest.raises(InputError) as raised:
        read_scaled(text, scale, unit, "temperature")
    assert raised.value.problems == (problem,)


@pytest.mark.parametrize(
    ("text", "unit", "thousandths"),
    [
        ("32°F", "°C", 0),
        ("68 F", "°C", 20_000),
        ("-40 °F", "°C", -40_000),
        ("100F", "°C", 37_778),
        ("12 inHg", "kPa", 40_637),
        ("400 mbar", "kPa", 40_000),
        ("400 hPa", "kPa", 40_000),
        ("0.4 bar", "kPa", 40_000),
        ("300 mmHg", "kPa", 39_997),
        ("300 mm Hg", "kPa", 39_997),
    ],
)
def test_other_units_of_the_trade_are_turned_into_the_field_s_own(
    text: str, unit: str, thousandths: int
) -> None:
    """Source: NIST SP 811 (2008), Appendix B.8; −40 is the same on both scales."""
    assert read_scaled(text, 1000, unit, "figure") == thousandths
