"""Completing words in the shell: lots, materials, formulas, parties, and closed lists of words.

Guarantees: reads the book with the standard library alone, so that a key press costs little, and
never changes it. Refuses: to complain; whatever is wrong, there is nothing to complete.
"""

from collections.abc import Callable
from pathlib import Path

import typer
from typer.core import TyperGroup

PATIENCE_S = 0.5
"""How long to wait for a book that somebody is writing in."""
LOTS = "SELECT code FROM lot ORDER BY id DESC"
_IN_FORCE = (
    "SELECT {column} FROM {table} t WHERE NOT EXISTS (SELECT 1 FROM entry c WHERE c.corrects = "
    "t.seq) GROUP BY {column} ORDER BY MAX(t.seq) DESC"
)
MATERIALS = _IN_FORCE.format(column="code", table="material")
FORMULAS = _IN_FORCE.format(column="code", table="formula")
PARTIES = (
    "SELECT COALESCE(shown, name), MAX(seq) FROM (SELECT COALESCE(code, name) AS name, seq FROM "
    "party UNION ALL SELECT supplier, seq FROM receipt UNION ALL SELECT party, seq FROM move) "
    "LEFT JOIN party_shown ON stored = name WHERE name IS NOT NULL GROUP BY 1 ORDER BY 2 DESC"
)

Complete = Callable[[object, str], list[str]]
"""What completes a word."""


def complete_lot(context: typer.Context, incomplete: str) -> list[str]:
    """Return the codes that begin with what is typed, the newest lots first.

    They come in small letters to who types small letters; the book takes both.
    """
    codes = _asked(context, LOTS)
    if incomplete.islower():
        codes = [code.lower() for code in codes]
    return [code for code in codes if code.startswith(incomplete)]


def complete_source(context: typer.Context, incomplete: str) -> list[str]:
    """Return the materials, then the lots that begin with what is typed."""
    return [*complete_material(context, incomplete), *complete_lot(context, incomplete)]


def complete_material(context: typer.Context, incomplete: str) -> list[str]:
    """Return the materials whose short names begin with what is typed, the newest first."""
    return _begun(_asked(context, MATERIALS), incomplete)


def complete_formula(context: typer.Context, incomplete: str) -> list[str]:
    """Return the formulas whose short names begin with what is typed, the newest first."""
    return _begun(_asked(context, FORMULAS), incomplete)


def complete_party(context: typer.Context, incomplete: str) -> list[str]:
    """Return the parties whose names begin with what is typed, the newest first."""
    return _begun(_asked(context, PARTIES), incomplete)


def complete_command(context: typer.Context, incomplete: str) -> list[str]:
    """Return the commands that begin with what is typed."""
    front = context.find_root()
    known = front.command.list_commands(front) if isinstance(front.command, TyperGroup) else []
    return _begun([*known, "options"], incomplete)


def words(*known: str) -> Complete:
    """Return what completes one of a closed list of words."""

    def complete(_context: object, incomplete: str) -> list[str]:
        return _begun(list(known), incomplete)

    return complete


def _begun(known: list[str], incomplete: str) -> list[str]:
    return [word for word in known if word.startswith(incomplete)]


def _asked(context: typer.Context, query: str) -> list[str]:
    from cli.kit.call import Call

    ledger = context.params.get("ledger") or context.find_root().params.get("ledger")
    return _column(Call(ledger=ledger).where, query)


def lot_codes(where: str) -> list[str]:
    """Return the codes of all lots of a book's file, the newest first; none if it has trouble."""
    return _column(where, LOTS)


def _column(where: str, query: str) -> list[str]:
    import sqlite3
    from contextlib import closing

    address = f"{Path(where).absolute().as_uri()}?mode=ro"
    try:
        with closing(sqlite3.connect(address, uri=True, timeout=PATIENCE_S)) as connection:
            return [str(row[0]) for row in connection.execute(query)]
    except (sqlite3.Error, OSError, ValueError):
        return []
