"""The published tables kept under `tests/reference/`; columns that were computed are not used."""

import csv
from pathlib import Path

REFERENCE = Path(__file__).parents[1] / "reference"


def rows(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))
