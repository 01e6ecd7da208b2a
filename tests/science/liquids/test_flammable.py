"""The class of a flammable liquid follows from its flash point and its strength."""

import pytest

from ledger.science.liquids.alcohol import mass_percent_from_abv
from ledger.science.liquids.flammable import (
    CATEGORY_2_BELOW_C,
    CLASS_UP_TO_C,
    NOT_CARRIED_ABV,
    flammable,
)
from ledger.science.liquids.flash import OVER_C, flash_point_c
from ledger.science.roots import solve
from tests.science.published import rows

TOLD = {row["quantity"]: row for row in rows("flash.csv")}


def test_the_bounds_are_those_of_clp_and_of_carriage() -> None:
    """Regulation (EC) 1272/2008, Annex I, 2.6; ADR, special provision 144; 49 CFR 173.150(e)(2)."""
    assert TOLD["CLP category 2"]["conditions"].startswith(f"flash point < {CATEGORY_2_BELOW_C:g}")
    assert float(TOLD["CLP class limit"]["value"]) == CLASS_UP_TO_C
    assert float(TOLD["aqueous alcohol not subject to ADR"]["value"]) == NOT_CARRIED_ABV
    assert float(TOLD["aqueous alcohol, US"]["value"]) == NOT_CARRIED_ABV


@pytest.mark.parametrize(
    ("abv", "category", "statement", "signal", "group", "is_carried"),
    [
        (96.0, 2, "H225", "Danger", "II", True),
        (60.0, 2, "H225", "Danger", "II", True),
        (45.0, 3, "H226", "Warning", "III", True),
        (24.1, 3, "H226", "Warning", "III", True),
        (24.0, 3, "H226", "Warning", "III", False),
        (8.0, 3, "H226", "Warning", "III", False),
    ],
)
def test_a_strength_has_its_class(
    abv: float, category: int, statement: str, signal: str, group: str, is_carried: bool
) -> None:
    """Category 2 below 23 °C at the lower end, which spirit of some 55 % vol reaches."""
    found = flammable(mass_percent_from_abv(abv) / 100, abv)
    assert found is not None
    assert (found.category, found.statement, found.signal) == (category, statement, signal)
    assert (found.packing_group, found.is_carried) == (group, is_carried)
    assert found.limited_inner_l == 5
    # 49 CFR 173.150(b): 1 L for packing group II, 5 L for III.
    ii, iii = TOLD["limited quantity, US class 3"]["value"].split(" / ")
    assert found.limited_us_l == float({"II": ii, "III": iii}[group])


def test_a_drink_of_2_percent_has_no_class_by_its_flash_point() -> None:
    """Above 60 °C, and water alone."""
    assert flammable(mass_percent_from_abv(2) / 100, 2) is None
    assert flammable(0, 0) is None


def test_a_liquid_has_its_number_its_flash_point_and_the_bounds_of_its_class() -> None:
    """UN 1197 from memory; a class is told 2.1 °C below the flash point that was reckoned."""
    found = flammable(0.4, 47.0)
    assert found is not None
    assert found.un_number == "UN 1197, EXTRACTS, LIQUID, for flavouring"
    assert found.flash_c == flash_point_c(0.4)
    second, third = _fraction(CATEGORY_2_BELOW_C + OVER_C), _fraction(CLASS_UP_TO_C + OVER_C)
    classes = [of and of.category for of in (flammable(second * by, 50) for by in (1.0001, 0.9999))]
    assert classes == [2, 3]
    assert flammable(third * 1.0001, 5) is not None
    assert flammable(third * 0.9999, 5) is None


def _fraction(flash_c: float) -> float:
    """Return the mass fraction of ethanol of a flash point."""
    return solve(lambda share: -(flash_point_c(share) or 0.0), -flash_c, 1e-4, 1.0)
