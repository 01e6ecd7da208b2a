"""A verification on a screen, with progress on long books.

Guarantees: exit code 0 only when everything fits.
"""

import typer

from cli.kit.call import Call
from cli.kit.place import tell_place
from cli.kit.progress import progress
from cli.kit.seals import given_seal
from cli.kit.tables import print_json, print_lines
from ledger.errors import InputError
from ledger.service.evidence.verify import verify
from reports.json.evidence.verify import verify_answer
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
        print_json(verify_answer(found, older))
    else:
        print_lines(audit_lines(found, older))
        tell_place(call.where)
    if found.faults:
        raise typer.Exit(1)
