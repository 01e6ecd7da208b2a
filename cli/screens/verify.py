"""Showing a verification, with progress on long books.

Guarantees: exit code 0 only when everything fits. Refuses: to say more than was checked.
"""

from pathlib import Path

import typer

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.progress import progress
from cli.kit.seals import given_seal
from cli.kit.tables import print_json, print_lines
from ledger.errors import InputError
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from reports.json.lots.lot import audit_plain
from reports.words.evidence.verify import audit_lines


def verify_book(call: Call, seal_text: str | None, since: str | None) -> None:
    """Verify the book, or what came after a seal, and show what does not fit."""
    if seal_text and since:
        raise InputError(
            "Both --seal and --since were given.",
            "Give --seal to read the whole book, or --since to read what came after the seal.",
        )
    older = given_seal(seal_text or since)
    book = call.book()
    with progress("Verifying", quiet=call.json) as tick:
        found = verify(book, tick, older, only_since=since is not None)
    if call.json:
        print_json(audit_plain(found, older))
    else:
        print_lines(audit_lines(found, older))
    if found.faults:
        raise typer.Exit(1)


def print_seal(call: Call, out: Path | None, *, force: bool) -> None:
    """Print the seal of the book as it is now, and write it to a file if one is named."""
    if out:
        check_place(out, force=force)
    made = seal(call.book())
    if out:
        write(out, "".join(f"{line}\n" for line in made.lines).encode())
    if call.json:
        plain = {"house": made.house, "entries": made.entries, "root": made.root}
        print_json({**plain, "lines": list(made.lines), **({"out": str(out)} if out else {})})
    else:
        print_lines(made.lines)
