"""The machine's clock: when an entry was recorded is kept for ever, so a wrong clock is told first.

Guarantees: what is recorded never goes back by more than a stated error of clocks, nor leaps years
ahead, unless somebody says why. Refuses: to guess which of two clocks is right.
"""

from collections.abc import Iterator
from datetime import UTC, timedelta

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, needs_reason

CLOCK_ERROR = timedelta(hours=1)
"""How far the clocks of two machines that write in one book may differ (common practice, no
source); the book's own guards hold to it too."""
LONG_AWAY = timedelta(days=2 * 365)
"""A book in which nobody wrote for so long is rarer than a clock that leapt (common practice, no
source)."""


def goes_on(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The book's clock goes on from the last entry, by less than years."""
    last = scene.last_recorded
    if last is None or last - CLOCK_ERROR <= scene.now <= last + LONG_AWAY:
        return
    told = f"{last:%Y-%m-%d %H:%M} UTC"
    how = (
        f"before the last entry, recorded {told}"
        if scene.now < last
        else f"years after the last entry, of {told}"
    )
    yield needs_reason(
        "clock",
        f"The clock here says {scene.now.astimezone(UTC):%Y-%m-%d %H:%M} UTC, {how}.",
        "Set the clock of this machine right; if it is right, say so with --because.",
    )


RULES: tuple[Rule, ...] = (goes_on,)
