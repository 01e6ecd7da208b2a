"""Targets: formulas, seasons, canonical texts, entries, seals and proofs."""

import csv
import io
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import cast

import rfc8785

from ledger.domain.entries import Formula
from ledger.domain.entries.canonical import canonical_text, read_canonical
from ledger.domain.entries.plain import (
    UNREADABLE,
    entry_text,
    facts_from_plain,
    facts_to_plain,
    read_entry,
)
from ledger.domain.evidence.proofs import proof_faults, proof_text, read_proof
from ledger.domain.evidence.seals import read_seal, same_house
from ledger.service.copies.season import Season, read_season
from ledger.service.copies.season_files import Row
from ledger.service.desk.reader import Words
from ledger.service.masters.formula_file import Known, read_formula
from ledger.store.engine.connections import Connection
from reports.words.evidence.prove import checked_lines
from tests.domain.evidence.rfc6962 import check_file
from tests.fuzz.books import folder, played
from tests.fuzz.laws import attempt, check_error, holds, same
from tests.service.copies.season_folder import GOOD, folder_with

MATERIALS = ("orange-oil", "lemon-oil", "lime-oil", "spirit", "carbonate", "sugar", "water")
"""Materials that the book of a formula knows."""
KNOWN = Known(("AB",), MATERIALS, ("orange-essence",))
"""What that book knows in all."""


def document(data: bytes) -> str | None:
    """Return bytes as a file of text has them, or None when they are none."""
    try:
        return data.decode("utf-8").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError:
        return None


def formulas(data: bytes) -> None:
    """A formula is read, kept and read again the same, or all that is wrong is told."""
    text = document(data)
    if text is None:
        return
    words = Words(cast(Connection, None), "US", "AB")
    formula = attempt(lambda: read_formula(text, "formula.toml", words, KNOWN))
    for error in words.errors:
        check_error(error)
    if formula and not words.errors:
        kept = read_canonical(canonical_text(facts_to_plain(formula)))
        same("a formula is kept", facts_from_plain(Formula.KIND, kept), formula)


@cache
def good_folder() -> Path:
    """Return the folder of a season that is whole; made once."""
    path = folder() / "season"
    path.mkdir()
    return folder_with(path)


def seasons(data: bytes) -> None:
    """A season of which one file is anything is read and written again the same, or refused.

    The first line of the input names the file, the others are what stands in it.
    """
    head, _, body = data.partition(b"\n")
    name = head.decode("utf-8", "replace")
    good = good_folder()
    path = good / (name if name in GOOD else "note.csv")
    path.write_bytes(body)
    try:
        season = attempt(lambda: read_season(good))
        if season:
            path.write_text(_written(path, season) or body.decode(), encoding="utf-8")
            again = read_season(good)
            same("rows are read again the same", _cells(again.rows), _cells(season.rows))
            played(season)
    finally:
        path.write_text(GOOD[path.name], encoding="utf-8")


def _cells(rows: Sequence[Row]) -> list[tuple[object, ...]]:
    return [(row.verb, dict(row.cells), row.typed) for row in rows]


def _written(path: Path, season: Season) -> str:
    """Write the rows of one file as a spreadsheet would."""
    rows = [row for row in season.rows if row.file == path.name]
    heading = list(dict.fromkeys(name for row in rows for name in row.cells))
    out = io.StringIO(newline="")
    if rows:
        csv.writer(out).writerow(heading)
        csv.writer(out).writerows([row.cells.get(name, "") for name in heading] for row in rows)
    return out.getvalue()


def canonical(data: bytes) -> None:
    """What is read as canonical is canonical by another's reckoning too, and is written again."""
    text = document(data)
    value = attempt(lambda: read_canonical(text)) if text is not None else None
    if text is not None and value is not None:
        same("canonical text is written again", canonical_text(value), text)
        same("another library writes the same", rfc8785.dumps(value), text.encode())  # type: ignore[arg-type]


def entries(data: bytes) -> None:
    """An entry that is written as it was read is read again the same."""
    text = document(data)
    if text is None:
        return
    try:
        entry = read_entry(text)
        written = entry_text(entry)
    except UNREADABLE:
        return
    if written == text:
        same("an entry is read again the same", read_entry(written), entry)


def seals(data: bytes) -> None:
    """A seal is read again the same from its lines, run together and in capitals."""
    text = document(data)
    seal = attempt(lambda: read_seal(text)) if text is not None else None
    if seal is None:
        return
    same("a seal is read again from its lines", read_seal("\n".join(seal.lines)), seal)
    together = read_seal(" ".join(seal.lines).upper())
    same("a seal in capitals has its root", together.root, seal.root)
    same("a seal in capitals has its entries", together.entries, seal.entries)
    holds(same_house(together.house, seal.house), "a seal in capitals is of its house", seal)


def proofs(data: bytes) -> None:
    """A proof is written as it was read; a second reader agrees; what was found can be shown."""
    text = document(data)
    proof = attempt(lambda: read_proof(text)) if text is not None else None
    if proof is None or text is None:
        return
    same("a proof is written as it was read", proof_text(proof), text.strip())
    faults = tuple(proof_faults(proof))
    for what in faults:
        holds(what.endswith("."), "what does not fit is a whole sentence", what)
    ours = {one.seq for one in proof.entries if _is_outside(one.seq, faults)}
    same("a second reader agrees", ours, set(check_file(text)))
    holds(bool(checked_lines(proof, faults, None)), "a proof can be shown", proof)


def _is_outside(seq: int, faults: Sequence[str]) -> bool:
    return f"Entry {seq} is not in the book of the seal as it is told here." in faults
