"""How runs were made, in classes: a lot counts by its weakest link."""

from fractions import Fraction
from typing import Any

from msgspec.structs import replace

from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind, RestFor
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.process import figures_of
from ledger.service.causes.settings import Making, settings_of
from tests.domain.builders import ml

NOTHING = figures_of((), {})
FORMULA = Formula(
    "orange",
    1,
    "Orange essence",
    ProductKind.ESSENCE,
    ml(450),
    steps=(FormulaStep("rest", rest_for=RestFor.MACERATE, minutes_min=24 * 60),),
)


def made(code: str, *hours: int, maker: str = "AB", **told: object) -> Making:
    figures = tuple(replace(NOTHING, contact_h=Fraction(h)) for h in hours)
    cells = {"essence_makers": (), "batches": (), "bases": (), "formulas": (FORMULA,), **told}
    return Making(code=code, figures=figures, maker=maker, **cells)  # type: ignore[arg-type]


def test_the_shortest_contact_counts_and_the_limit_of_the_formula_divides() -> None:
    levels = settings_of([made("S-1", 48, 20), made("S-2", 24), made("S-3")])
    contact = {code: level["contact time"] for code, level in levels.items()}
    assert contact == {"S-1": "under 24 h", "S-2": "24 h or more", "S-3": "not recorded"}


def test_a_setting_that_nobody_recorded_is_left_out_and_the_maker_is_one() -> None:
    levels = settings_of([made("S-1"), made("S-2", maker="CD")])
    assert levels["S-2"]["made by"] == "CD"
    assert "contact time" not in levels["S-1"]


def test_who_made_the_essence_counts_where_any_is_known() -> None:
    levels = settings_of([made("S-1", essence_makers=("AB", "CD")), made("S-2")])
    assert levels["S-1"]["essence made by"] == "AB, CD"
    assert levels["S-2"]["essence made by"] == "nobody"
    assert "essence made by" not in settings_of([made("S-2")])["S-2"]


STEPS = (
    FormulaStep("rest", rest_for=RestFor.MACERATE, minutes_min=24 * 60),
    FormulaStep("rest", rest_for=RestFor.CHILL, minutes_min=12 * 60, temp_max_mdegc=4_000),
    FormulaStep("filter", passes_min=2, pore_max_nm=20_000, temp_max_mdegc=8_000),
)
"""A macerating rest, a chill and a filter, each with its limits."""
KEPT = {
    "contact_h": 24, "passes": 2, "pore_um": 20, "chill_h": 12, "chill_degc": 4, "filter_degc": 8,
    "spirit_abv": 90, "carbonate_g_per_ml": 1,
}  # fmt: skip
MISSED = {
    "contact_h": 23, "passes": 1, "pore_um": 21, "chill_h": 11, "chill_degc": 5, "filter_degc": 9,
    "spirit_abv": 80, "carbonate_g_per_ml": 2,
}  # fmt: skip


def figures(told: dict[str, int]) -> dict[str, Any]:
    return {name: Fraction(value) for name, value in told.items()}


def test_each_setting_is_divided_by_its_own_step_s_limit_just_kept_and_just_missed() -> None:
    formula = replace(FORMULA, steps=STEPS)
    levels = settings_of(
        Making(code, (replace(NOTHING, **figures(told)),), (formula,), "AB", (), (), ())
        for code, told in (("kept", KEPT), ("missed", MISSED))
    )
    assert levels["kept"] == {
        "made by": "AB",
        "contact time": "24 h or more",
        "passes": "2 or more",
        "finest pore size": "up to 20 µm",
        "chill time": "12 h or more",
        "chill temperature": "up to 4 °C",
        "filter temperature": "up to 8 °C",
        "strength of spirit": "90 % vol",
        "carbonate": "1 g/mL oil",
    }
    assert levels["missed"] == {
        "made by": "AB",
        "contact time": "under 24 h",
        "passes": "under 2",
        "finest pore size": "above 20 µm",
        "chill time": "under 12 h",
        "chill temperature": "above 4 °C",
        "filter temperature": "above 8 °C",
        "strength of spirit": "80 % vol",
        "carbonate": "2 g/mL oil",
    }
