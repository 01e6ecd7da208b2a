"""The published statements of oils in spirit, as far as it is known what the oils are made of.

Strengths of `phases.csv` at which a gap of miscibility closes are measured; those of
`solubility_in_spirit.csv` are told in steps of ten, and a limit so that every good lot meets it:
it is taken half a step high.
"""

import csv
import re
from collections.abc import Iterator
from pathlib import Path

from ledger.science.haze.calibration import Statement
from ledger.science.haze.strength import STEP_PERCENT, Oil
from ledger.science.liquids.alcohol import abv_from_mass_percent
from ledger.service.account.oils import oil_called

IN_SPIRIT = Path("tests/reference/solubility_in_spirit.csv")
PHASES = Path("tests/reference/phases.csv")
NEAR_EQUAL = 1 / 2.5
"""Share of the oil at which a gap closes: near equal parts (no figure is published)."""
GROUP_OF = {"limonene": "orange"}
"""The group that a substance is left out with."""


def rows() -> list[dict[str, str]]:
    """Return all statements of oils in spirit."""
    with IN_SPIRIT.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def foretold(given: list[dict[str, str]]) -> list[Statement]:
    """Return those of oils whose composition is known."""
    found = ((row, oil_called(row["oil"])) for row in given)
    return [_statement(row, known.oil) for row, known in found if known]


def _statement(row: dict[str, str], oil: Oil) -> Statement:
    volumes = [float(row[end]) for end in ("n_min", "n_max") if row[end]]
    strength = float(row["strength_pct_vv"])
    is_limit = row["kind"] == "limit"
    return Statement(
        label=row["id"],
        group=row["group"],
        oil=oil,
        oil_share=1 / (1 + sum(volumes) / len(volumes)),
        stated=strength,
        least=strength - STEP_PERCENT / 2 if is_limit else strength,
        is_fitted=row["kind"] != "fails" and not row["note"].startswith("SUSPECT"),
    )


def closings() -> list[Statement]:
    """Return the strengths at which gaps of miscibility were measured to close."""
    return list(_closings())


def _closings() -> Iterator[Statement]:
    with PHASES.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            match = re.match(r"(\w+)/water/ethanol: miscibility gap disappears", row["quantity"])
            known = oil_called(match[1]) if match else None
            if match and known:
                strength = abv_from_mass_percent(100 * float(row["value"]))
                group = GROUP_OF.get(match[1], match[1])
                yield Statement(match[1], group, known.oil, NEAR_EQUAL, strength, strength)
