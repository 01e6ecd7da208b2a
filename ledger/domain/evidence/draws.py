"""Drawing lots for a trial from the root of the book: the order of the jars and their blind codes.

Guarantees: who knows the root and the question draws the same, with SHA-256 alone; nobody who asks
could have chosen what comes out, since the root was there before the question. Refuses: to be
random; a draw that nobody can repeat is one that nobody can check.

References:
    FIPS 180-4 (SHA-256). The blind codes are of three digits, as tasting panels use them (common
    practice, no source).
"""

from collections.abc import Callable, Sequence
from hashlib import sha256

from msgspec import Struct

from ledger.domain.entries.canonical import canonical_text
from ledger.domain.entries.trials import Plan
from ledger.domain.lots.codes import is_clear, make_code

LEAST_CODE, CODES = 100, 900
"""Blind codes are three digits and begin with none that is silent."""
MOST_DRAWN = CODES // 2
"""So many jars can be told apart without drawing long."""
CLEAR = 2
"""The rule that new plans are drawn by: as the first, but a number whose mark would end in a
character that is taken for another is left out."""


class Drawn(Struct, frozen=True):
    """One jar of a plan, as it was drawn."""

    number: int
    """Its place in the order in which jars are made, from 1."""
    evening: int
    """The evening, from 1."""
    row: int
    """Which jar of the design it is, from 0, in the design's own order."""
    blind: int
    """Its three digits."""


def question_of(plan: Plan) -> str:
    """Return what a plan asks, as canonical JSON: its product, its factors with their levels.

    The order in which suspects were named does not matter to what is asked.
    """
    return canonical_text(
        {
            "product": plan.product.lower(),
            "factors": sorted([item.name, item.usual, item.suspected] for item in plan.factors),
        }
    )


def seed_of(plan: Plan) -> bytes:
    """Return SHA-256 of the root's 32 bytes, the question and the sizes of the evenings."""
    sizes = " ".join(str(evening.jars) for evening in plan.evenings)
    return sha256(bytes.fromhex(plan.root) + f"{question_of(plan)} {sizes}".encode()).digest()


def jars_of(plan: Plan) -> tuple[Drawn, ...]:
    """Return the jars of a plan in the order in which they are made, by its own rule."""

    def fits(blind: int) -> bool:
        return plan.draw is None or is_clear(lot_code(plan, blind))

    return drawn(seed_of(plan), [evening.jars for evening in plan.evenings], fits)


def drawn(
    seed: bytes, evenings: Sequence[int], fits: Callable[[int], bool] = lambda blind: True
) -> tuple[Drawn, ...]:
    """Return the jars in the order in which they are made.

    The jars of each evening stand in the order of SHA-256(seed || "jar ROW"); the codes are the
    numbers SHA-256(seed || "code N"), N from 0, the first eight bytes modulo 900, and 100 more; a
    code that came before is left out.

    Args:
        seed: The seed.
        evenings: How many jars each evening has.
        fits: Whether a number may stand on a jar; others are left out.

    Raises:
        ValueError: More jars than codes are drawn for.
    """
    if sum(evenings) > MOST_DRAWN:
        raise ValueError("So many jars have no codes.")
    codes = _codes(seed, sum(evenings), fits)
    jars, first = [], 0
    for evening, size in enumerate(evenings, 1):
        rows = sorted(range(first, first + size), key=lambda row: _hash(seed, f"jar {row}"))
        jars += [
            Drawn(place, evening, row, codes[place - 1])
            for place, row in enumerate(rows, first + 1)
        ]
        first += size
    return tuple(jars)


def _codes(seed: bytes, count: int, fits: Callable[[int], bool]) -> list[int]:
    codes: dict[int, None] = {}
    tried = 0
    while len(codes) < count:
        number = int.from_bytes(_hash(seed, f"code {tried}")[:8], "big")
        blind = LEAST_CODE + number % CODES
        if fits(blind):
            codes.setdefault(blind)
        tried += 1
    return list(codes)


def _hash(seed: bytes, what: str) -> bytes:
    return sha256(seed + what.encode()).digest()


def lot_code(plan: Plan, blind: int) -> str:
    """Return the lot code of a jar: T and the number of the plan, its blind digits, a check.

    What is written on the jar are the digits and the check, an ending that names the lot.
    """
    return make_code(f"T{plan.number}", blind)


def mark(code: str) -> str:
    """Return what is written on a jar.

    >>> mark("T1-417-K")
    '417-K'
    """
    return code.partition("-")[2]
