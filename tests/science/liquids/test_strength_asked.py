"""A strength in every measure, and what an amount holds, beside what the gauging manual prints."""

import pytest

from ledger.errors import InputError, LedgerError, RefusedError
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3
from ledger.science.liquids.strength_asked import US_GALLON_UL, AmountAnswer, strength_asked
from tests.science.published import rows

ROWS = rows("proof_gallons.csv")


def told(quantity: str, conditions: str = "") -> float:
    """Return the one published figure of a quantity whose conditions begin so."""
    (found,) = (
        row["value"]
        for row in ROWS
        if row["quantity"] == quantity and row["conditions"].startswith(conditions)
    )
    return float(found)


def amount(strength: str, much: str, temp: str | None = None) -> AmountAnswer:
    found = strength_asked(strength, much, temp).amount
    assert found is not None
    return found


def test_a_us_gallon_of_100_proof_at_60_f_is_a_proof_gallon() -> None:
    """27 CFR 19.1; its half gallon of ethanol at 60 °F, 1.8927 L, is 1.902 L at 20 °C.

    By R 22, whose ethanol is 1 in 9000 lighter at 60 °F than the gravity of the definition.
    """
    found = amount("100 proof", "1 US gal", "60F")
    assert found.proof_gallons == pytest.approx(told("proof gallon", "US gallon at 60"), abs=1e-6)
    assert found.pure_alcohol_ul / 1e6 == pytest.approx(1.9018, abs=5e-5)
    assert told("proof gallon", "litres of spirit") == pytest.approx(US_GALLON_UL / 1e6)
    half_l = US_GALLON_UL / 2e6
    assert half_l == pytest.approx(1.8927, abs=5e-5)
    # The gravity of ethanol in the definition, on the density of water at 60 °F (999.02 kg/m³).
    at_60_f = told("ethanol specific gravity in the definition") * 999.02
    assert half_l * at_60_f / ETHANOL_KG_PER_M3 == pytest.approx(1.9020, abs=5e-5)


@pytest.mark.parametrize(
    ("proof", "each"),
    [("190 proof", told("gallons per pound, 190 proof", "proof")),
     ("200 proof", told("gallons per pound, 200 proof"))],
)  # fmt: skip
def test_a_pound_on_the_scale_holds_the_proof_gallons_of_table_4(proof: str, each: float) -> None:
    """27 CFR 30.64: by weights in air; R 22 and the older tables are 1 in 9000 apart."""
    assert amount(proof, "1000 lb").proof_gallons == pytest.approx(1000 * each, rel=1.2e-4)


def test_the_gauging_examples_come_out_to_one_in_ten_thousand() -> None:
    """27 CFR 30.64: 81,000 lb of 190 proof, and 1,000 lb of 200 proof taken to it."""
    whole, proof = (float(row["value"]) for row in ROWS
                    if row["conditions"] == "81,000 lb of 190 proof")  # fmt: skip
    found = amount("190 proof", "81000 lb")
    assert found.proof_gallons == pytest.approx(proof, rel=1e-4)
    assert found.proof_gallons / 1.9 == pytest.approx(whole, rel=1e-4)
    strong, weaker = (amount(text, "1000 lb") for text in ("200 proof", "190 proof"))
    water_lb = 1000 * strong.proof_gallons / weaker.proof_gallons - 1000
    assert water_lb == pytest.approx(told("gauging example", "water to take"), abs=0.1)


@pytest.mark.parametrize(
    ("strength", "much", "published"),
    [
        ("80 proof", "100 US gal", told("proof gallons")),
        ("80 proof", "750mL", told("750 mL of 80 proof")),
        ("190 proof", "55 US gal", told("55 gal drum of 190 proof")),
    ],
)
def test_what_is_measured_at_60_f_is_gallons_times_proof(
    strength: str, much: str, published: float
) -> None:
    """The TTB's conversion tables, and two pages of suppliers."""
    assert amount(strength, much, "60F").proof_gallons == pytest.approx(published, rel=4e-3)


def test_a_strength_is_told_in_every_measure() -> None:
    """95 % vol at 60 °F: 92.42 % w/w; SG in air is a little below that in vacuum for spirit."""
    found = strength_asked("190 proof")
    assert found.mass_percent == pytest.approx(92.42, abs=0.01)
    assert found.ethanol_g_per_l == pytest.approx(found.mass_percent / 100 * found.density_g_per_l)
    assert 0 < found.gravity - found.gravity_in_air < 0.0004
    assert strength_asked("0%").gravity == strength_asked("0%").gravity_in_air == 1.0


def test_a_warm_litre_is_less_at_20_degrees_and_a_scale_shows_the_same() -> None:
    warm = amount("96%", "1L", "30C")
    assert warm.volume_ul == pytest.approx(989_300, abs=500)
    weighed = amount("96%", f"{warm.scale_mg / 1000:.4f}g")
    assert weighed.volume_ul == pytest.approx(warm.volume_ul, rel=1e-5)


@pytest.mark.parametrize(
    ("asked", "problem"),
    [
        (
            ("96%", None, "25C"),
            InputError(
                "A temperature counts for a volume only.",
                "Give a volume with it, such as 1L, or leave --temp away.",
            ),
        ),
        (
            ("96%", "500g", "25C"),
            InputError(
                "A temperature counts for a volume only.",
                "Give a volume with it, such as 1L, or leave --temp away.",
            ),
        ),
        (
            ("96%", "12 each", None),
            RefusedError(
                "12 each is a number of things, and spirit is measured or weighed.",
                "Say how much, such as 1 L or 500 g.",
            ),
        ),
    ],
)
def test_what_cannot_be_asked_is_refused(
    asked: tuple[str, str | None, str | None], problem: LedgerError
) -> None:
    with pytest.raises(type(problem)) as raised:
        strength_asked(*asked)
    assert raised.value.problems == problem.problems


def test_all_that_is_wrong_is_told_at_once() -> None:
    with pytest.raises(LedgerError) as raised:
        strength_asked("strong", "some", "warm")
    assert len(raised.value.problems) == 3
