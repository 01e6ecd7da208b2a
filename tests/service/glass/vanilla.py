"""A syrup with an extract in it, and the problems of an error, for tests of sums."""

from ledger.errors import LedgerError
from tests.keeper import Keeper


def problems(error: LedgerError) -> tuple[tuple[str, str], ...]:
    return error.problems


def with_vanilla(keeper: Keeper) -> str:
    """Return a litre of syrup with 100 mL of an extract of 35 % vol in it."""
    keeper.do("material", code="vanilla", name="Vanilla essence", kind="other")
    extract = keeper.opens("receive", material="vanilla", amount="500mL", abv="35")
    water = keeper.opens("receive", material="water", amount="5L")
    code = keeper.opens("start", product="Vanilla", kind="syrup", target="1L")
    keeper.do("add", lot=code, source=water, amount="900mL")
    keeper.do("add", lot=code, source=extract, amount="100mL")
    return code
