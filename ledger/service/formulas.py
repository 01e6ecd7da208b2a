"""Formulas: versioned masters read from a TOML file.

Guarantees: all that is wrong with a file is told at once and nothing of it is kept. Refuses: keys
it does not know, a version that is in the book already.
"""

import tomllib
from pathlib import Path
from typing import Any

from ledger.domain.entries import Formula, Withdrawal
from ledger.domain.entries.masters import FormulaLine, FormulaStep
from ledger.domain.entries.words import Grade, ProductKind
from ledger.errors import InputError, RefusedError, StorageError
from ledger.service.batches import read_pour
from ledger.service.book import Book, How, Recorded
from ledger.service.desk import at_desk
from ledger.service.words import Words
from ledger.store import queries

_HEAD = [
    *("code", "version", "product", "kind", "basis", "wanted-clarity", "pour"),
    *("best-before-days", "yield-min", "yield-max", "label", "caution"),
    *("prepared-by", "checked-by", "valid-from", "line", "step"),
]
_LINE = ["material", "amount", "tolerance", "overage"]
_STEP = [
    *("verb", "words", "at-least", "at-most"),
    *("temp-min", "temp-max", "pore-max", "passes-min"),
]


def load(book: Book, how: How, *, file: str) -> Recorded:
    """Record a version of a formula from a TOML file."""
    with at_desk(book, how) as desk:
        table = _read(Path(file))
        words = desk.words
        _known(words, table, _HEAD, "the formula")
        facts = Formula(
            code=words.text(_text(table, "code"), "code").lower(),
            version=words.whole(_text(table, "version") or "?", "version") or 0,
            product=words.text(_text(table, "product"), "product"),
            product_kind=words.needed(_text(table, "kind"), ProductKind, "kind of product"),
            basis=words.amount(_text(table, "basis") or "?"),
            wanted_clarity=words.one_of(_text(table, "wanted-clarity"), Grade, "clarity"),
            pour_parts=words.read(lambda: read_pour(_text(table, "pour")), None),
            best_before_days=words.whole(_text(table, "best-before-days"), "number of days"),
            yield_min_mpct=words.scaled(_text(table, "yield-min"), 1000, "%", "yield"),
            yield_max_mpct=words.scaled(_text(table, "yield-max"), 1000, "%", "yield"),
            label_text=words.text_or_none(_text(table, "label"), "label text"),
            caution=words.text_or_none(_text(table, "caution"), "caution"),
            prepared_by=words.text_or_none(_text(table, "prepared-by"), "initials"),
            checked_by=words.text_or_none(_text(table, "checked-by"), "initials"),
            valid_from=words.day(_text(table, "valid-from")),
            lines=tuple(_line(words, line) for line in _rows(words, table, "line")),
            steps=tuple(_step(words, step) for step in _rows(words, table, "step")),
        )
        return desk.record(facts)


def versions(book: Book, code: str | None = None) -> tuple[Formula, ...]:
    """Return the versions of one formula or of all, oldest first."""
    with book.reading() as connection:
        return queries.formulas(connection, code)


def withdraw(book: Book, how: How, *, code: str, version: str) -> Recorded:
    """Record that a version of a formula is no longer to be followed."""
    with at_desk(book, how) as desk:
        key = desk.words.text(code, "code").lower()
        number = desk.words.whole(version or "?", "version") or 0
        desk.words.done()
        if not any(item.version == number for item in queries.formulas(desk.connection, key)):
            raise RefusedError(
                f"There is no version {number} of a formula {key} in the book.",
                "pottle formula list shows those that are.",
            )
        return desk.record(Withdrawal(key, number))


def _read(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise StorageError(
            f"The file {path} could not be read: {error.strerror}.", "Check its name and place."
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise InputError(
            f"The file {path} is not in the form of TOML: {error}.", "Mend that place and load it."
        ) from error


def _text(table: dict[str, Any], key: str) -> str | None:
    value = table.get(key)
    return None if value is None else str(value)


def _rows(words: Words, table: dict[str, Any], key: str) -> list[dict[str, Any]]:
    rows = table.get(key, [])
    if isinstance(rows, list) and all(isinstance(row, dict) for row in rows):
        return rows
    words.errors.append(
        InputError(f'"{key}" is not a list of tables.', f"Write each as [[{key}]].")
    )
    return []


def _known(words: Words, table: dict[str, Any], keys: list[str], where: str) -> None:
    words.errors.extend(
        InputError(f'"{key}" is not known in {where}.', f"Choose from: {', '.join(keys)}.")
        for key in table
        if key not in keys
    )


def _line(words: Words, line: dict[str, Any]) -> FormulaLine:
    _known(words, line, _LINE, "a line")
    return FormulaLine(
        material=words.text(_text(line, "material"), "material of a line").lower(),
        amount=words.amount(_text(line, "amount") or "?"),
        tolerance_mpct=words.scaled(_text(line, "tolerance"), 1000, "%", "tolerance"),
        overage_mpct=words.scaled(_text(line, "overage"), 1000, "%", "overage"),
    )


def _step(words: Words, step: dict[str, Any]) -> FormulaStep:
    _known(words, step, _STEP, "a step")
    return FormulaStep(
        verb=words.text(_text(step, "verb"), "verb of a step"),
        words=words.text_or_none(_text(step, "words"), "words of a step"),
        minutes_min=words.minutes(_text(step, "at-least")),
        minutes_max=words.minutes(_text(step, "at-most")),
        temp_min_mdegc=words.scaled(_text(step, "temp-min"), 1000, "°C", "temperature"),
        temp_max_mdegc=words.scaled(_text(step, "temp-max"), 1000, "°C", "temperature"),
        pore_max_nm=words.scaled(_text(step, "pore-max"), 1000, "µm", "pore size"),
        passes_min=words.whole(_text(step, "passes-min"), "number of passes"),
    )
