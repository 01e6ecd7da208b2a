"""How runs were made, in classes: a lot counts by its weakest link."""

from fractions import Fraction

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
