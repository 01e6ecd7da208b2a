"""Start: a batch is begun, by a formula or without one; opens a lot.

Guarantees: what a formula says stands in where nothing is said.
"""

from ledger.domain.amounts.pours import read_pour
from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Formula, Start
from ledger.domain.entries.bench import Factor
from ledger.domain.entries.choices import LotType, ProductKind, Purpose
from ledger.domain.entries.texts import read_text
from ledger.domain.lots.codes import stem_for
from ledger.errors import InputError, RefusedError
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.store.ahead.foreseen import foresee_code, foresee_vessel
from ledger.store.engine.acts import foresee
from ledger.store.engine.foretold import Foreseen
from ledger.store.read import queries

_UNREAD: Formula | None = Formula("", 1, "lot", ProductKind.ESSENCE, Quantity(1, Measure.UL, ""))
"""Stands in for a formula that could not be read, so that what follows from it is not asked for."""


@act
def start(
    book: Book,
    how: How,
    *,
    target: str,
    product: str | None = None,
    kind: str | None = None,
    formula: str | None = None,
    trial: str | None = None,
    factors: str | None = None,
    control: str | None = None,
    repeat: str | None = None,
    pour: str | None = None,
    best_before: str | None = None,
    vessel: str | None = None,
    purpose: str | None = None,
    version: str | None = None,
    code: str | None = None,
) -> Recorded:
    """Begin a batch; opens a made lot, counted by volume."""
    asked = ((queries.formulas, formula.strip().lower()), (queries.withdrawn,)) if formula else ()
    with at_desk(book, how, Ahead(opens=product, also=asked)) as desk:
        words = desk.words
        number = words.whole(version, "version")
        master = words.read(lambda: _formula(desk, formula, number), _UNREAD)
        name = words.text(product or (master.product if master else None), "product")
        told_kind = kind or (str(master.product_kind) if master else None)
        told_purpose = purpose or ("trial" if trial else "sale")
        facts = Start(
            product=name,
            product_kind=words.needed(told_kind, ProductKind, "kind of product"),
            target=words.needed_amount(target, "target"),
            formula=master.code if master else None,
            formula_version=master.version if master else None,
            purpose=words.needed(told_purpose, Purpose, "purpose"),
            trial_group=words.text_or_none(trial, "trial"),
            pour_parts=words.read(lambda: read_pour(pour), None)
            or (master.pour_parts if master else None),
            best_before=words.day(best_before),
            vessel=words.text_or_none(vessel, "vessel"),
            factors=words.read(lambda: _factors(factors), ()),
            is_control=True if control else None,
            repeat=words.whole(repeat, "number of the repeat"),
        )
        foresee(desk.connection, lambda foreseen: _ahead(foreseen, desk, facts))
        lot = desk.open_code(code, name or "lot")
        return desk.record(facts, opens=(lot, LotType.MADE, Measure.UL))


def _ahead(foreseen: Foreseen, desk: Desk, facts: Start) -> None:
    """Foretell what is asked for a code and of a vessel, together."""
    foresee_code(foreseen, stem_for(facts.product or "lot"))
    if facts.vessel:
        foresee_vessel(foreseen, facts.vessel, desk.happened.at)


def _formula(desk: Desk, text: str | None, number: int | None) -> Formula | None:
    """Return the version asked for, else the newest that may be used, else the newest."""
    if not text:
        return None
    code = text.strip().lower()
    versions = queries.formulas(desk.connection, code)
    if not versions:
        known = ", ".join(dict.fromkeys(f.code for f in queries.formulas(desk.connection)))
        raise RefusedError(
            f"The formula {code} is not in the book; it knows {known or 'none yet'}.",
            "Load it with: pottle formula load FILE",
        )
    asked = [formula for formula in versions if number in (None, formula.version)]
    if not asked:
        raise RefusedError(
            f"There is no version {number} of the formula {code} in the book.",
            "pottle formula list shows those that are.",
        )
    gone, day = queries.withdrawn(desk.connection), desk.happened.local().date()
    usable = [
        formula
        for formula in asked
        if (formula.code, formula.version) not in gone and (formula.valid_from or day) <= day
    ]
    return (usable or asked)[-1]


def _factors(text: str | None) -> tuple[Factor, ...]:
    factors = []
    for part in (text or "").split(";"):
        if not part.strip():
            continue
        name, is_pair, level = part.partition("=")
        if not is_pair:
            raise InputError(f'"{part.strip()}" is not a factor.', "Write it as rest=48h.")
        factors.append(Factor(read_text(name, "factor"), read_text(level, "level")))
    return tuple(factors)
