"""One turn after another of an invented maker's work, entry by entry, for books of any size.

Guarantees: a turn is one batch of essence and the syrups and bottles made with it; it states every
amount it moves. Refuses: to ask a book; what it must know of lots before it keeps itself.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Bottle,
    Count,
    Draft,
    Entry,
    Facts,
    Filter,
    Finish,
    Judge,
    Level,
    Look,
    Move,
    Opened,
    Posting,
    Receipt,
    Rinse,
    Start,
    When,
)
from ledger.domain.entries.choices import (
    AddedAs,
    Grade,
    LookedAt,
    LotType,
    MoveAs,
    Place,
    ProductKind,
    RinseTo,
    Verdict,
)
from ledger.domain.lots.codes import make_code

EACH = 1_000_000
STOCK: dict[str, tuple[str, Measure, int]] = {
    "oil": ("SOO", Measure.UL, 12_000_000),
    "lemon": ("LO", Measure.UL, 5_000_000),
    "spirit": ("NS", Measure.UL, 9_000_000_000),
    "carbonate": ("LMC", Measure.MG, 100_000_000),
    "sugar": ("WS", Measure.MG, 40_000_000_000),
    "water": ("WTR", Measure.UL, 60_000_000_000),
    "acid": ("CA", Measure.MG, 100_000_000),
    "bottle": ("BTL", Measure.UEACH, 40_000 * EACH),
    "cap": ("CAP", Measure.UEACH, 40_000 * EACH),
}
"""Material: stem of its codes, measure, amount of a delivery."""
PARTIES = ("Bridge Street Stall", "The Pretend Bar", "Cafe Notreal", "Harbour Kiosk")
_UNITS = {Measure.UL: "µL", Measure.MG: "mg", Measure.UEACH: "each"}


def measured(amount: int, measure: Measure = Measure.UL) -> Quantity:
    """Return an amount as a maker might have written it."""
    shown = amount // EACH if measure is Measure.UEACH else amount
    return Quantity(amount, measure, f"{shown} {_UNITS[measure]}")


@dataclass(slots=True)
class Season:
    """The maker at work; `turn` does one batch of essence and all that comes of it."""

    seq: int
    """Number of the next entry."""
    now: datetime
    """When it is written."""
    lots: int = 0
    """How many lots there are."""
    chance: Random = field(default_factory=lambda: Random(1885))
    is_used_up: bool = False
    """Whether nothing of a turn is left at its end."""
    _ordinals: dict[str, int] = field(default_factory=dict)
    _shelf: dict[str, tuple[str, int]] = field(default_factory=dict)
    """Material: code of the lot in use, and what is left in it."""
    _liquor: str | None = None
    """Rinse liquor that waits for the next batch."""
    _leftover: str | None = None
    """A syrup of which a little is left for another."""

    def turn(self, lots: int) -> Iterator[Entry]:
        """Yield the entries of one turn, which ends early when there are so many lots."""
        for entry in self._turn():
            yield entry
            if self.lots >= lots and entry.kind in ("finish", "judge", "receipt"):
                return

    def _turn(self) -> Iterator[Entry]:
        essence = self._new_code("OE")
        yield from self._essence(essence)
        for _ in range(3):
            yield from self._syrup_and_bottles(essence)
        if self.is_used_up:
            yield self._entry(Count(measured(0)), essence, level=0)

    def _essence(self, code: str) -> Iterator[Entry]:
        start = Start("Orange essence", ProductKind.ESSENCE, measured(5_000_000))
        yield self._entry(start, code, opens=Opened(code, LotType.MADE, Measure.UL))
        yield from self._addition(code, "oil", 250_000)
        yield from self._addition(code, "lemon", 80_000)
        yield from self._addition(code, "carbonate", 150_000)
        yield from self._addition(code, "spirit", 4_700_000)
        if self._liquor:
            yield self._added(code, self._liquor, 180_000, Measure.UL, AddedAs.RINSE_LIQUOR)
            self._liquor = None
        passed = Filter(1, "paper", measured(4_900_000), measured(4_800_000), 20_000, 20_000)
        yield self._entry(passed, code, level=4_800_000)
        if self.chance.random() < 0.3:
            yield from self._rinse(code)
        yield self._look(code)
        yield self._entry(Finish(measured(4_790_000)), code, level=4_790_000)
        yield self._entry(Judge(Verdict.RELEASE), code)

    def _rinse(self, essence: str) -> Iterator[Entry]:
        yield from self._delivered("spirit", 200_000)
        code, spirit = self._new_code("RL"), self._draw("spirit", 200_000)
        facts = Rinse(spirit, measured(200_000), measured(190_000), RinseTo.APART)
        moved = (
            Posting(spirit, code, None, 200_000, 190_000),
            Posting(essence, code, None, 0, 0),
        )
        opens = Opened(code, LotType.RINSE, Measure.UL)
        yield self._entry(facts, essence, opens=opens, moved=moved)
        self._liquor = code

    def _syrup_and_bottles(self, essence: str) -> Iterator[Entry]:
        code = self._new_code("OS")
        start = Start("Orange syrup", ProductKind.SYRUP, measured(30_000_000), pour_parts=7)
        yield self._entry(start, code, opens=Opened(code, LotType.MADE, Measure.UL))
        yield from self._addition(code, "sugar", 18_500_000)
        yield from self._addition(code, "water", 15_000_000)
        yield from self._addition(code, "acid", 90_000)
        yield from self._addition(code, "water", 2_500_000)
        corrected = self.seq
        yield self._added(code, essence, 900_000, Measure.UL)
        if self.chance.random() < 0.05:
            yield self._added(code, essence, 910_000, Measure.UL, corrects=corrected)
        if self._leftover and self.chance.random() < 0.2:
            yield self._added(code, self._leftover, 400_000, Measure.UL, AddedAs.REWORK)
            self._leftover = None
        yield self._entry(Finish(measured(30_000_000)), code, level=30_000_000)
        yield self._entry(Judge(Verdict.RELEASE), code)
        yield from self._bottling(code)
        if self.chance.random() < 0.1:
            yield from self._addition(code, "water", 500_000, AddedAs.TOP_UP)
        if self.chance.random() < 0.7:
            yield from self._bottling(code)
        if self.is_used_up:
            yield self._entry(Count(measured(0)), code, level=0)
        else:
            self._leftover = code

    def _bottling(self, syrup: str) -> Iterator[Entry]:
        count = self.chance.randint(20, 40)
        for sort in ("bottle", "cap"):
            yield from self._delivered(sort, count * EACH)
        code, volume = self._new_code("BOS"), count * 250_000
        bottles, caps = (self._draw(sort, count * EACH) for sort in ("bottle", "cap"))
        facts = Bottle(syrup, count, measured(250_000), measured(volume), bottles, caps)
        moved = (
            Posting(syrup, code, None, volume, count * EACH),
            Posting(bottles, code, None, count * EACH, 0),
            Posting(caps, code, None, count * EACH, 0),
        )
        opens = Opened(code, LotType.PACKED, Measure.UEACH)
        yield self._entry(facts, code, opens=opens, moved=moved)
        yield self._entry(Judge(Verdict.RELEASE), code)
        sent = (count if self.is_used_up else self.chance.randint(1, count // 2)) * EACH
        facts_sent = Move(MoveAs.SALE, measured(sent, Measure.UEACH), self.chance.choice(PARTIES))
        yield self._entry(facts_sent, code, moved=(Posting(code, None, Place.SALE, sent, 0),))

    def _look(self, lot: str) -> Entry:
        grade = self.chance.choices((Grade.BRIGHT, Grade.CLEAR, Grade.HAZY), (5, 4, 1))[0]
        ntu = {"bright": 900, "clear": 2_100, "hazy": 9_000}[grade]
        return self._entry(Look(grade, LookedAt.NEAT, ntu_milli=ntu, words="pale gold"), lot)

    def _addition(
        self, lot: str, sort: str, about: int, added_as: AddedAs = AddedAs.INGREDIENT
    ) -> Iterator[Entry]:
        """Add about so much of a material, from a new delivery where the lot in use has less."""
        amount = about + self.chance.randint(0, about // 50)
        yield from self._delivered(sort, amount)
        yield self._added(lot, self._draw(sort, amount), amount, STOCK[sort][1], added_as)

    def _added(
        self,
        lot: str,
        source: str,
        amount: int,
        measure: Measure,
        added_as: AddedAs = AddedAs.INGREDIENT,
        corrects: int | None = None,
    ) -> Entry:
        given = amount if measure is Measure.UL else 0
        facts = Add(source, measured(amount, measure), added_as)
        moved = (Posting(source, lot, None, amount, given),)
        return self._entry(facts, lot, moved=moved, corrects=corrects)

    def _delivered(self, sort: str, needed: int) -> Iterator[Entry]:
        """Yield a delivery when the lot in use has less than is needed."""
        if self._shelf.get(sort, ("", 0))[1] >= needed:
            return
        stem, measure, amount = STOCK[sort]
        code = self._new_code(stem)
        self._shelf[sort] = (code, amount)
        facts = Receipt(
            sort,
            measured(amount, measure),
            "Pretend Supplies",
            f"P-{self.seq}",
            cost_minor=amount // 50_000,
        )
        moved = (Posting(None, code, Place.SUPPLIER, amount, amount),)
        opens = Opened(code, LotType.RECEIVED, measure)
        yield self._entry(facts, code, opens=opens, moved=moved)

    def _draw(self, sort: str, amount: int) -> str:
        code, left = self._shelf[sort]
        self._shelf[sort] = (code, left - amount)
        return code

    def _new_code(self, stem: str) -> str:
        self._ordinals[stem] = self._ordinals.get(stem, 0) + 1
        return make_code(stem, self._ordinals[stem])

    def _entry(
        self,
        facts: Facts,
        lot: str,
        *,
        opens: Opened | None = None,
        moved: tuple[Posting, ...] = (),
        level: int | None = None,
        corrects: int | None = None,
    ) -> Entry:
        seq, self.seq = self.seq, self.seq + 1
        self.now += timedelta(minutes=1)
        self.lots += opens is not None
        draft = Draft(
            facts=facts,
            lot=lot,
            happened=When(self.now, 0),
            by="AB" if seq % 3 else "CD",
            reason="misread the cylinder" if corrects else None,
            corrects=corrects,
            opens=opens,
        )
        return Entry(
            seq=seq,
            draft=draft,
            recorded_at=self.now,
            stands_for=corrects or seq,
            postings=moved,
            level=None if level is None else Level(lot, level),
        )
