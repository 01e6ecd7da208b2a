"""The spirit account on a screen or as JSON.

Guarantees: it reads only.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, draw
from cli.kit.sheets import put_sheet
from cli.kit.tables import print_json, print_lines, print_table
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.glass.spirit import spirit_account
from reports.json.glass.spirit import spirit_answer
from reports.kit.frame import frame_of
from reports.words.glass import spirit as words

NEXT = "pottle stock"
"""What comes after an account."""


def show_spirit(
    call: Call,
    first: str | None,
    last: str | None,
    csv: Path | None,
    out: Path | None = None,
    *,
    force: bool,
) -> None:
    """Show the spirit account of a period, or write it as a paper."""
    if out:
        check_place(out, force=force)
    book = call.book()
    found = spirit_account(book, first, last)
    if out:
        from reports.pdf.glass.spirit import spirit_paper

        view = words.spirit_view(found, frame_of(house_of(book), seal(book), written_at(book)))
        draw(out, lambda paper: spirit_paper(view, paper), force=force)
    if csv:
        put_sheet(call, words.spirit_sheet(found), csv, force=force)
    if call.json:
        print_json(spirit_answer(found, NEXT))
    elif out:
        print_lines([f"The spirit account of {found.first} to {found.last} is in {out}."])
    if call.json or csv or out:
        return
    print_table(words.HEADS, words.rows(found), right="L")
    lots = words.lot_rows(found)
    if lots:
        print_lines([""])
        print_table(words.LOT_HEADS, lots, right="received,used,left")
    print_lines(["", *words.notes(found), f"Next: {NEXT}"])
