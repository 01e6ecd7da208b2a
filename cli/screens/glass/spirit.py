"""The spirit account on a screen or as JSON.

Guarantees: it reads only.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.sheets import put_sheet
from cli.kit.tables import print_json, print_lines, print_table
from ledger.service.glass.spirit import spirit_account
from reports.json.glass.spirit import spirit_answer
from reports.words.glass import spirit as words

NEXT = "pottle stock"
"""What comes after an account."""


def show_spirit(
    call: Call, first: str | None, last: str | None, csv: Path | None, *, force: bool
) -> None:
    """Show the spirit account of a period."""
    found = spirit_account(call.book(), first, last)
    if csv:
        put_sheet(call, words.spirit_sheet(found), csv, force=force)
    if call.json:
        print_json(spirit_answer(found, NEXT))
    if call.json or csv:
        return
    print_table(words.HEADS, words.rows(found), right="L")
    lots = words.lot_rows(found)
    if lots:
        print_lines([""])
        print_table(words.LOT_HEADS, lots, right="received,used,left")
    print_lines(["", *words.notes(found), f"Next: {NEXT}"])
