"""Formulas: versioned masters read from a TOML file.

Guarantees: all that is wrong with a file is told at once, with line numbers, and nothing of it is
kept; a version with the same content, and its withdrawal, is recorded once. Refuses: a version that
is in the book already with other content.
"""

from contextlib import suppress
from pathlib import Path
from typing import Any

from ledger.domain.entries import Formula, Withdrawal
from ledger.domain.entries.texts import read_text
from ledger.errors import LedgerError, RefusedError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.masters.formula_file import Known, read_formula
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.text_files import text_of

MOST_BYTES = 1_000_000
"""How large a file of a formula may be."""


def load(book: Book, how: How, *, file: str) -> Recorded:
    """Record a version of a formula from a TOML file."""
    path = Path(file)
    text = text_of(path, MOST_BYTES, "Save it again as UTF-8 and load it.")
    return load_text(book, how, text, path.name)


@act
def load_text(book: Book, how: How, text: str, file: str) -> Recorded:
    """Record a version of a formula from the text of a TOML file of that name."""
    with at_desk(book, how, Ahead(also=_ASKED)) as desk:
        words = desk.words
        words.done()
        facts = read_formula(text, file, words, _known(desk.connection))
        words.done()
        return _record_once(desk, facts)


_ASKED = (
    (queries.material_codes,),
    (queries.formulas,),
    (queries.entries_of_kind, Formula),
)
"""What is read whichever formula is loaded."""


def _known(connection: Connection) -> Known:
    return Known(
        people=queries.people(connection),
        materials=queries.material_codes(connection),
        formulas={formula.code for formula in queries.formulas(connection)},
    )


def _record_once(desk: Desk, facts: Formula | Withdrawal) -> Recorded:
    """Record what the book does not say yet; return the entry that says it otherwise."""
    for entry in queries.entries_of_kind(desk.connection, type(facts)):
        if entry.facts == facts:
            return Recorded(entry, is_new=False)
    return desk.record(facts)


def versions(book: Book, code: str | None = None) -> tuple[Formula, ...]:
    """Return the versions of one formula or of all, oldest first."""
    with book.reading() as connection:
        return queries.formulas(connection, code)


def version(book: Book, code: str, number: int | None = None) -> Formula:
    """Return one version of a formula, the newest when none is named.

    Raises:
        RefusedError: It is not in the book.
    """
    key = code.strip().lower()
    asked = [formula for formula in versions(book, key) if number in (None, formula.version)]
    if not asked:
        raise RefusedError(
            f"The formula {key}{f' version {number}' if number else ''} is not in the book.",
            "pottle formula list shows those that are.",
        )
    return asked[-1]


def withdrawn(book: Book) -> frozenset[tuple[str, int]]:
    """Return the versions that are withdrawn, by code."""
    with book.reading() as connection:
        return queries.withdrawn(connection)


@act
def withdraw(book: Book, how: How, *, code: str, version: str) -> Recorded:
    """Record that a version of a formula is no longer to be followed, once."""
    with at_desk(book, how, Ahead(also=_asked_of(code))) as desk:
        key = desk.words.text(code, "code").lower()
        number = desk.words.number(version, 1, "", "version")
        desk.words.done()
        if not any(formula.version == number for formula in queries.formulas(desk.connection, key)):
            raise RefusedError(
                f"There is no version {number} of a formula {key} in the book.",
                "pottle formula list shows those that are.",
            )
        return _record_once(desk, Withdrawal(key, number))


def _asked_of(code: str) -> tuple[tuple[Any, ...], ...]:
    """Return what is read of the versions of a formula, where the code can be one."""
    withdrawn_ones = (queries.entries_of_kind, Withdrawal)
    with suppress(LedgerError):
        return (queries.formulas, read_text(code, "code").lower()), withdrawn_ones
    return (withdrawn_ones,)
