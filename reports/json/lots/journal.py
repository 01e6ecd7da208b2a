"""Entries of the journal, for machines."""

from typing import Any

from ledger.service.lots.journal import Said
from reports.kit.format import clock
from reports.words.entries.sentence import sentence, title


def said_plain(said: Said) -> dict[str, Any]:
    """Return one entry of the journal."""
    entry = said.entry
    return {
        "entry": entry.seq,
        "kind": entry.kind,
        "lot": entry.draft.lot,
        "happened": clock(entry.draft.happened, is_repeated=said.is_repeated),
        "recorded_at": entry.recorded_at.isoformat(),
        "by": entry.draft.by,
        "title": title(entry),
        "says": sentence(entry),
        "reason": entry.draft.reason,
        "corrects": entry.draft.corrects,
        "corrected_by": said.corrected_by,
        "late": entry.is_late,
    }
