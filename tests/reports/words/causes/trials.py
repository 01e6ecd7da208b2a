"""Trials compared, made of their jars."""

from ledger.science.statistics.trials import Jar, factors_of, front, spread
from ledger.service.causes.compare import Comparison
from ledger.service.evidence.seal import Seal

SEAL = Seal("Fennimore & Sloe", 12, "0a")


def comparison(*jars: Jar) -> Comparison:
    return Comparison(
        "rests", None, jars, tuple(factors_of(jars, {})), ("at once", "7 d"), front(jars),
        spread(jars), (), SEAL,
    )  # fmt: skip
