"""Bottles of a syrup, for papers."""

from tests.keeper import Keeper
from tests.path import Lots, make_syrup


def pack(keeper: Keeper, lots: Lots, essence: str, **words: str) -> str:
    syrup = make_syrup(keeper, lots, essence)
    told = {"pack": "15 x 250mL", "bottles": lots.bottles, **words}
    return keeper.opens("bottle", source=syrup, **told)
