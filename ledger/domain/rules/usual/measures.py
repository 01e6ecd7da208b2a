"""The usual slips of measuring, remarked on: too much volume, late Brix, warmth, the other gallon.

Guarantees: each remark says what it may lead to, and looks at the batch as it was when it was
measured.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import Measure, show
from ledger.domain.amounts.units import find_unit
from ledger.domain.entries import Draft, MakeUp, Measurement, Receipt, Rinse, Start
from ledger.domain.entries.choices import MaterialKind, Measured, ProductKind, RinseTo
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import latest
from ledger.domain.rules.always.volumes import is_well_over
from ledger.domain.rules.figures import degrees
from ledger.domain.rules.finding import THIS_ENTRY, Finding, Rule, asks, remark

READ_AT_MDEGC = 20_000
"""The temperature at which volumes of spirit are read (OIML R 22: reference temperature 20 °C)."""
OFF_MDEGC = 5_000
"""How far off it is worth saying: spirit swells by 0.11 % a degree (common practice, no source)."""
GALLONS = {"US gal": "US gallons", "imp gal": "imperial gallons"}
"""The two gallons, with their names in words."""
MOST_GALLONS = 10
"""Up to how many gallons a volume is taken for a number of them."""
SPIRITUOUS = frozenset(
    {
        ProductKind.ESSENCE,
        ProductKind.WASHED_ESSENCE,
        ProductKind.BLEND,
        ProductKind.MACERATE,
        ProductKind.REWORK,
    }
)
"""Kinds of product that are made of strong spirit."""


def cost_is_something(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A cost of nothing may be what a shell left of a cost with a sign of money."""
    facts = draft.facts
    if isinstance(facts, Receipt) and facts.cost_minor == 0 and draft.corrects is None:
        yield asks(
            "cost",
            "The cost is 0.00. A shell makes 0.00 of $20.00, taking $2 for a name of its own.",
            "Write the cost without a sign, as 20.00; if it cost nothing, say so with --because.",
        )


def stays_at_volume(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A rinse or a making up beyond the volume aimed at makes the batch weaker."""
    facts, lot = draft.facts, scene.lot
    start = latest(lot, Start) if lot else None
    if lot is None or start is None:
        return
    match facts:
        case Rinse(went_to=RinseTo.BATCH, volume_out=out):
            total = lot.on_hand_then + out.amount
            todo = "Keep a rinse apart instead: pottle rinse ... --to apart"
        case MakeUp(volume=volume):
            total = volume.amount
            todo = f"Read it again; if it is so, measure it: pottle measure {lot.code} abv READING"
        case _:
            return
    if is_well_over(total, start.target.amount):
        yield remark(
            "over-volume",
            f"{lot.code} now holds {show(total, Measure.UL)}, more than the "
            f"{show(start.target.amount, Measure.UL)} aimed at: weaker than meant.",
            todo,
        )


def base_is_read_first(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Alcohol falsifies a reading of sugar: the base is read before the essence goes in."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Measurement) or facts.what is not Measured.BRIX:
        return
    moved = (posting for entry in scene.so_far(draft) for posting in entry.postings)
    there = {posting.source for posting in moved if posting.target == lot.code}
    strong = [
        source.code
        for source in scene.control.inputs
        if source.code in there
        and (source.product_kind in SPIRITUOUS or source.sort is MaterialKind.ETHANOL)
    ]
    if strong:
        yield remark(
            "Brix after essence",
            f"{', '.join(strong)} with its alcohol is in {lot.code} already: a refractometer "
            "reads too high and a hydrometer too low.",
            "Take the base syrup's reading before the essence goes in.",
        )


def made_up_at_twenty(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A volume is made up near the temperature at which it is read."""
    facts = draft.facts
    if not isinstance(facts, MakeUp) or facts.temp_mdegc is None:
        return
    if abs(facts.temp_mdegc - READ_AT_MDEGC) > OFF_MDEGC:
        turns = "short" if facts.temp_mdegc > READ_AT_MDEGC else "over"
        yield remark(
            "make-up temperature",
            f"It was made up at {degrees(facts.temp_mdegc)}: at 20 °C the volume is {turns}, for "
            "spirit about 0.11 % a degree.",
            "Make up to volume at about 20 °C.",
        )


def same_gallon(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A target in one gallon by a formula in the other is most likely a slip."""
    facts, formula = draft.facts, scene.control.formula
    if not isinstance(facts, Start) or formula is None:
        return
    meant, got = gallons(formula.basis.amount), gallons(facts.target.amount)
    if meant and got and meant != got:
        yield remark(
            "gallon",
            f"{facts.target.written} is a number of {GALLONS[got]}, but the basis of "
            f"{formula.code}, {formula.basis.written}, is one of {GALLONS[meant]}.",
            "Check which gallon is meant; if it is wrong, strike the start: pottle strike "
            f'{THIS_ENTRY} --because "the other gallon"',
        )


def gallons(volume_ul: int) -> str | None:
    """Return the gallon of which a volume is a small whole number, or None.

    Six US gallons are nearly five imperial ones: the nearer counts.

    >>> gallons(3_785_412), gallons(9_092_000), gallons(4_000_000)
    ('US gal', 'imp gal', None)
    >>> gallons(22_712_471), gallons(22_730_450)
    ('US gal', 'imp gal')
    """
    near = []
    for name in GALLONS:
        one = find_unit(name, piece=name).smallest
        times = round(volume_ul / one)
        off = abs(volume_ul - times * one)
        if 1 <= times <= MOST_GALLONS and off * 500 <= volume_ul:
            near.append((off, name))
    return min(near)[1] if near else None


RULES: tuple[Rule, ...] = (
    cost_is_something,
    stays_at_volume,
    base_is_read_first,
    made_up_at_twenty,
    same_gallon,
)
