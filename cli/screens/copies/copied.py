"""Showing what copies were made, with progress on long books.

Guarantees: a copy is told of only once it has been verified.
"""

from collections.abc import Iterator, Sequence
from pathlib import Path

from cli.kit.call import Call
from cli.kit.progress import progress
from cli.kit.tables import print_json, print_lines
from ledger.service.copies.backup import backup
from ledger.service.copies.copied import Copied
from ledger.service.copies.export import export
from ledger.service.copies.import_ import import_book
from ledger.service.copies.restore import restore
from ledger.service.copies.upgrade import Restated, upgrade
from reports.json.copies.copied import copied_answer
from reports.json.copies.upgrade import upgrade_answer
from reports.kit.format import plural


def write_backup(call: Call, folder: Path) -> None:
    """Write a backup and say where it is."""
    with progress("Backing up", quiet=call.json) as tick:
        made = backup(call.book(), folder, tick)
    told = f"The copy {made.path} has {_entries(made)} and was verified."
    if not made.is_new:
        told = f"Nothing is new: the copy {made.path} has all {_entries(made)}, and was verified."
    _say(call, made, told, _TO_RESTORE)


def put_back(call: Call, file: Path, to: str) -> None:
    """Restore a backup and say so."""
    with progress("Restoring", quiet=call.json) as tick:
        made = restore(file, to, tick)
    told = f"The book {made.where} has {_entries(made)}, as the backup; it was verified."
    _say(call, made, told, "")


def write_export(call: Call, file: Path) -> None:
    """Export the book and say where it is."""
    with progress("Exporting", quiet=call.json) as tick:
        made = export(call.book(), file, tick)
    _say(
        call,
        made,
        f"The file {made.path} holds {_entries(made)}.",
        f"Make a book of it with: pottle import --book {made.path} --ledger PATH|URL",
    )


def take_in_book(call: Call, file: Path) -> None:
    """Import a book and say so."""
    with progress("Importing", quiet=call.json) as tick:
        made = import_book(file, call.where, tick)
    told = f"The book {made.where} has {_entries(made)}, as the export; it was verified."
    _say(call, made, told, "")


def bring_up(call: Call, folder: Path) -> None:
    """Upgrade the book and say what was done."""
    with progress("Upgrading", quiet=call.json) as tick:
        done = upgrade(call.where, folder, tick)
    kept = done.kept
    if kept is None:
        lines = [f"The book is of version {done.after} already; nothing was changed."]
    else:
        lines = [
            f"The book was brought from version {done.before} to {done.after}; its "
            f"{_entries(kept)} and their root are the same, and it was verified.",
            f"The book as it was is kept in {kept.path}.",
            *restated_lines(done.restated),
        ]
    if call.json:
        print_json(upgrade_answer(done))
    else:
        print_lines(lines)


def restated_lines(lots: Sequence[Restated]) -> Iterator[str]:
    """Yield which lots stand elsewhere by the rules of today, and what to do about them."""
    if lots:
        yield "By the rules of this version these lots stand elsewhere:"
    for lot in lots:
        yield f"  {lot.code}: {lot.before} before, {lot.after} now, since something went in later."
    if lots:
        yield f"Next: pottle lot {lots[0].code}"


_TO_RESTORE = "Keep it on another disk. Bring it back with: pottle restore FILE --to PATH"


def _entries(made: Copied) -> str:
    return plural(made.seal.entries, "entry", "entries")


def _say(call: Call, made: Copied, *lines: str) -> None:
    if call.json:
        print_json(copied_answer(made))
    else:
        print_lines([*filter(None, lines), *made.seal.lines])
