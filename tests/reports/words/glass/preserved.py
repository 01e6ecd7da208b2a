"""A cordial with a preservative in it, for tests of its card."""

from tests.keeper import Keeper


def preserved(keeper: Keeper, **told: str) -> str:
    """Return a litre of water with 1.4 g of a preservative in it."""
    keeper.do("material", code="keeps", name="Sodium benzoate", kind="preservative", **told)
    water = keeper.opens("receive", material="water", amount="5L")
    salt = keeper.opens("receive", material="keeps", amount="50g")
    code = keeper.opens("start", product="Cordial", kind="syrup", target="1L")
    keeper.do("add", lot=code, source=water, amount="1000mL")
    keeper.do("add", lot=code, source=salt, amount="1.4g")
    return code
