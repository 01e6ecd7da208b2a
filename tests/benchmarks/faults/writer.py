"""One of a crowd of writers: a process that loads no more than it needs to write."""

import json
import time

from ledger.errors import LedgerError
from ledger.service.bench.note import note
from ledger.service.desk.book import How, open_book


def write(where: str) -> None:
    """Get ready, be told until when to write notes, and print what was recorded as JSON."""
    numbers, errors = [], 0
    with open_book(where) as book:
        print("ready", flush=True)
        until = float(input())
        while time.time() < until:
            try:
                numbers.append(note(book, How(by="AB"), text="Some words.").seq)
            except LedgerError:
                errors += 1
    print(json.dumps({"numbers": numbers, "errors": errors}))
