"""Telling what would be lost if the book were lost today.

Guarantees: it says how much only once a copy was put back and verified.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.progress import progress
from cli.kit.tables import print_json, print_lines
from ledger.service.copies.rehearsal import Rehearsed, rehearse
from reports.json.copies.rehearsal import rehearsal_answer
from reports.kit.format import plural


def show_rehearsal(call: Call, folder: Path) -> None:
    """Rehearse the loss of the book and say what would be lost."""
    with progress("Rehearsing", quiet=call.json) as tick:
        found = rehearse(call.book(), folder, tick)
    if call.json:
        print_json(rehearsal_answer(found))
    else:
        print_lines(_lines(found, folder))


def _lines(found: Rehearsed, folder: Path) -> list[str]:
    kept, lost = plural(found.kept.entries, "entry", "entries"), found.lost
    first = (
        f"The copy {found.copy}, the newest of {found.copies}, was put back aside and verified: "
        f"{kept}, the beginning of this book."
    )
    if not lost:
        return [first, "Nothing would be lost today.", "Next: pottle seal"]
    until = f"{found.kept_until:%Y-%m-%d %H:%M} UTC" if found.kept_until else "before any"
    return [
        first,
        f"Lost today would be {plural(lost, 'entry', 'entries')}: all since {until}.",
        f"Next: pottle backup {folder}",
    ]
