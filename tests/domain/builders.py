"""Small builders for the domain's tests: say what matters, the rest is an ordinary day."""

from datetime import UTC, datetime, timedelta
from typing import Any, TypeVar, cast

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Answer,
    Bottle,
    Cases,
    Check,
    Clean,
    Closing,
    Complaint,
    Contact,
    Count,
    Decant,
    Deviation,
    Draft,
    Entry,
    Equipment,
    Facts,
    Filter,
    Finish,
    Foretold,
    Forget,
    Formula,
    House,
    Judge,
    Labels,
    Limit,
    Look,
    MakeUp,
    Material,
    Measurement,
    Move,
    Note,
    Opened,
    Party,
    Person,
    Receipt,
    Rest,
    Rinse,
    Start,
    Strike,
    When,
    Withdrawal,
)
from ledger.domain.entries.choices import (
    Bound,
    Grade,
    KnownBy,
    LimitBasis,
    LimitUnit,
    LookedAt,
    LotType,
    MaterialKind,
    Measured,
    MoveAs,
    Outcome,
    Precision,
    ProductKind,
    Reached,
    RestFor,
    RinseTo,
    Verdict,
)
from ledger.domain.entries.evidence import Named
from ledger.domain.lots.dates import Dates
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import LotState
from tests.planned import PLAN

FactsT = TypeVar("FactsT", bound=Facts)

NOW = datetime(2026, 3, 2, 12, 0, tzinfo=UTC)
"""The book's clock in these tests: noon of a Monday."""


def at(hour: int, minute: int = 0, second: int = 0, *, day: int = 2) -> datetime:
    return datetime(2026, 3, day, hour, minute, second, tzinfo=UTC)


def when(moment: datetime = NOW, offset_min: int = 0, word: str = "exact") -> When:
    return When(moment, offset_min, Precision(word))


def ml(amount: float) -> Quantity:
    return Quantity(round(amount * 1000), Measure.UL, f"{amount:g} mL")


def grams(amount: float) -> Quantity:
    return Quantity(round(amount * 1000), Measure.MG, f"{amount:g} g")


def pieces(count: int) -> Quantity:
    return Quantity(count * 1_000_000, Measure.UEACH, str(count))


_EXAMPLES: tuple[Facts, ...] = (
    House("Notreal Fountain Works", "EUR"),
    Person("AB", "Ada Notreal"),
    Material("oil", "Orange oil", MaterialKind.OIL),
    Formula("orange", 1, "Orange essence", ProductKind.ESSENCE, ml(450)),
    Receipt("oil", ml(100)),
    Start("Orange essence", ProductKind.ESSENCE, ml(450)),
    Add("O-1", ml(30)),
    Rest(RestFor.MACERATE, at(9)),
    Filter(1, "paper", ml(445), ml(430)),
    Rinse("O-1", ml(30), ml(27), RinseTo.BATCH),
    Decant(ml(420)),
    Look(Grade.BRIGHT, LookedAt.NEAT),
    Measurement(Measured.BRIX, 60_100_000, "°Bx", "60.1"),
    MakeUp(ml(450), "O-1", ml(20)),
    Finish(ml(448)),
    Bottle("E-1", 15, ml(30), ml(450)),
    Labels(16, 15, 1),
    Cases(1, 6, 1),
    Move(MoveAs.SALE, pieces(6), "Bridge Street Stall"),
    Judge(Verdict.RELEASE),
    Check(),
    Complaint("cloudy"),
    Count(ml(440)),
    Note("smells of the peel"),
    Deviation("on hand", "Something was found."),
    Clean("jar 1", "hot water, twice"),
    Equipment("scale 1", "set to zero"),
    Strike(),
    Forget(party="P1", entries=(Named(5, is_kept=False),)),
    Party("Bridge Street Stall"),
    Limit(
        "safrole", "safrole", Bound.AT_MOST, 0, LimitUnit.MG_PER_KG, LimitBasis.IN_PRODUCT,
        "US", "21 CFR 189.180", KnownBy.READ,
    ),
    Withdrawal("orange", 1),
    Contact("Bridge Street Stall", Reached.SPOKEN),
    Closing("the orange oil was old"),
    Answer(7, Outcome.EXPLAINED),
    Foretold("orange", clear_low_mpct=74_400, glass_low_milli=3900, glass_high_milli=86_000),
    PLAN,
)  # fmt: skip
EXAMPLES: dict[type[Facts], Facts] = {type(facts): facts for facts in _EXAMPLES}
"""An ordinary example of each kind of facts."""


def make(facts_class: type[FactsT], **changes: Any) -> FactsT:
    """Return the example of a kind with some fields changed."""
    return replace(cast(FactsT, EXAMPLES[facts_class]), **changes)


def draft(facts: Facts, lot: str | None = "E-1", **changes: Any) -> Draft:
    """Return a draft by AB, now, about the lot E-1."""
    return Draft(**{"facts": facts, "lot": lot, "happened": when(), "by": "AB", **changes})


def entry(facts: Facts, seq: int = 1, moment: datetime = NOW, **changes: Any) -> Entry:
    """Return an entry recorded when it happened, in its own chain of corrections."""
    told = draft(facts, **{"happened": when(moment), **changes})
    return Entry(seq=seq, draft=told, recorded_at=told.happened.at, stands_for=seq)


OPENERS: dict[LotType, type[Facts]] = {
    LotType.RECEIVED: Receipt,
    LotType.MADE: Start,
    LotType.RINSE: Rinse,
    LotType.PACKED: Bottle,
}
BEGUN = at(8, day=1)
"""When the lots of these tests were opened."""


def lot(
    code: str = "E-1",
    *later: Facts | Entry,
    kind: str = "made",
    measure: Measure = Measure.UL,
    on_hand: int = 450_000,
    opening: Facts | Entry | None = None,
    **changes: Any,
) -> LotState:
    """Return a lot: opened by entry 1 on the first of March, with an entry each ten minutes."""
    opened = Opened(code, LotType(kind), measure)
    told = [opening or make(OPENERS[opened.lot_type]), *later]
    entries = tuple(
        item
        if isinstance(item, Entry)
        else entry(item, number, BEGUN + timedelta(minutes=10 * (number - 1)), lot=code)
        for number, item in enumerate(told, start=1)
    )
    cells = {"on_hand": on_hand, "on_hand_then": on_hand, **changes}
    cells["dates"] = Dates(cells.pop("best_before", None))
    return LotState(seq=1, opened=opened, entries=entries, **cells)


def oil(code: str = "O-1", on_hand: int = 100_000, **changes: Any) -> LotState:
    """Return a received lot of a liquid."""
    cells = {"material": make(Material), **changes}
    return lot(code, kind="received", on_hand=on_hand, **cells)


def powder(code: str = "C-1", on_hand: int = 100_000, **changes: Any) -> LotState:
    """Return a received lot of a solid, whose density nobody knows."""
    carbonate = Material("carb", "Carbonate", MaterialKind.CLARIFIER)
    cells = {"material": carbonate, "opening": Receipt("carb", grams(100)), **changes}
    return lot(code, kind="received", measure=Measure.MG, on_hand=on_hand, **cells)


def packed(code: str = "P-1", *later: Facts | Entry, **changes: Any) -> LotState:
    """Return a packed lot of fifteen bottles."""
    cells = {"on_hand": 15_000_000, **changes}
    return lot(code, *later, kind="packed", measure=Measure.UEACH, **cells)


def struck(state: LotState) -> LotState:
    """Return a lot whose opening entry was struck."""
    return replace(state, entries=state.entries[1:])


def scene(state: LotState | None = None, *sources: LotState, **changes: Any) -> Scene:
    """Return a scene at noon with AB and CD in the book."""
    cells = {"people": frozenset({"AB", "CD"}), "materials": frozenset({"oil"}), **changes}
    return Scene(now=NOW, lot=state, sources=sources, **cells)
