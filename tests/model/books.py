"""Random books: acts at the bench, told to a book and to the second model alike.

Guarantees: a seed makes the same book everywhere; late entries, corrections, strikes, blends of
blends, rinses and old cakes are in them. An act that the model cannot follow, because more would be
drawn than is there, is never told to the book.
"""

from copy import deepcopy
from dataclasses import dataclass, field
from dataclasses import replace as changed
from datetime import UTC, datetime
from random import Random

from ledger.errors import LedgerError
from tests.keeper import Keeper
from tests.model.jars import Act, Delivery, NotThereError, Shelf

ML, EACH = 1000, 1_000_000
ACTS = (
    *["add"] * 9, *["blend"] * 4, "makeup", "makeup", "filter", "filter", "cake", "rinse",
    "waste", "apart", "finish", "bottle", "bottle", "sale", "sale", "returned", "count",
    "bulk", "bulk", "bulk_back",
    "correct", "correct", "correct", "strike",
)  # fmt: skip
DELIVERIES = {
    "orange-oil": ("500mL", Delivery("oil", 500 * ML, 4800, density=0.845)),
    "spirit": ("5L", Delivery("ethanol", 5000 * ML, 19_000, abv=96)),
    "carb": ("500g", Delivery("clarifier", 500 * ML, 950)),
    "sugar": ("9kg", Delivery("sugar", 9000 * ML, 1117)),
    "water": ("20L", Delivery("water", 20_000 * ML, 80)),
}
"""What every book receives, and what a second lot of spirit is like."""


@dataclass
class Played:
    """A book being kept, beside the acts in force."""

    keeper: Keeper
    random: Random
    deliveries: dict[str, Delivery] = field(default_factory=dict)
    of: dict[str, str] = field(default_factory=dict)
    acts: list[Act] = field(default_factory=list)
    entries: dict[int, int] = field(default_factory=dict)
    """For each act's number the entry of it that is in force."""
    batches: list[str] = field(default_factory=list)
    packed: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)
    """What was done, for people."""

    def shelf(self, *more: Act) -> Shelf:
        return Shelf(self.deliveries).play([*self.acts, *more])

    def receive(self) -> None:
        for material in (*DELIVERIES, "spirit"):
            amount, delivery = DELIVERIES[material]
            code = self.keeper.opens(
                "receive", material=material, amount=amount, cost=f"{(delivery.cost or 0) / 100}"
            )
            self.deliveries[code] = deepcopy(delivery)
            self.of[code] = material

    def begin(self, *, code: str | None = None) -> None:
        made = self.keeper.do("start", product="Blend", kind="blend", target="2L", code=code)
        self.batches.append(made.code or "")
        self._keep(Act(self._now(), made.seq, "start", made.code or ""), made.seq)

    def step(self) -> None:
        kind = self.random.choice(ACTS)
        late = self.random.choice((0, 0, 0, 0, 7, 33, 121))
        try:
            getattr(self, f"do_{kind}")(late)
        except (LedgerError, NotThereError):
            self.told.append(f"({kind} could not be)")

    def do_add(self, late: int) -> None:
        source = self.random.choice(list(self.deliveries))
        most = 40 if self.of[source] in ("orange-oil", "carb") else 900
        self._add(self._batch(), source, self.random.randint(1, most), late)

    def do_blend(self, late: int) -> None:
        low, high = sorted(self.random.sample(range(len(self.batches)), 2))
        source = self.batches[low]
        there = int(self.shelf().jars[source].there.ul) // ML
        self._add(self.batches[high], source, self.random.randint(1, max(there, 1)), late)

    def _add(self, lot: str, source: str, amount: int, late: int) -> None:
        unit = "g" if self.of.get(source) in ("sugar", "carb") else "mL"
        act = Act(self._then(late), 10**9, "add", lot, source, amount * ML)
        self._do(act, "add", late, lot=lot, source=source, amount=f"{amount}{unit}")

    def do_makeup(self, late: int) -> None:
        lot, source = self._batch(), self._lot_of("water")
        used = self.random.randint(5, 200)
        level = int(self._after(Act(self._then(0), 10**9, "add", lot, source, used * ML)) / ML)
        act = Act(self._then(0), 10**9, "makeup", lot, source, used * ML, level=level * ML)
        words = {"volume": f"{level}mL", "source": source, "used": f"{used}mL"}
        self._do(act, "makeup", 0, lot=lot, **words)

    def do_filter(self, late: int, cake_of: str = "") -> None:
        lot = self._batch(last=bool(cake_of))
        there = int(self.shelf().jars[lot].there.ul / ML)
        out = self.random.randint(max(1, there * 8 // 10), max(there, 1))
        act = Act(self._then(0), 10**9, "filter", lot, level=out * ML, cake_of=cake_of)
        words = {"cake": "same", "cake_of": cake_of} if cake_of else {}
        volumes = {"volume_in": f"{max(there, out)}mL", "volume_out": f"{out}mL"}
        self._do(act, "filter", 0, lot=lot, medium="paper", **volumes, **words)

    def do_cake(self, late: int) -> None:
        self.do_filter(late, self.random.choice(self.batches[:-1]))

    def do_rinse(self, late: int, to: str = "batch") -> None:
        lot, source = self._batch(), self._lot_of("spirit")
        put_on = self.random.randint(4, 60)
        out = self.random.randint(put_on // 2, put_on)
        words = {"volume_in": f"{put_on}mL", "volume_out": f"{out}mL", "went_to": to}
        act = Act(
            self._then(0), 10**9, "apart" if to == "apart" else "rinse", lot, source, put_on * ML,
            given=out * ML, level=0 if to == "waste" else None,
            cake_of=lot if to == "apart" else "",
        )  # fmt: skip
        self._do(act, "rinse", 0, lot=lot, source=source, **words)

    def do_waste(self, late: int) -> None:
        self.do_rinse(late, "waste")

    def do_apart(self, late: int) -> None:
        self.do_rinse(late, "apart")

    def do_finish(self, late: int) -> None:
        lot = self._batch()
        there = int(self.shelf().jars[lot].there.ul / ML)
        out = self.random.randint(max(there * 9 // 10, 1), max(there, 1))
        act = Act(self._then(0), 10**9, "finish", lot, level=out * ML)
        self._do(act, "finish", 0, lot=lot, volume=f"{out}mL")

    def do_count(self, late: int) -> None:
        lot = self._any(self.packed)
        jar = self.shelf().jars[lot]
        there = round(jar.there.ul / jar.per_unit / EACH)
        found = self.random.randint(max(there - 1, 0), there)
        act = Act(self._then(0), 10**9, "count", lot, level=found * EACH)
        self._do(act, "count", 0, lot=lot, amount=str(found))

    def do_bottle(self, late: int) -> None:
        source = self._batch()
        count = self.random.randint(1, 6)
        act = Act(self._then(0), 10**9, "bottle", "", source, count * 50 * ML, count * EACH)
        self._do(act, "bottle", 0, source=source, pack=f"{count} x 50mL")

    def do_sale(self, late: int, kind: str = "sale") -> None:
        lot = self._any(self.packed)
        count = self.random.randint(1, 3)
        act = Act(self._then(0), 10**9, kind, lot, taken=count * EACH)
        words = {"amount": str(count), "moved_as": kind, "party": "Notreal Bar"}
        self._do(act, "send", 0, lot=lot, **words)

    def do_returned(self, late: int) -> None:
        self.do_sale(late, "returned")

    def do_bulk(self, late: int, kind: str = "sale") -> None:
        lot, amount = self._batch(), self.random.randint(5, 90)
        act = Act(self._then(0), 10**9, kind, lot, taken=amount * ML)
        words = {"amount": f"{amount}mL", "moved_as": kind, "party": "Notreal Bar"}
        self._do(act, "send", 0, lot=lot, **words)

    def do_bulk_back(self, late: int) -> None:
        self.do_bulk(late, "returned")

    def do_correct(self, late: int) -> None:
        act = self._addition()
        amount = self.random.randint(1, max(2 * act.taken // ML, 2))
        unit = "g" if self.of.get(act.source) in ("sugar", "carb") else "mL"
        new = changed(act, taken=amount * ML)
        self._check([other for other in self.acts if other is not act] + [new])
        made = self.keeper.do(
            "correct",
            entry=str(self.entries[act.nth]),
            changes=f"amount={amount}{unit}",
            because="misread",
        )
        self.acts[self.acts.index(act)] = new
        self.entries[act.nth] = made.seq
        self.told.append(f"corrected {act.source} into {act.lot}: {amount}{unit}")

    def do_strike(self, late: int) -> None:
        act = self._addition()
        self._check([other for other in self.acts if other is not act])
        self.keeper.do("strike", entry=str(self.entries[act.nth]), because="not so")
        self.acts.remove(act)
        self.told.append(f"struck {act.source} into {act.lot}")

    def _addition(self) -> Act:
        found = [act for act in self.acts if act.kind == "add"]
        if not found:
            raise NotThereError
        return self.random.choice(found)

    def _any(self, lots: list[str]) -> str:
        if not lots:
            raise NotThereError
        return self.random.choice(lots)

    def _batch(self, *, last: bool = False) -> str:
        return self.batches[-1] if last else self.random.choice(self.batches)

    def _lot_of(self, material: str) -> str:
        return self.random.choice([code for code, of in self.of.items() if of == material])

    def _after(self, act: Act) -> float:
        return self.shelf(act).jars[act.lot].there.ul

    def _now(self) -> float:
        return self.keeper.clock.now.timestamp()

    def _then(self, late: int) -> float:
        return self._now() + 60 * (self.keeper.minutes_apart - late)

    def _check(self, acts: list[Act]) -> None:
        Shelf(self.deliveries).play(acts)

    def _do(self, act: Act, verb: str, late: int, **words: str) -> None:
        """Tell the book and keep the act, if the model can follow it."""
        self._check([*self.acts, act])
        at = f"-{late}m" if late else None
        made = self.keeper.do(verb, at=at, because="so it was", **words)
        if made.entry.draft.opens:
            act = changed(act, lot=made.entry.draft.opens.code)
            if verb == "bottle":
                self.packed.append(act.lot)
        self._keep(changed(act, nth=made.seq), made.seq)
        when = datetime.fromtimestamp(act.at, UTC)
        self.told.append(f"{made.seq} {verb} at {when:%H:%M}: {words}")

    def _keep(self, act: Act, entry: int) -> None:
        self.acts.append(act)
        self.entries[act.nth] = entry


def played(keeper: Keeper, seed: int, steps: int = 45) -> Played:
    """Return a book that was kept at random, in a book that is set up."""
    book = Played(keeper, Random(seed))
    book.receive()
    for _ in range(4):
        book.begin()
    for lot in book.batches[:3]:
        book._add(lot, book._lot_of("spirit"), 400, 0)
        book._add(lot, book._lot_of("water"), 500, 0)
    for _ in range(steps):
        book.step()
    return book
