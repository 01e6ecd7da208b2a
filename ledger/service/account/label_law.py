"""What laws have a label say, that comes with pottle: allergens, and statements for additives.

Guarantees: every row stands in a file beside its source. Refuses: to be complete; local law
decides.
"""

from functools import cache

from msgspec import Struct

from ledger.domain.masters.allergens import Allergen, Place
from ledger.service.account.shipped import read_shipped


@cache
def allergens() -> tuple[Allergen, ...]:
    """Return the lists of allergens."""
    return tuple(
        Allergen(row["name"], tuple(row["words"]), tuple(map(Place, row["places"])))
        for row in read_shipped("allergens.toml")["allergen"]
    )


class Statement(Struct, frozen=True):
    """A statement that an additive calls for on a label."""

    numbers: tuple[str, ...]
    """E numbers of the additives."""
    places: tuple[Place, ...]
    """Where it counts."""
    words: str
    """What a label says, with `{name}` for the additive."""
    without_sugar: str | None = None
    """What it says instead where there is no sugar; None: the same."""


@cache
def statements() -> tuple[Statement, ...]:
    """Return the statements that additives call for."""
    return tuple(
        Statement(
            tuple(row["numbers"]),
            tuple(map(Place, row["places"])),
            row["words"],
            row.get("without-sugar"),
        )
        for row in read_shipped("statements.toml")["statement"]
    )
