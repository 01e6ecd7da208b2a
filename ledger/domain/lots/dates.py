"""Best-before dates: what was decided, else the formula's rule, and never later than the inputs.

Guarantees: a lot's date is never after that of anything it is made of; a date says what set it;
how a product keeps is told by its own formula alone, in the class of the weakest syrup that a
reading or the sums speak of. Refuses: to date what has no rule and no date; that is None.
"""

from collections.abc import Iterable, Mapping
from datetime import date, timedelta

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import Formula
from ledger.domain.entries.masters import Keeping
from ledger.domain.masters.formulas import version_of


class Dated(Struct, frozen=True):
    """What the book knows of the date of one lot by itself, without its inputs."""

    code: str
    """The lot's code."""
    told: date | None = None
    """The date that was decided, or that its supplier gave."""
    formula: tuple[str, int] | None = None
    """Code and version of the formula it was made by."""
    finished_on: date | None = None
    """The day its making ended, on the clock it was written by."""
    brix_mpct: int | None = None
    """The strength of its syrup in thousandths of a °Brix: the lowest that is read or reckoned."""
    filled_from: str | None = None
    """Code of the lot it was filled from, for bottles, which keep by what is in them."""
    is_bought: bool = False
    """Whether it was delivered, so that its date is its supplier's."""


class Dates(Struct, frozen=True):
    """The dates of a lot."""

    best_before: date | None = None
    """Unopened."""
    set_by: str | None = None
    """What set it, in words."""
    storage: str | None = None
    """Where it is to be kept for that."""
    opened_days: int | None = None
    """Days within which to use it once opened."""


def rule_of(formula: Formula, brix_mpct: int | None) -> Keeping | None:
    """Return how long a product keeps by its formula, or None when it does not say.

    The first row whose syrup reading is reached counts; a row that asks for a reading does not
    count when none is known.
    """
    for row in formula.keeping:
        if row.brix_min_mpct is None or (brix_mpct is not None and brix_mpct >= row.brix_min_mpct):
            return row
    days = formula.best_before_days
    return Keeping("", days) if days is not None and not formula.keeping else None


def asks_for_a_reading(formula: Formula) -> bool:
    """Return whether it hangs on the strength of its syrup how long a product keeps."""
    return any(row.brix_min_mpct is not None for row in formula.keeping)


def lowest(strengths: Iterable[int | None]) -> int | None:
    """Return the weakest of the strengths of a syrup that are known, or None.

    >>> lowest([66_000, None, 48_600]), lowest([None])
    (48600, None)
    """
    return min((strength for strength in strengths if strength is not None), default=None)


def dates(
    lot: Dated, behind: Iterable[Dated], formulas: Mapping[tuple[str, int], Formula]
) -> Dates:
    """Return the dates of a lot.

    Args:
        lot: The lot.
        behind: All lots it is made of.
        formulas: The versions of formulas that the lots name, as far as they are in the book.
    """
    inputs = tuple(behind)
    product = _product(lot, inputs)
    formula = formulas.get(product.formula) if product.formula else None
    rule = rule_of(formula, product.brix_mpct) if formula else None
    own, why = _own(lot, formulas)
    candidates = [(own, why)] if own else []
    for source in inputs:
        day, _ = _own(product if source.code == product.code else source, formulas)
        if day:
            candidates.append((day, f"never later than {source.code}, which it is made of"))
    best_before, set_by = min(candidates, key=lambda pair: pair[0]) if candidates else (None, None)
    return Dates(
        best_before,
        set_by,
        storage=(rule.storage or None) if rule else None,
        opened_days=rule.opened_days if rule else None,
    )


def _product(lot: Dated, behind: tuple[Dated, ...]) -> Dated:
    """Return the lot, or for bottles, which follow no formula, what is in them."""
    bulk = next((item for item in behind if item.code == lot.filled_from), None)
    if bulk is None:
        return lot
    return replace(bulk, brix_mpct=lowest((lot.brix_mpct, bulk.brix_mpct)))


def _own(lot: Dated, formulas: Mapping[tuple[str, int], Formula]) -> tuple[date | None, str]:
    if lot.told:
        return lot.told, "as its supplier gave it" if lot.is_bought else "as decided for it"
    formula = formulas.get(lot.formula) if lot.formula else None
    rule = rule_of(formula, lot.brix_mpct) if formula else None
    if formula is None or rule is None or lot.finished_on is None:
        return None, ""
    days = "1 day" if rule.days == 1 else f"{rule.days} days"
    where = f", {rule.storage}" if rule.storage else ""
    # No date lies beyond the end of the calendar.
    to_the_end = (date.max - lot.finished_on).days
    return (
        lot.finished_on + timedelta(days=min(rule.days, to_the_end)),
        f"{days} from finishing by {version_of(formula)}{where}",
    )
