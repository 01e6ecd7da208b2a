"""A damaged book in words, for commands other than `verify` that meet it.

Guarantees: the entry is named, with what keeps the book from harm. Refuses: to say what is damaged
in it, which `verify` tells.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:  # verifying loads what no other command needs
    from ledger.service.evidence.verify import Audit

WHAT_TO_DO = (
    "Keep this book as it is and run pottle verify; pottle restore brings back the last copy."
)


def damaged_entry(number: int) -> tuple[str, str]:
    """Return what is said of an entry that cannot be read, and what to do."""
    return f"Entry {number} is damaged and is left out here.", WHAT_TO_DO


def damage_of(found: "Audit") -> list[tuple[str, str]]:
    """Return what is said of a book that does not verify: what first does not fit, and what to do.

    Args:
        found: What verifying found.
    """
    if not found.faults:
        return []
    numbers = dict.fromkeys(fault.seq for fault in found.faults if fault.seq)
    if numbers:
        return [(f"Entry {next(iter(numbers))} is damaged.", WHAT_TO_DO)]
    return [(f"The book is damaged: {found.faults[0].what}", WHAT_TO_DO)]
