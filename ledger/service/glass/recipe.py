"""What a formula comes to when all goes as it says: its lines mixed, nothing lost.

Guarantees: what is made here is reckoned by its own formula; what is missing is named. Refuses:
losses, rinses and made-up volumes, which only a batch has.
"""

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add, Formula, entries_of
from ledger.domain.entries.masters import FormulaLine
from ledger.domain.lots.state import LotState
from ledger.science.contents.composition import Contents, add, scaled
from ledger.science.contents.received import ReceivedLot, contents_of, missing_of
from ledger.service.glass.sizes import POURED
from ledger.store.engine.connections import Connection
from ledger.store.read import queries
from ledger.store.read.made import kinds_made

DEEPEST = 8
"""How many formulas are followed into one another."""


def recipe(
    connection: Connection, formula: Formula, depth: int = 0
) -> tuple[Contents, tuple[tuple[str, str], ...]]:
    """Return what a formula's lines contain together, and what is missing."""
    made, gaps = Contents(), []
    for line in formula.lines:
        more, missing = _line(connection, line, depth)
        made = add(made, more)
        gaps += missing
    return made, tuple(dict.fromkeys(gaps))


def _line(
    connection: Connection, line: FormulaLine, depth: int
) -> tuple[Contents, list[tuple[str, str]]]:
    if line.formula:
        return _made_here(connection, line, depth)
    material = queries.material(connection, line.material or "")
    if material is None:
        return Contents(), [(f"{line.material} is not in the book.", "Add the material.")]
    lot = ReceivedLot(
        material.code,
        material.code,
        material.name,
        material.sort,
        line.amount.measure,
        material.abv_mpct / 1000 if material.abv_mpct is not None else None,
        "by its material",
        material.density_mg_per_l / 1000 if material.density_mg_per_l is not None else None,
        "by its material",
    )
    fact = missing_of(lot)
    gaps = [_missing(fact, material.code, material.name)] if fact else []
    return contents_of(lot, line.amount.amount), gaps


def _missing(fact: str, code: str, called: str) -> tuple[str, str]:
    setting = "--abv FIGURE" if fact == "strength" else "--density FIGURE"
    return (
        f"The {fact} of {called} is not in the book; what it brings is not known.",
        f"Record it: pottle material change {code} {setting}",
    )


def _made_here(
    connection: Connection, line: FormulaLine, depth: int
) -> tuple[Contents, list[tuple[str, str]]]:
    versions = queries.formulas(connection, line.formula or "")
    if not versions or depth >= DEEPEST:
        return Contents(), [
            (
                f"The formula {line.formula} is not in the book; what it brings is not known.",
                "Load it: pottle formula load FILE",
            )
        ]
    made, gaps = recipe(connection, max(versions, key=lambda item: item.version), depth + 1)
    if made.volume_ul <= 0:
        return Contents(), list(gaps)
    return scaled(made, line.amount.amount / made.volume_ul), list(gaps)


def added_to(state: LotState) -> list[str]:
    """Return the codes of the lots that were added to a lot, each once."""
    return list(dict.fromkeys(entry.facts.source for entry in entries_of(state.entries, Add)))


def essence_in(connection: Connection, state: LotState) -> int:
    """Return how much of what is no syrup, and was made here, went into a lot, in µL."""
    total = 0
    kinds = kinds_made(connection, added_to(state))
    for facts in (entry.facts for entry in entries_of(state.entries, Add)):
        is_essence = facts.source in kinds and kinds[facts.source] not in POURED
        if is_essence and facts.amount.measure is Measure.UL:
            total += facts.amount.amount
    return total


def essence_by_formula(connection: Connection, formula: Formula) -> int:
    """Return how much of what is no syrup, and is made here, a formula calls for, in µL."""
    return sum(
        line.amount.amount
        for line in formula.lines
        if line.formula
        and (versions := queries.formulas(connection, line.formula))
        and versions[-1].product_kind not in POURED
        and line.amount.measure is Measure.UL
    )
