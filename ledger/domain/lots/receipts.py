"""What a receipt should say, and does not.

Guarantees: missing facts are named in words, those of its material that a label declares among
them; a bottle, a closure and water need no date and no certificate. Refuses: to invent any.
"""

from ledger.domain.entries import Material, Receipt
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.masters.gaps import gaps_of


def missing_facts(facts: Receipt, material: Material | None) -> tuple[str, ...]:
    """Return what a receipt would want and has not got, in words."""
    wants: list[tuple[str, object]] = [
        ("the supplier", facts.supplier),
        ("the supplier's lot", facts.supplier_lot),
        ("the cost", facts.cost_minor is not None),
    ]
    sort = material.sort if material else None
    if sort not in (MaterialKind.BOTTLE, MaterialKind.CLOSURE, MaterialKind.WATER):
        wants.append(("the best-before date", facts.best_before))
        wants.append(("the certificate", facts.certificate))
    if sort is MaterialKind.ETHANOL:
        wants.append(("the strength", facts.abv_mpct or (material and material.abv_mpct)))
    lacking = gaps_of(material) if material else []
    return (*(what for what, value in wants if not value), *(gap.fact for gap in lacking))
