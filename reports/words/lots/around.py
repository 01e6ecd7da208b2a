"""What stood around a lot, in words: vessels, instruments.

Guarantees: what the book does not know is said to be unknown.
"""

from collections.abc import Iterator

from ledger.domain.entries import Clean, Equipment
from ledger.service.lots.around import Around, Seen
from reports.kit.format import clock, initials

Row = tuple[str, str]


def around_rows(around: Around) -> tuple[Row, ...]:
    """Return what stood around a lot, label and words."""
    return (
        *_rows("Vessel", around.vessels, "no cleaning of it before is in the book"),
        *_rows("Instrument", around.instruments, "no check of it before is in the book"),
    )


def _rows(label: str, seen: tuple[Seen, ...], unknown: str) -> Iterator[Row]:
    for item in seen:
        yield label, f"{item.name}: {_last(item) or unknown}"


def _last(item: Seen) -> str | None:
    if item.last is None:
        return None
    when = f"{clock(item.last.draft.happened)} by {initials(item.last)} (entry {item.last.seq})"
    facts = item.last.facts
    if isinstance(facts, Clean):
        after = f" after {facts.last_held}" if facts.last_held else ""
        return f"cleaned{after} {when}, {facts.how}"
    words = facts.words if isinstance(facts, Equipment) else ""
    return f"last seen to {when}, {words}"
