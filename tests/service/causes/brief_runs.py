"""Runs in brief and how they were found, in tests that need no book."""

from msgspec.structs import replace

from ledger.domain.entries.choices import Grade, ProductKind, Purpose
from ledger.store.read.runs import Found, Run, Seen


def run(lot: int, product: str = "Syrup", kind: str = "syrup", **values: object) -> Run:
    made = Run(
        lot=lot,
        code=f"L-{lot}",
        product=product,
        product_kind=ProductKind(kind),
        formula=None,
        purpose=Purpose.SALE,
        trial_group=None,
        maker="AB",
        began_at=f"2026-{lot:06}",
    )
    return replace(made, **values)


def found(looks: dict[int, str], **values: object) -> Found:
    seen = {lot: [Seen(Grade(grade), "2026-09")] for lot, grade in looks.items()}
    return replace(Found(seen, {}, {}, frozenset(), {}), **values)
