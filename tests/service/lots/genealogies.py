"""Genealogies at random, played into a book, and what they should come to.

Guarantees: the graph is built from what was asked for and taken by the book, never read back from
it. Refuses: to keep anything; a played genealogy is undone at its end.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import networkx as nx
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import Add, Bottle, Filter, Receipt, Rinse, Start, Strike
from ledger.domain.entries.choices import AddedAs, LotType, ProductKind, RinseTo
from ledger.domain.entries.spine import Draft, Facts
from ledger.errors import RefusedError
from ledger.service.desk.act import Desk, desk_on
from ledger.service.desk.book import Book, How, Recorded
from ledger.store.engine.connections import Connection
from tests.keeper import MORNING

Step = tuple[str, int, int, int]
"""What is done, two numbers that choose lots or entries, and an amount."""
Edge = tuple[str, str, int]
"""Code of the lot left, of the lot entered, and what left."""
ACTS = (
    *["add"] * 6, "receive", "start", "rework", "rinse", "cake", "bottle",
    "correct", "reroute", "strike",
)  # fmt: skip

BEGINNING: tuple[Step, ...] = (("receive", 0, 0, 1), *[("start", 0, 0, 9_000)] * 3)
"""Steps that come before any others."""

genealogies = st.lists(
    st.tuples(st.sampled_from(ACTS), st.integers(0, 99), st.integers(0, 99), st.integers(1, 9_000)),
    min_size=4,
    max_size=24,
)
"""Steps to play."""


@contextmanager
def undone(book: Book) -> Iterator[Connection]:
    """Open a writing transaction that leaves nothing behind."""
    with book.engine.connect().execution_options(writes=True) as connection:
        transaction = connection.begin()
        try:
            yield connection
        finally:
            transaction.rollback()


@dataclass(slots=True)
class Player:
    """Plays steps and remembers what was taken by the book."""

    connection: Connection
    now: datetime = MORNING
    lots: list[str] = field(default_factory=list)
    batches: list[str] = field(default_factory=list)
    said: dict[int, tuple[Draft, list[Edge]]] = field(default_factory=dict)
    """Entries in force that made edges and can be changed, by number."""
    fixed: list[Edge] = field(default_factory=list)
    """Edges of entries that stay as they are."""
    fixed_at: list[tuple[datetime, Edge]] = field(default_factory=list)
    """The same with when they were recorded."""
    refused: int = 0

    def play(self, steps: list[Step]) -> None:
        for step in [*BEGINNING, *steps]:
            try:
                self.step(*step)
            except RefusedError:
                self.refused += 1

    def graph(self) -> "nx.DiGraph[str]":
        """Return the lots with what went from each to each in all."""
        found: nx.DiGraph[str] = nx.DiGraph()
        found.add_nodes_from(self.lots)
        for source, target, taken in [
            *self.fixed, *(edge for _, edges in self.said.values() for edge in edges)
        ]:  # fmt: skip
            before = found.edges[source, target]["taken"] if found.has_edge(source, target) else 0
            found.add_edge(source, target, taken=before + taken)
        return found

    def graph_in_time(self) -> "nx.DiGraph[tuple[str, int]]":
        """Return the lots at each movement; a way leads on in a lot, and with what moved."""
        timed = [(draft.happened.at, edge) for draft, edges in self.said.values() for edge in edges]
        moved = sorted([*timed, *self.fixed_at], key=lambda item: item[0])
        found: nx.DiGraph[tuple[str, int]] = nx.DiGraph()
        last: dict[str, tuple[str, int]] = {}
        for number, (_, (source, target, _)) in enumerate(moved):
            for lot in (source, target):
                if lot in last:
                    found.add_edge(last[lot], (lot, number))
            found.add_edge((source, number), (target, number))
            last |= {source: (source, number), target: (target, number)}
        return found

    def fix(self, *edges: Edge) -> None:
        """Keep edges of an entry that stays as it is."""
        self.fixed += edges
        self.fixed_at += [(self.now, edge) for edge in edges]

    def step(self, act: str, one: int, two: int, amount: int) -> None:
        target = self.batches[two % len(self.batches)] if self.batches else ""
        others = [lot for lot in self.lots if lot != target]
        source = others[one % len(others)] if others else ""
        volume = _volume(amount)
        match act:
            case "receive":
                self.open(Receipt("water", _volume(10**9)), LotType.RECEIVED)
            case "start":
                start = Start("Essence", ProductKind.ESSENCE, volume)
                self.batches.append(self.open(start, LotType.MADE))
            case "add" | "rework":
                self.add(target, source, volume, act)
            case "rinse":
                apart = self.open(Rinse(source, volume, _volume(1), RinseTo.APART), LotType.RINSE,
                    target)  # fmt: skip
                self.fix((source, apart, amount), (target, apart, 0))
            case "cake":
                facts = Filter(1, "paper", _volume(1), _volume(1), cake_of=source)
                self.record(facts, target)
                self.fix((source, target, 0))
            case "bottle":
                packed = self.open(Bottle(source, 1, volume, volume), LotType.PACKED)
                self.fix((source, packed, amount))
            case _:
                self.change(act, one, source, volume)

    def add(self, target: str, source: str, volume: Quantity, act: str) -> None:
        added_as = AddedAs.REWORK if act == "rework" else AddedAs.INGREDIENT
        made = self.record(Add(source, volume, added_as), target)
        self.said[made.seq] = (made.entry.draft, [(source, target, volume.amount)])

    def change(self, act: str, choice: int, source: str, volume: Quantity) -> None:
        """Correct the amount or the source of an addition, or strike it."""
        if not self.said:
            return
        seq = list(self.said)[choice % len(self.said)]
        old, _ = self.said[seq]
        assert isinstance(old.facts, Add)
        assert old.lot
        if act == "strike":
            self.desk().record(Strike(), old.lot, corrects=seq)
            del self.said[seq]
            return
        changed = {"amount": volume} if act == "correct" else {"source": source}
        facts = replace(old.facts, **changed)
        draft = replace(old, facts=facts, corrects=seq, reason="misread")
        made = self.desk().append(draft)
        edge = (facts.source, old.lot, facts.amount.amount)
        self.said = {n: kept for n, kept in self.said.items() if n != seq}
        self.said[made.seq] = (draft, [edge])

    def open(self, facts: Facts, lot_type: LotType, lot: str | None = None) -> str:
        code, measure = f"L-{len(self.lots) + 1}", Measure.UL
        if lot_type is LotType.PACKED:
            measure = Measure.UEACH
        self.desk().record(facts, lot, opens=(code, lot_type, measure))
        self.lots.append(code)
        return code

    def record(self, facts: Facts, lot: str) -> Recorded:
        return self.desk().record(facts, lot)

    def desk(self) -> Desk:
        self.now += timedelta(minutes=1)
        return desk_on(self.connection, self.now, How(by="AB", because="so it was"))


def reached(graph: "nx.DiGraph[tuple[str, int]]", lot: str, *, back: bool = False) -> set[str]:
    """Return the lots that ways in time lead to from a lot, or that lead to it."""
    ways = graph.reverse() if back else graph
    starts = [node for node in ways if node[0] == lot]
    met = {code for node in starts for code, _ in nx.descendants(ways, node)}
    return met - {lot}


def _volume(amount: int) -> Quantity:
    return Quantity(amount, Measure.UL, f"{amount} µL")
