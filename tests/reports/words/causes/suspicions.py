"""Suspicions of lots that failed, made of what they had in them."""

from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import Observed
from ledger.service.causes.failed import Sorted
from ledger.service.causes.suspects import FailedLot, Suspicion

NONE = Sorted((), (), (), {}, False, (), (), 0, 0)


def lots(failed: str, clear: str, *, bad: int = 5, good: int = 7) -> list[Observed]:
    """Return failed and clear lots with some inputs each, named by their letters."""
    return [Observed(f"F{n}", True, frozenset(failed), {}, "Syrup", "AB") for n in range(bad)] + [
        Observed(f"C{n}", False, frozenset(clear), {}, "Syrup", "AB") for n in range(good)
    ]


def suspicion(observed: list[Observed]) -> Suspicion:
    judgement = judge(observed)
    failed = tuple(FailedLot(code, "Syrup", "looked hazy") for code in judgement.failed)
    return Suspicion(judgement, failed, {}, "Syrup", NONE)
