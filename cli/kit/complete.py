"""Completing codes of lots in the shell.

Guarantees: reads the book with the standard library alone, so that a key press costs little, and
never changes it. Refuses: to complain; whatever is wrong, there is nothing to complete.
"""

from pathlib import Path

import typer

PATIENCE_S = 0.5
"""How long to wait for a book that somebody is writing in."""


def complete_lot(context: typer.Context, incomplete: str) -> list[str]:
    """Return the codes that begin with what is typed, the newest lots first.

    They come in small letters to who types small letters; the book takes both.
    """
    from cli.kit.call import Call

    ledger = context.params.get("ledger") or context.find_root().params.get("ledger")
    codes = lot_codes(Call(ledger=ledger).where)
    if incomplete.islower():
        codes = [code.lower() for code in codes]
    return [code for code in codes if code.startswith(incomplete)]


def lot_codes(where: str) -> list[str]:
    """Return the codes of all lots of a book's file, the newest first; none if it has trouble."""
    import sqlite3
    from contextlib import closing

    address = f"{Path(where).absolute().as_uri()}?mode=ro"
    try:
        with closing(sqlite3.connect(address, uri=True, timeout=PATIENCE_S)) as connection:
            rows = connection.execute("SELECT code FROM lot ORDER BY id DESC")
            return [str(code) for (code,) in rows]
    except (sqlite3.Error, OSError, ValueError):
        return []
