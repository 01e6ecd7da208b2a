"""Formulas, for machines: listed, shown, compared, and with their amounts for a volume."""

from collections.abc import Iterable
from datetime import date

from msgspec.structs import asdict

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, RestFor
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from ledger.domain.masters.formulas import Wanted, wanted
from ledger.domain.masters.weighing import asked
from reports.json.kit.answer import (
    Amount,
    Answer,
    Figure,
    amount_of,
    amount_or_none,
    scaled_or_none,
)


class FormulaRow(Answer, frozen=True):
    """A version of a formula, as it is listed."""

    formula: str
    """Its code."""
    version: int
    """1 for the first."""
    product: str
    """Name of what it makes."""
    product_kind: ProductKind
    """What kind of thing it makes."""
    basis: Amount
    """The volume its amounts are for."""
    withdrawn: bool
    """Whether it is no longer to be followed."""


class LineTold(Answer, frozen=True):
    """What a formula calls for, for its basis volume."""

    material: str | None
    """Code of the material, of what is bought."""
    formula: str | None
    """Code of the formula, of what is made here."""
    amount: Amount
    """How much."""
    overage_percent: Figure | None
    """What is added on purpose beyond the amount."""
    tolerance_percent: Figure | None
    """How far off it may be either way."""


class StepTold(Answer, frozen=True):
    """One step of a formula with its limits."""

    verb: str
    """The bench act: add, rest, filter, look and so on."""
    words: str | None
    """What to do, for people."""
    minutes_min: int | None
    """Shortest time."""
    minutes_max: int | None
    """Longest time."""
    temp_min_c: Figure | None
    """Lowest temperature in °C."""
    temp_max_c: Figure | None
    """Highest temperature in °C."""
    pore_max_um: Figure | None
    """Coarsest medium in µm."""
    passes_min: int | None
    """Fewest passes."""
    rest_for: RestFor | None
    """What a rest is for."""
    precoat_min: Amount | None
    """Least precoat laid on the medium."""
    looked_at: LookedAt | None
    """What is to be looked at."""
    dilution: str | None
    """The dilution to look at, such as 1:7."""
    worst: Grade | None
    """The worst grade that passes."""
    age_minutes: int | None
    """Age of the sample to be looked at, since the batch was finished."""


class KeepingTold(Answer, frozen=True):
    """How long a product keeps, by how it is stored and how strong its base syrup is."""

    storage: str
    """Where it is kept, in words."""
    days: int
    """Days from finishing to best before, unopened."""
    opened_days: int | None
    """Days within which to use it once opened."""
    brix_min: Figure | None
    """The least reading of the base syrup for which this holds, in °Brix."""


class FormulaAnswer(FormulaRow, frozen=True):
    """A version of a formula, whole."""

    wanted_clarity: Grade | None
    """How it should look."""
    pour_parts: int | None
    """Parts of soda water to one part, for a syrup."""
    best_before_days: int | None
    """Days from finishing to best before."""
    yield_min_percent: Figure | None
    """Yield below which to investigate, of the basis."""
    yield_max_percent: Figure | None
    """Yield above which to investigate."""
    abv_min: Figure | None
    """Least strength it is sold at, in % vol."""
    abv_max: Figure | None
    """Greatest strength it is sold at, in % vol."""
    claim: str | None
    """What its label claims of its strength."""
    packaging: str | None
    """What it is filled into: bottle, closure and label."""
    label_text: str | None
    """What the label says besides."""
    caution: str | None
    """What the label warns of."""
    prepared_by: str | None
    """Initials of who prepared the version."""
    checked_by: str | None
    """Initials of who checked it."""
    valid_from: date | None
    """First day it may be used."""
    lines: tuple[LineTold, ...]
    """What goes in."""
    steps: tuple[StepTold, ...]
    """Its steps, in order."""
    keeping: tuple[KeepingTold, ...]
    """How long it keeps; the first row whose syrup reading is reached counts."""


class DifferenceRow(Answer, frozen=True):
    """One thing that differs between two versions."""

    what: str
    """What."""
    old: str
    """What the one says of it."""
    new: str
    """What the other says of it."""


class LineScaled(Answer, frozen=True):
    """What a volume calls for, of one thing."""

    material: str | None
    """Code of the material, of what is bought."""
    formula: str | None
    """Code of the formula, of what is made here."""
    amount: Amount
    """How much, exactly."""
    asked: Amount
    """The same, rounded to what can be weighed or measured."""
    least: Amount | None
    """The least that the tolerance allows."""
    most: Amount | None
    """The most that the tolerance allows."""


class ScaledAnswer(Answer, frozen=True):
    """A formula's amounts for a volume."""

    formula: str
    """Its code."""
    version: int
    """Its version."""
    target: Amount
    """The volume."""
    lines: tuple[LineScaled, ...]
    """What goes in."""


def formula_row(formula: Formula, *, withdrawn: bool) -> FormulaRow:
    """Return a version of a formula, as it is listed."""
    return FormulaRow(
        formula=formula.code,
        version=formula.version,
        product=formula.product,
        product_kind=formula.product_kind,
        basis=_amount(formula.basis),
        withdrawn=withdrawn,
    )


def formula_answer(formula: Formula, *, withdrawn: bool) -> FormulaAnswer:
    """Return a version of a formula, whole."""
    return FormulaAnswer(
        **asdict(formula_row(formula, withdrawn=withdrawn)),
        wanted_clarity=formula.wanted_clarity,
        pour_parts=formula.pour_parts,
        best_before_days=formula.best_before_days,
        yield_min_percent=scaled_or_none(formula.yield_min_mpct, 3),
        yield_max_percent=scaled_or_none(formula.yield_max_mpct, 3),
        abv_min=scaled_or_none(formula.abv_min_mpct, 3),
        abv_max=scaled_or_none(formula.abv_max_mpct, 3),
        claim=formula.claim,
        label_text=formula.label_text,
        caution=formula.caution,
        packaging=formula.packaging,
        prepared_by=formula.prepared_by,
        checked_by=formula.checked_by,
        valid_from=formula.valid_from,
        lines=tuple(map(_line, formula.lines)),
        steps=tuple(map(_step, formula.steps)),
        keeping=tuple(map(_keeping, formula.keeping)),
    )


def difference_rows(rows: Iterable[tuple[str, ...]]) -> list[DifferenceRow]:
    """Return what differs between two versions: what, in the old one, in the new one."""
    return [DifferenceRow(what, old, new) for what, old, new in rows]


def scaled_answer(formula: Formula, target: Quantity) -> ScaledAnswer:
    """Return a formula's amounts for a volume."""
    lines = tuple(map(_scaled, wanted(formula, target.amount)))
    return ScaledAnswer(formula.code, formula.version, _amount(target), lines)


def _amount(quantity: Quantity) -> Amount:
    return amount_of(quantity.amount, quantity.measure)


def _line(line: FormulaLine) -> LineTold:
    return LineTold(
        material=line.material,
        formula=line.formula,
        amount=_amount(line.amount),
        overage_percent=scaled_or_none(line.overage_mpct, 3),
        tolerance_percent=scaled_or_none(line.tolerance_mpct, 3),
    )


def _step(step: FormulaStep) -> StepTold:
    return StepTold(
        verb=step.verb,
        words=step.words,
        minutes_min=step.minutes_min,
        minutes_max=step.minutes_max,
        temp_min_c=scaled_or_none(step.temp_min_mdegc, 3),
        temp_max_c=scaled_or_none(step.temp_max_mdegc, 3),
        pore_max_um=scaled_or_none(step.pore_max_nm, 3),
        passes_min=step.passes_min,
        rest_for=step.rest_for,
        precoat_min=_amount(step.precoat_min) if step.precoat_min else None,
        looked_at=step.looked_at,
        dilution=step.dilution,
        worst=step.worst,
        age_minutes=step.age_minutes,
    )


def _keeping(row: Keeping) -> KeepingTold:
    return KeepingTold(row.storage, row.days, row.opened_days, scaled_or_none(row.brix_min_mpct, 3))


def _scaled(item: Wanted) -> LineScaled:
    return LineScaled(
        material=item.called.material,
        formula=item.called.formula,
        amount=amount_of(item.amount, item.measure),
        asked=amount_of(asked(item), item.measure),
        least=amount_or_none(item.least, item.measure),
        most=amount_or_none(item.most, item.measure),
    )
