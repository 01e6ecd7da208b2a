"""A bench without a book: drafts are checked, moved and folded in memory.

It keeps what is on hand by its own plain sums, in the order of the steps, so that the movements of
the ledger are compared with it.
"""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Entry, Facts, Material, Opened
from ledger.domain.entries.choices import LotType
from ledger.domain.entries.fields import specs
from ledger.domain.lots.movements import movements
from ledger.domain.lots.scene import Scene
from ledger.domain.lots.state import STAYS_IN_THE_CAKE, LotState
from ledger.domain.rules import Finding, findings
from tests.domain.builders import draft, when


@dataclass
class Bench:
    """Lots by their codes, and the clock on the wall."""

    now: datetime
    lots: dict[str, LotState] = field(default_factory=dict)
    entries: list[Entry] = field(default_factory=list)
    found: list[tuple[Finding, ...]] = field(default_factory=list)

    def receive(self, code: str, facts: Any, material: Material) -> None:
        """Take a received lot onto the shelf."""
        self.do(facts, opens=(code, LotType.RECEIVED, facts.amount.measure))
        self.lots[code] = replace(self.lots[code], material=material)

    def do(
        self,
        facts: Facts,
        code: str | None = None,
        opens: tuple[str, LotType, Measure] | None = None,
    ) -> None:
        """Do one step a minute later, keep what the rules find, and fold what it moves."""
        self.now += timedelta(minutes=1)
        opened = Opened(*opens) if opens else None
        about = code or (opened.code if opened else None)
        told = draft(facts, about, happened=when(self.now), opens=opened)
        around = self._scene(facts, about if opened is None or code else None)
        self.found.append(findings(told, around))
        postings, level = movements(told, around)
        seq = len(self.entries) + 1
        self.entries.append(Entry(seq, told, self.now, seq, postings, level))
        if opened:
            self.lots[opened.code] = self._opened(opened, facts, seq)
        self._fold(self.entries[-1], about)

    def _scene(self, facts: Facts, about: str | None) -> Scene:
        named = (
            getattr(facts, spec.name) for spec in specs(type(facts)) if spec.refers_to == "lot"
        )
        return Scene(
            now=self.now,
            people=frozenset({"AB"}),
            materials=frozenset({getattr(facts, "material", "")}),
            lot=self.lots[about] if about else None,
            sources=tuple(self.lots[code] for code in dict.fromkeys(named) if code),
        )

    def _opened(self, opened: Opened, facts: Facts, seq: int) -> LotState:
        is_packed = opened.lot_type is LotType.PACKED
        bulk = self.lots[getattr(facts, "source", "")] if is_packed else None
        return LotState(seq, opened, (), on_hand=0, on_hand_then=0, bulk=bulk)

    def _fold(self, entry: Entry, about: str | None) -> None:
        for posting in entry.postings:
            if posting.source:
                self._change(posting.source, -posting.taken)
            if posting.target:
                self._change(posting.target, posting.given)
                self._dissolve(posting.source, posting.target, posting.taken)
        if entry.level:
            self._set(entry.level.lot, entry.level.amount, solids_mg=0)
        opened = entry.draft.opens
        for code in {about, opened.code if opened else None} - {None}:
            state = self.lots[str(code)]
            self.lots[str(code)] = replace(state, entries=(*state.entries, entry))

    def _change(self, code: str, by: int) -> None:
        self._set(code, self.lots[code].on_hand + by)

    def _set(self, code: str, amount: int, **changes: Any) -> None:
        state = self.lots[code]
        self.lots[code] = replace(state, on_hand=amount, on_hand_then=amount, **changes)

    def _dissolve(self, source: str | None, target: str, taken: int) -> None:
        state = self.lots[source] if source else None
        if state is None or state.measure is not Measure.MG:
            return
        if not (state.material and state.material.sort in STAYS_IN_THE_CAKE):
            solids = self.lots[target].solids_mg + taken
            self.lots[target] = replace(self.lots[target], solids_mg=solids)
