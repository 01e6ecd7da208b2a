"""Lots with and without some inputs, and what is judged of them."""

from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Cause, Judgement, Observed, Sort


def observed(
    lot: str,
    failed: bool,
    *inputs: str,
    product: str = "Syrup",
    maker: str = "NM",
    batch: str = "",
    begun: str = "",
    **settings: str,
) -> Observed:
    return Observed(
        lot, failed, frozenset(inputs), settings, product, maker, batch=batch, begun=begun
    )


def lot(code: str) -> Cause:
    return Cause(Sort.LOT, code)


def in_turn(
    bad: str, good: str = "", *, each: int = 5, syrups: int = 1, gap: int = 3
) -> list[Observed]:
    """Return syrups of failed batches, each followed by some of clear ones, with their inputs.

    Args:
        bad: Inputs of every batch that failed, a letter each.
        good: Inputs of every batch that stayed clear.
        each: How many batches failed.
        syrups: How many syrups a batch gives.
        gap: Every so manieth batch failed.
    """
    lots = []
    for place in range(each * gap):
        is_bad = place % gap == 1
        begun = f"2026-{place // 28 + 1:02d}-{place % 28 + 1:02d}"
        for number in range(syrups):
            lots.append(
                observed(
                    f"S-{place}-{number}", is_bad, *(bad if is_bad else good),
                    batch=f"E-{place}", begun=begun,
                )
            )  # fmt: skip
    return lots


def told(bad: str, good: str = "", *, each: int = 5) -> Judgement:
    """Judge some failed batches with some inputs, and twice as many clear ones with others."""
    return judge(in_turn(bad, good, each=each))
