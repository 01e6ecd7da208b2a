"""A look that physics does not allow is remarked on; one that may well be is not."""

import pytest

from tests.keeper import Keeper
from tests.path import receive_all


def syrup(keeper: Keeper, dose: str) -> str:
    lots = receive_all(keeper)
    essence = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    keeper.do("add", lot=essence, source=lots.oil, amount="30mL")
    keeper.do("add", lot=essence, source=lots.spirit, amount="450mL")
    code = keeper.opens("start", product="Orange syrup", kind="syrup", target="4L", pour="1:7")
    keeper.do("add", lot=code, source=lots.sugar, amount="2.4kg")
    keeper.do("add", lot=code, source=lots.water, amount="2.4L")
    keeper.do("add", lot=code, source=essence, amount=dose)
    return code


def test_a_clear_drink_of_much_orange_oil_is_doubted(sqlite_keeper: Keeper) -> None:
    code = syrup(sqlite_keeper, "120mL")
    done = sqlite_keeper.do("look", lot=code, grade="clear", of="as-poured", dilution="1:7")
    assert done.remarks == (
        (
            "197 mg/L of orange oil looked clear as poured, where the drink dissolves 11 % of it "
            "at the best.",
            "Was it the syrup that was looked at, or has the oil risen as a ring? Look again in "
            "the glass; if the entry is wrong, correct it.",
        ),
    )


@pytest.mark.parametrize(
    "look",
    [
        {"grade": "milky", "of": "as-poured"},
        {"grade": "clear", "of": "as-poured", "flags": "ring"},
        {"grade": "clear", "of": "neat"},
    ],
)
def test_what_may_be_is_not_doubted(sqlite_keeper: Keeper, look: dict[str, str]) -> None:
    assert not sqlite_keeper.do("look", lot=syrup(sqlite_keeper, "120mL"), **look).remarks


def test_a_drink_with_a_trace_of_oil_may_be_clear(sqlite_keeper: Keeper) -> None:
    code = syrup(sqlite_keeper, "10mL")
    assert not sqlite_keeper.do("look", lot=code, grade="clear", of="as-poured").remarks
