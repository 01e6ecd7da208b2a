"""Lots with and without some inputs, and what is judged of them."""

from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Cause, Judgement, Observed, Sort


def observed(
    lot: str, failed: bool, *inputs: str, product: str = "Syrup", maker: str = "NM", **settings: str
) -> Observed:
    return Observed(lot, failed, frozenset(inputs), settings, product, maker)


def lot(code: str, *, is_absent: bool = False) -> Cause:
    return Cause(Sort.LOT, code, is_absent=is_absent)


def split(failed: tuple[str, ...], clear: tuple[str, ...], each: int = 5) -> Judgement:
    """Judge some failed lots with some inputs, and as many clear ones with others."""
    return judge(
        [observed(f"F{n}", True, *failed, "W") for n in range(each)]
        + [observed(f"C{n}", False, *clear, "W") for n in range(each)]
    )
