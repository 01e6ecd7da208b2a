"""The usual slips of the trade, remarked on.

Guarantees: each remark says what it may lead to. Refuses: nothing; what is merely unusual is
recorded and said.
"""

from collections.abc import Iterator

from ledger.domain.entries import (
    Add,
    Draft,
    Filter,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.words import (
    Cake,
    MaterialKind,
    Measured,
    ProductKind,
    RestFor,
    RinseTo,
)
from ledger.domain.lots import LotState, latest
from ledger.domain.quantity import Measure, show
from ledger.domain.rules.finding import Finding, Rule, remark
from ledger.domain.rules.in_words import degrees
from ledger.domain.rules.volumes import is_well_over
from ledger.domain.scene import Scene
from ledger.domain.units import find_unit

WARMER_MDEGC = 5_000
"""How much a liquid may warm on the way to the filter (common practice, no source)."""
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


def no_water_on_carbonate(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Water on a clarifier turns alkaline and dulls the flavour."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Add | MakeUp | Rinse):
        return
    sorts = {item.code: item.sort for item in scene.control.inputs}
    if sorts.get(facts.source) is not MaterialKind.WATER or not _on_powder(facts, lot, sorts):
        return
    yield remark(
        "water on carbonate",
        f"{facts.source} is water, and there is clarifier in {lot.code} or in its cake: watery "
        "liquid takes up some of it, turns alkaline and may throw a haze.",
        "Rinse with the spirit that the batch is made of; look at a diluted sample.",
    )


def _on_powder(
    facts: Add | MakeUp | Rinse, lot: LotState, sorts: dict[str, MaterialKind | None]
) -> bool:
    is_there = False
    for entry in lot.entries:
        match entry.draft.facts:
            case Add(source=source) if sorts.get(source) is MaterialKind.CLARIFIER:
                is_there = True
            case Filter() if not isinstance(facts, Rinse):
                is_there = False
            case _:
                pass
    return is_there


def filtered_cold(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was chilled is filtered before it warms."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Filter) or facts.temp_mdegc is None:
        return
    chilled: int | None = None
    for entry in lot.entries:
        match entry.draft.facts:
            case Rest(purpose=RestFor.CHILL, temp_mdegc=int(temp)):
                chilled = temp
            case Filter():
                chilled = None
            case _:
                pass
    if chilled is not None and facts.temp_mdegc > chilled + WARMER_MDEGC:
        yield remark(
            "warmed",
            f"{lot.code} was chilled at {degrees(chilled)} and filtered at "
            f"{degrees(facts.temp_mdegc)}: what the cold threw may have dissolved again.",
            "Look at it cold before it leaves.",
        )


def first_runnings_go_back(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """The first runnings of a fresh cake carry fines."""
    facts = draft.facts
    if not isinstance(facts, Filter) or facts.pass_no != 1 or facts.first_runnings:
        return
    if facts.cake is Cake.SAME or facts.cake_of:
        return
    yield remark(
        "first runnings",
        "No first runnings were returned on the first pass: they carry fines and fibres.",
        "Return them until they run bright, and say how much with --first.",
    )


def base_is_read_first(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Alcohol falsifies a reading of sugar: the base is read before the essence goes in."""
    facts, lot = draft.facts, scene.lot
    if lot is None or not isinstance(facts, Measurement) or facts.what is not Measured.BRIX:
        return
    strong = [
        item.code
        for item in scene.control.inputs
        if item.product_kind in SPIRITUOUS or item.sort is MaterialKind.ETHANOL
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
            "Check which gallon is meant; strike the start if it is wrong: pottle strike ...",
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
        one = find_unit(name, piece=name, before=None, fluid_ounce="US").smallest
        times = round(volume_ul / one)
        off = abs(volume_ul - times * one)
        if 1 <= times <= MOST_GALLONS and off * 500 <= volume_ul:
            near.append((off, name))
    return min(near)[1] if near else None


def vessel_is_clean(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A vessel that held another flavour is cleaned before it is used again."""
    facts, held = draft.facts, scene.control.last_held
    if held is None or not isinstance(facts, Start | Rest):
        return
    start = facts if isinstance(facts, Start) else latest(scene.lot, Start) if scene.lot else None
    if start is None or held.lot == draft.lot or held.product_kind is ProductKind.BASE_SYRUP:
        return
    if held.product != start.product:
        yield remark(
            "vessel",
            f"{held.vessel} last held {held.product} ({held.lot}) and no cleaning of it is in the "
            "book since.",
            f'If it was cleaned: pottle clean "{held.vessel}" --how HOW --at WHEN',
        )


RULES: tuple[Rule, ...] = (
    stays_at_volume,
    no_water_on_carbonate,
    filtered_cold,
    first_runnings_go_back,
    base_is_read_first,
    made_up_at_twenty,
    same_gallon,
    vessel_is_clean,
)
