"""A delivery: told in one line, or asked for at a terminal.

Guarantees: it asks only where material or amount is left out, and then for all that a delivery
should say; what is not known is left out with Enter. Refuses: to ask where nobody sits.
"""

from dataclasses import asdict, dataclass, replace

from cli.kit.ask import ask, can_ask, missing
from cli.kit.call import Call
from cli.kit.record import record
from cli.kit.tables import print_lines
from cli.screens.bench.beside import UNITS
from cli.screens.bench.words import with_unit
from ledger.domain.amounts.quantity import Measure, parse_quantity
from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.errors import InputError, did_you_mean
from ledger.service.bench.receive import receive
from ledger.service.desk.book import Book
from ledger.service.desk.reader import COUNTED
from ledger.service.desk.times import read_day
from ledger.service.masters.material import materials, read_strength

UNDATED = frozenset({MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.WATER})
"""Kinds of material of which no date is asked."""
WEIGHED = frozenset(
    {
        *(MaterialKind.CLARIFIER, MaterialKind.SUGAR, MaterialKind.ACID, MaterialKind.GUM),
        *(MaterialKind.PRESERVATIVE, MaterialKind.COLOUR),
    }
)
"""Kinds of material that usually come by weight (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Delivery:
    """A delivery as it is written."""

    material: str | None = None
    amount: str | None = None
    supplier: str | None = None
    supplier_lot: str | None = None
    cost: str | None = None
    best_before: str | None = None
    certificate: str | None = None
    density: str | None = None
    abv: str | None = None
    food_grade: str | None = None
    duty: str | None = None
    document: str | None = None
    hold: str | None = None
    code: str | None = None


def received(call: Call, told: Delivery) -> None:
    """Record a delivery, what is missing asked for at a terminal."""
    if not (told.material and told.amount):
        if call.json or not can_ask():
            raise missing(f"argument '{'AMOUNT' if told.material else 'MATERIAL'}'")
        told = _asked(call.book(), told)
    words = {**asdict(told), "material": told.material or "", "amount": told.amount or ""}
    record(call, receive, **words)


def _asked(book: Book, told: Delivery) -> Delivery:
    """Return a delivery with what is missing asked for."""
    known = {item.code: item for item in materials(book)}
    print_lines(["What is not known is left out with Enter; Ctrl-D ends, with nothing recorded."])
    code = told.material or ask(
        f"Material ({', '.join(known)})", is_needed=True, check=lambda text: _known(text, known)
    )
    sort = _known(code, known).sort
    unit = _unit(sort)
    amount = told.amount or ask(
        f"How much, in {unit.strip()} or with its unit",
        is_needed=True,
        check=lambda text: parse_quantity(with_unit(text, unit), counted=sort in COUNTED),
    )
    return _with_papers(replace(told, material=code, amount=with_unit(amount, unit)), sort)


def _with_papers(told: Delivery, sort: MaterialKind) -> Delivery:
    is_dated = sort not in UNDATED
    is_spirit = sort is MaterialKind.ETHANOL
    return replace(
        told,
        supplier=told.supplier or _or_none("Supplier"),
        supplier_lot=told.supplier_lot or _or_none("Their lot"),
        cost=told.cost or _or_none("Cost in all"),
        best_before=told.best_before
        or (ask("Best before, as 2027-06-30", check=read_day) or None if is_dated else None),
        certificate=told.certificate or (_or_none("Certificate") if is_dated else None),
        abv=told.abv
        or (
            ask("Strength of this lot in % vol", check=read_strength) or None if is_spirit else None
        ),
    )


def _or_none(question: str) -> str | None:
    return ask(question) or None


def _known(text: str, known: dict[str, Material]) -> Material:
    found = known.get(text.strip().lower())
    if found is None:
        raise InputError(
            f"The material {text} is not in the book.{did_you_mean(text, known)}",
            "Add it first, in another window: pottle material add CODE --kind KIND",
        )
    return found


def _unit(sort: MaterialKind) -> str:
    """Return what a bare number of a kind of material is counted in."""
    if sort in COUNTED:
        return UNITS[Measure.UEACH]
    return UNITS[Measure.MG if sort in WEIGHED else Measure.UL]
