"""Receiving: a delivery becomes a lot.

Guarantees: the lot is counted in the measure in which the delivery was written. Refuses: unknown
materials; facts that are missing stay missing.
"""

from ledger.domain.amounts.money import digits_of, digits_told
from ledger.domain.entries import Judge, Material, Receipt
from ledger.domain.entries.choices import FoodGrade, LotType, Verdict
from ledger.errors import RefusedError, did_you_mean
from ledger.service.desk.act import Desk, act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.foresight import Ahead
from ledger.service.masters.material import read_strength
from ledger.store.read import queries


@act
def receive(
    book: Book,
    how: How,
    *,
    material: str,
    amount: str,
    supplier: str | None = None,
    supplier_lot: str | None = None,
    cost: str | None = None,
    best_before: str | None = None,
    certificate: str | None = None,
    density: str | None = None,
    abv: str | None = None,
    food_grade: str | None = None,
    duty: str | None = None,
    document: str | None = None,
    code: str | None = None,
    hold: str | None = None,
) -> Recorded:
    """Record a delivery; opens a received lot."""
    with at_desk(book, how, Ahead(material=material, party=supplier)) as desk:
        words = desk.words
        digits = digits_of(desk.currency)
        known = words.read(lambda: _known_material(desk, material), None)
        facts = Receipt(
            material=known.code if known else material,
            amount=words.amount(amount, known.sort if known else None),
            supplier=words.text_or_none(supplier, "supplier"),
            supplier_lot=words.text_or_none(supplier_lot, "supplier's lot"),
            cost_minor=words.scaled(cost, 10**digits, "", "cost"),
            best_before=words.day(best_before),
            certificate=words.text_or_none(certificate, "certificate"),
            density_mg_per_l=words.scaled(density, 1_000_000, "g/mL", "density"),
            abv_mpct=words.read(lambda: read_strength(abv), None),
            food_grade=words.one_of(food_grade, FoodGrade, "food grade"),
            duty_minor=words.scaled(duty, 10**digits, "", "duty"),
            document=words.text_or_none(document, "document"),
            cost_digits=digits_told(digits) if cost or duty else None,
        )
        name = desk.open_code(code, known.name if known else material)
        recorded = desk.record(facts, opens=(name, LotType.RECEIVED, facts.amount.measure))
        if hold:
            desk.record(Judge(Verdict.HOLD), lot=name)
        return recorded


def _known_material(desk: Desk, text: str) -> Material:
    code = text.strip().lower()
    material = queries.material(desk.connection, code)
    if material is None:
        known = queries.material_codes(desk.connection)
        raise RefusedError(
            f"The material {code} is not in the book; it knows {', '.join(known) or 'none yet'}."
            f"{did_you_mean(code, known)}",
            f'Add it with: pottle material add {code} --name "NAME" --kind KIND',
        )
    return material
