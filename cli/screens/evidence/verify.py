"""A verification on a screen, with progress on long books.

Guarantees: exit code 0 only when everything fits. What was found sound last is remembered at the
device, outside the book; it vouches for nothing that does not fit it.
"""

from contextlib import suppress

import typer
from msgspec import ValidationError, convert
from msgspec.structs import asdict

from cli.kit.call import Call
from cli.kit.device import remember, remembered
from cli.kit.place import tell_place
from cli.kit.progress import progress
from cli.kit.seals import given_seal
from cli.kit.tables import print_json, print_lines
from ledger.domain.evidence.seals import Seal
from ledger.errors import InputError
from ledger.service.desk.book import Book
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import Audit, verify
from reports.json.evidence.verify import verify_answer
from reports.words.evidence.verify import NO_LAST, audit_lines


def verify_book(
    call: Call, seal_text: str | None, since: str | None, *, since_last: bool = False
) -> None:
    """Verify the book, or what came after a seal, and show what does not fit."""
    told = [
        name
        for name, is_given in (
            ("--seal", seal_text), ("--since", since), ("--since-last", since_last),
        )
        if is_given
    ]  # fmt: skip
    if len(told) > 1:
        raise InputError(
            f"{told[0]} and {told[1]} were both given.",
            "Give --seal to read the whole book, --since to read what came after that seal, or "
            "--since-last to read what came after the last verification here.",
        )
    book = call.book()
    older = last_sound(book.where) if since_last else given_seal(seal_text or since)
    with progress("Verifying", quiet=call.json) as tick:
        found = verify(book, tick, older, only_since=bool(since or since_last))
    if not found.faults:
        _remember(book, found)
    if call.json:
        print_json(verify_answer(found, older))
    else:
        print_lines([NO_LAST] if since_last and older is None else [])
        print_lines(audit_lines(found, older))
        tell_place(call.where)
    if found.faults:
        raise typer.Exit(1)


def last_sound(where: str) -> Seal | None:
    """Return the seal of the last verification at this device that found all sound, or None."""
    with suppress(ValidationError):  # what cannot be read is as nothing
        return convert(remembered(where).get("verified"), Seal)
    return None


def _remember(book: Book, found: Audit) -> None:
    now = seal(book)
    if now.root == found.root.hex():  # nobody wrote meanwhile
        remember(book.where, remembered(book.where) | {"verified": asdict(now)})
