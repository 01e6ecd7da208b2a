"""All that the rules may look at when an entry is made.

Guarantees: gathered before any rule runs, so rules are pure.
"""

from datetime import datetime

from msgspec import Struct, field

from ledger.domain.entries import Draft, Entry
from ledger.domain.lots.control import Control
from ledger.domain.lots.state import LotState
from ledger.domain.masters.substances import NO_CONCERNS, Concerns


class Scene(Struct, frozen=True):
    """What the book knows around one draft."""

    now: datetime
    """The book's clock, UTC."""
    last_recorded: datetime | None = None
    """When the last entry was recorded, UTC; None in a new book."""
    has_house: bool = True
    """Whether the book has its house yet."""
    people: frozenset[str] = frozenset()
    """Initials in the book."""
    materials: frozenset[str] = frozenset()
    """Codes of materials the draft names that are in the book."""
    formulas: frozenset[tuple[str, int]] = frozenset()
    """Versions in the book of the formula the draft is about."""
    near_names: tuple[str, ...] = ()
    """Names in the book that are nearly the one the draft brings."""
    brings_name: bool = False
    """Whether it names a party that no entry in force has."""
    lot: LotState | None = None
    """The lot the draft is about, unless it opens it."""
    sources: tuple[LotState, ...] = ()
    """The lots it draws on."""
    made_from_lot: frozenset[str] = frozenset()
    """Codes of those sources that were themselves made from the lot."""
    corrected: Entry | None = None
    """The entry it replaces or strikes."""
    corrected_is_in_force: bool = True
    """Whether that entry is still in force."""
    uses_of_opened: int = 0
    """Entries in force that stand on the lot which the struck entry opened."""
    checked: Entry | None = None
    """The entry that the draft says was checked."""
    checked_is_in_force: bool = True
    """Whether that entry is still in force."""
    concerns: Concerns = NO_CONCERNS
    """What is to be said of the constituents of the draft's material, or of goods that come in."""
    control: Control = field(default_factory=Control)
    """What the lot is held to: its formula, its inputs, its vessel, its strength."""

    def source(self, code: str | None) -> LotState | None:
        """Return the source with that code, or None."""
        return next((state for state in self.sources if state.code == code), None)

    def so_far(self, draft: Draft) -> tuple[Entry, ...]:
        """Return the lot's entries that come before the draft, by when they happened.

        What is corrected keeps its place among entries of the same second; what is new comes last.
        """
        if self.lot is None:
            return ()
        at, place = draft.happened.at, self.corrected.stands_for if self.corrected else None
        return tuple(
            entry
            for entry in self.lot.entries
            if entry.draft.happened.at < at
            or (entry.draft.happened.at == at and (place is None or entry.stands_for < place))
        )
