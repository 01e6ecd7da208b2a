"""How often anything is named in seasons in which lots fail by chance alone.

Run it as ``python -m tests.benchmarks.false_alarms``; the share stands in DEVELOPERS.md.
"""

from ledger.science.statistics.judge import judge
from ledger.science.statistics.suspects import LEVEL
from tests.science.statistics.seasons import by_chance, season

SEASONS = 1000
"""How many seasons a full run plays."""
SHARES = (0.1, 0.3, 0.5)
"""Shares of lots that fail, season by season in turn."""


def false_alarms(seasons: int, lots: int = 24) -> int:
    """Return in how many seasons of pure noise something is named."""
    return sum(
        bool(judge(season(seed, by_chance(SHARES[seed % len(SHARES)]), lots)).named)
        for seed in range(seasons)
    )


def main() -> None:
    """Print the share of false alarms for small and large seasons."""
    for lots in (12, 24, 60):
        found = false_alarms(SEASONS, lots)
        print(
            f"{lots} lots a season: something named in {found} of {SEASONS} seasons of noise "
            f"({100 * found / SEASONS:.1f} %); the level is {float(100 * LEVEL):.0f} %."
        )


if __name__ == "__main__":
    main()
