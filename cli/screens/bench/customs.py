"""The customs of the bench: what it says by itself, and when.

Guarantees: each has its one place.
"""

from datetime import timedelta

from cli.screens.bench.parts import Act
from cli.screens.bench.slots import VERBS
from ledger.service.desk.times import read_minutes

SLIP = "A slip at the bench."
"""The reason of an entry that is undone."""
TWICE = "The same went in again."
"""The reason of an addition that is told to be a second one."""
ENDED = "The rest that went on is ended, since the next act came."
"""What is remarked on where an act ends a rest."""
NOT_ENDED = (
    "The rest that goes on is not ended by this line, so nothing of it was recorded.",
    "End it by a line of its own: end because WHY",
)
"""What is said where a rest may not end as the act that comes would have it."""
MOST_OFFERED = 6
"""How many steps are offered at most, so that all is read at arm's length."""
ACTS = frozenset(verb.command for verb in VERBS.values())
"""The commands that are acts, of which the same twice is asked about."""


def lasts_for(act: Act) -> timedelta | None:
    """Return how long a rest is to last by its line, or None."""
    if not act.lasts:
        return None
    text = act.lasts.replace(" ", "")
    return timedelta(minutes=read_minutes(text) or 0)
