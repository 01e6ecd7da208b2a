"""Trials compared, made of their jars."""

from fractions import Fraction

from ledger.science.statistics.trials import Jar, factors_of, front, spread
from ledger.service.causes.compare import Comparison
from ledger.service.evidence.seal import Seal

SEAL = Seal("Fennimore & Sloe", 12, "0a")


def comparison(*jars: Jar) -> Comparison:
    return Comparison(
        "rests", None, jars, tuple(factors_of(jars, {})), ("at once", "7 d"), front(jars),
        spread(jars), (), (), (), None, SEAL,
    )  # fmt: skip


def jar(lot: str, grade: int, ntu: str, yield_pct: int, **factors: str) -> Jar:
    looks = (("at once", min(grade + 1, 5)), ("7 d", grade))
    return Jar(lot, factors, not factors, looks, Fraction(ntu), Fraction(yield_pct))


CROSSED = comparison(
    jar("A-1", 2, "3.4", 90, rest="24h"),
    jar("A-2", 1, "2.8", 88, rest="24h"),
    jar("A-3", 0, "0.9", 86, rest="96h"),
    jar("A-4", 0, "0.7", 87, rest="96h"),
    jar("A-5", 1, "1.8", 89),
)


CONFOUNDED = comparison(
    jar("B-1", 2, "3", 90, rest="24h", dose="2g"), jar("B-2", 0, "1", 90, rest="48h", dose="6g")
)
