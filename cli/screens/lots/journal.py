"""Entries of the journal on a screen.

Guarantees: codes are never cut.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.sheets import check_sheet, put_sheet
from cli.kit.tables import print_json, print_lines, print_table
from ledger.errors import FindingError, RefusedError
from ledger.service.lots.journal import Said, history, journal
from reports.json.lots.journal import journal_row
from reports.kit.format import clock, closed, initials
from reports.words.desk.next_step import step_of_journal
from reports.words.entries.sentence import notes, sentence, strikes, title
from reports.words.evidence.damage import damaged_entry
from reports.words.lots.sheets import journal_sheet


def show_journal(
    call: Call,
    lot: str | None,
    last: int,
    entry: int | None,
    csv: Path | None = None,
    *,
    force: bool = False,
) -> None:
    """List entries as they were written."""
    check_sheet(csv, force=force)
    book = call.book()
    damaged: tuple[int, ...] = ()
    if entry is not None:
        said = history(book, entry)
        if not said:
            raise RefusedError(
                f"There is no entry {entry} in the book.",
                "pottle journal lists the entries with their numbers.",
            )
    else:
        found = journal(book, lot=lot, last=last, by=call.writer)
        said, damaged = found.said, found.damaged
    if csv:
        put_sheet(call, journal_sheet(said), csv, force=force)
    if call.json:
        print_json([journal_row(item) for item in said])
    elif csv is None:
        print_said(said)
        if not damaged:
            step = step_of_journal(said, is_all=lot is None and entry is None)
            print_lines([f"Next: {step}"])
    if damaged:
        raise FindingError.of([damaged_entry(number) for number in damaged])


def print_said(said: tuple[Said, ...], *, with_lot: bool = True) -> None:
    """Print entries as a table: number, time, who, what."""
    struck = strikes(item.entry for item in said)
    rows = []
    for item in said:
        draft = item.entry.draft
        text = sentence(item.entry)
        told = notes(item.entry, item.corrected_by, is_struck=item.entry.seq in struck)
        rows.append(
            [
                str(item.entry.seq),
                clock(draft.happened, is_repeated=item.is_repeated),
                initials(item.entry),
                *([draft.lot or ""] if with_lot else []),
                " ".join((closed(f"{title(item.entry)}: {text}"), *told)),
            ]
        )
    lot = ("lot",) if with_lot else ()
    print_table(("entry", "when", "by", *lot, "what"), rows, right="entry")
