"""Showing a verification, with progress on long books.

Guarantees: exit code 0 only when everything fits. Refuses: to say more than was checked.
"""

import typer

from cli.call import Call
from cli.progress import progress
from cli.tables import print_json, print_lines
from ledger.service.verifying import verify
from reports.build.plain import audit_plain

MOST_SHOWN = 10


def verify_book(call: Call) -> None:
    """Verify the book and show what does not fit."""
    book = call.book()
    with progress("Verifying", quiet=call.json) as tick:
        found = verify(book, tick)
    if call.json:
        print_json(audit_plain(found))
    elif found.faults:
        print_lines([f"{found.entries} entries; {len(found.faults)} things do not fit:"])
        print_lines([f"- {fault.what}" for fault in found.faults[:MOST_SHOWN]])
        print_lines(["Keep this file as it is, and restore a copy that verifies."])
    else:
        print_lines(
            [
                f"{found.entries} entries, all as they were written; tables, tree and guards fit.",
                f"Root {found.root.hex()}",
                "Only a seal kept outside this book can show that it was not rebuilt whole.",
            ]
        )
    if found.faults:
        raise typer.Exit(1)
