"""A temperature is told by its sign, and beyond what is published as a gap."""

import pytest

from ledger.errors import InputError
from ledger.service.glass.warmth import at_temp, read_warmth


def test_the_usual_and_what_is_near_it_say_nothing() -> None:
    assert [read_warmth(text) for text in (None, "25C", "41F")] == [20_000, 25_000, 5_000]
    told = [at_temp(temp) for temp in (15_000, 20_000, 25_000)]
    assert told == [([], [])] * 3
    assert [len(at_temp(temp)[1]) for temp in (14_999, 25_001)] == [1, 1]


def test_cold_and_warmth_have_their_sign() -> None:
    assert at_temp(5_000)[1] == [
        "Temperature: at 5 °C less oil stays in than at 20 °C, nobody says how much."
    ]
    assert at_temp(30_000)[1] == [
        "Temperature: at 30 °C more oil stays in than at 20 °C, nobody says how much."
    ]


def test_beyond_what_is_published_is_a_gap() -> None:
    assert [len(at_temp(temp)[0]) for temp in (-5_001, -5_000, 40_000, 40_001)] == [1, 0, 0, 1]
    for temp, told in ((90_000, "90 °C"), (-18_000, "−18 °C")):
        assert at_temp(temp) == (
            [
                (
                    f"Nothing published reaches {told}: the figures are of 20 °C.",
                    "Look at it at 20 °C.",
                )
            ],
            [],
        )


def test_what_is_no_temperature_is_refused() -> None:
    with pytest.raises(InputError) as caught:
        read_warmth("hot")
    assert caught.value.problems == (
        ('"hot" is not a temperature.', "Write it in °C or °F, such as 25C or 77F."),
    )
