"""How volumes of a batch are compared, and how that is said.

Guarantees: a volume is well over another only if reading and warmth cannot account for it.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, Quantity, reckoned, show, show_apart
from ledger.domain.entries import Facts
from ledger.domain.entries.fields import specs
from ledger.domain.lots.state import LotState, most_it_can_hold_ul
from ledger.domain.rules.finding import Finding, impossible, remark

SLACK = 50
"""One part in so many is put down to reading and warmth: spirit swells by about 1.1 % in 10 °C
(common practice, no source)."""
MIXING = 20
"""Spirit and water lose less than one part in so many when they mix (common practice, no source).
"""
PLAIN_NAMES = {
    "basis": "basis of a formula",
    "target": "volume aimed at",
    "volume_in": "volume put on",
    "volume_out": "volume that ran through",
    "first_runnings": "volume of the first runnings",
    "precoat": "weight of the precoat",
    "drawn": "volume drawn",
    "heel": "volume of the heel",
    "volume": "volume of the batch",
    "used": "volume used to make it up",
    "size": "size of a bottle",
    "in_cake": "volume held in the cake",
    "waste": "volume spilt or thrown away",
    "dose": "dose of an essence",
    "dose_into": "volume of syrup that a dose goes into",
}
"""What the amounts of the bench are, in words."""


def amounts_of(facts: Facts) -> Iterator[tuple[str, Quantity]]:
    """Yield the amounts that facts state, with the names of their fields."""
    facts_class: type = type(facts)
    for spec in specs(facts_class):
        value = getattr(facts, spec.name)
        if isinstance(value, Quantity):
            yield spec.name, value


def are_volumes(*amounts: Quantity) -> bool:
    """Return whether all the amounts are volumes."""
    return all(amount.measure is Measure.UL for amount in amounts)


def is_well_over(amount: int, most: int) -> bool:
    """Return whether an amount is more than `most` by more than reading and warmth explain.

    >>> is_well_over(459_000, 450_000), is_well_over(459_001, 450_000)
    (False, True)
    """
    return amount * SLACK > most * (SLACK + 1)


def was_there(state: LotState, volume: Quantity, did: str) -> Iterator[Finding]:
    """Yield what is to say when a volume came out of a lot that held less."""
    most = most_it_can_hold_ul(state)
    if is_well_over(volume.amount, most):
        yield impossible(
            "volume",
            f"{volume.written} {did}, but {state.code} held less: {there_was(state, most)}.",
            "Record what else went in first: pottle add ...",
        )
    elif volume.amount > most:
        yield remark(
            "volume",
            f"{volume.written} {did}, a little more than was in {state.code}: "
            f"{there_was(state, most, volume.amount)}.",
            "Read it again at the temperature of the other volumes if it matters.",
        )


def there_was(state: LotState, most: int, other_ul: int | None = None) -> str:
    """Say what a lot held, as the last part of a sentence.

    Args:
        state: The lot.
        most: The most it can have held, in µL.
        other_ul: A volume from which that must look different where it is.
    """
    told, *_ = show_apart(Measure.UL, most, most if other_ul is None else other_ul)
    if not state.solids_mg:
        about = show(reckoned(most), Measure.UL)
        return f"the book reckons about {about}" if state.was_reckoned else f"the book says {told}"
    return (
        f"{show(state.on_hand_then, Measure.UL)} of liquid and "
        f"{show(state.solids_mg, Measure.MG)} of solids make at most {told}"
    )
