"""Readings lie between what anything can show."""

from typing import Any

import pytest

from ledger.domain.entries import Material, Measurement, Receipt
from ledger.domain.entries.choices import Measured
from ledger.domain.rules.always import on_hand as amounts
from tests.domain.builders import draft, make, scene
from tests.domain.rules.cases import NO, Case, find, said


def reading(what: Measured, micro: int, unit: str) -> Any:
    return draft(Measurement(what, micro, unit, "as written"))


READINGS = [
    Case("no sugar at all", reading(Measured.BRIX, 0, "°Bx")),
    Case("nothing but spirit", reading(Measured.ABV, 100_000_000, "%")),
    Case("a sugar reading", reading(Measured.BRIX, 60_100_000, "°Bx")),
    Case("a deep freeze", reading(Measured.TEMPERATURE, -18_000_000, "°C")),
    Case("a density", reading(Measured.DENSITY, 845_000, "g/mL")),
    Case("a density with a receipt", draft(make(Receipt, density_mg_per_l=845_000), "O-1")),
    *(
        Case(
            f"no {what} is {shown}",
            reading(what, micro, unit),
            scene(),
            said(
                NO,
                "reading",
                f"{shown} {unit} cannot be a reading of {what}: it lies between {limits} {unit}.",
                f"Read it again and give it in {unit}.",
            ),
        )
        for what, micro, unit, shown, limits in (
            (Measured.BRIX, 100_100_000, "°Bx", "100.1", "0 and 100"),
            (Measured.ABV, -1, "%", "-0.000001", "0 and 100"),
            (Measured.DENSITY, 845_000_000, "g/mL", "845", "0.01 and 23"),
            (Measured.DENSITY, 0, "g/mL", "0", "0.01 and 23"),
            (Measured.PH, 14_500_000, "pH", "14.5", "0 and 14"),
            (Measured.TEMPERATURE, -273_200_000, "°C", "-273.2", "-273.15 and 1000"),
            (Measured.WEIGHT, -1_000_000, "g", "-1", "0 and 1000000000"),
        )
    ),
    *(
        Case(
            f"no density of a {facts.KIND} is 845",
            draft(facts, None),
            scene(),
            said(
                NO,
                "reading",
                "845 g/mL cannot be a reading of density: it lies between 0.01 and 23 g/mL.",
                "Read it again and give it in g/mL.",
            ),
        )
        for facts in (
            make(Receipt, density_mg_per_l=845_000_000),
            make(Material, density_mg_per_l=845_000_000),
        )
    ),
]


@pytest.mark.parametrize("case", READINGS, ids=str)
def test_labels_and_readings_are_possible_or_told(case: Case) -> None:
    assert find(amounts.RULES, case) == list(case.found)


def test_every_thing_that_is_measured_has_its_limits() -> None:
    assert set(amounts.LIMITS) == set(Measured)
