"""Tables that are handed in, in tests."""

from pathlib import Path

from ledger.service.copies.intake.take_in import Asked, TakenIn, take_in
from ledger.service.desk.book import How
from tests.keeper import Keeper

GERMAN = Path(__file__).parent / "german_season"
"""Deliveries, batches and sales of an invented maker, one wide row a batch."""


def taken(keeper: Keeper, path: Path, asked: Asked, **how: str) -> TakenIn:
    return take_in(keeper.book, How("AB", **how), path, asked)


def places(told: TakenIn) -> list[tuple[int | None, str | None, str]]:
    return [(found.line, found.column, found.what) for found in told.found]


def csv(folder: Path, name: str, text: str) -> Path:
    (folder / name).write_text(text, encoding="utf-8")
    return folder / name
