"""Whatever is done, in whatever order: the amounts are those of a plain model of whole numbers."""

import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import ClassVar

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule, run_state_machine_as_test
from sqlalchemy import select, text

from ledger.domain.evidence.merkle import leaf_hash
from ledger.errors import RefusedError
from ledger.service.desk.book import Recorded, open_book
from ledger.store.form.tables import ENTRY
from ledger.store.write import recorder
from tests.keeper import Keeper, SetClock, copy_book
from tests.store.contract.rows import naive_root

ML = 1000
EACH = 1_000_000
PICKS = st.integers(0, 999)
VOLUMES = st.integers(1, 600)


@dataclass(slots=True)
class Act:
    """What one entry, as it stands after its corrections, does to the amounts."""

    at: datetime
    kind: str
    lot: str
    moves: dict[str, int] = field(default_factory=dict)
    level: int | None = None
    latest: int = 0
    """Number of the entry of its chain that is in force."""


@dataclass(slots=True)
class Model:
    """Acts in force by the number of the first entry of each chain."""

    acts: dict[int, Act] = field(default_factory=dict)
    liquids: list[str] = field(default_factory=list)
    batches: list[str] = field(default_factory=list)
    packed: list[str] = field(default_factory=list)
    lots: list[str] = field(default_factory=list)

    def amounts(self) -> dict[str, int]:
        found = dict.fromkeys(self.lots, 0)
        for _, act in sorted(self.acts.items(), key=lambda item: (item[1].at, item[0])):
            if act.level is not None:
                found[act.lot] = act.level
            for lot, change in act.moves.items():
                found[lot] += change
        return found


class BookMachine(RuleBasedStateMachine):
    """One book with a plain model beside it."""

    template: ClassVar[Path]
    """The book that each run begins with a copy of."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        clock = SetClock()
        where = copy_book(self.template, Path(self.folder.name) / "book.db")
        self.keeper = Keeper(open_book(str(where), clock), clock)
        self.model = Model()
        self.entries = len(self.keeper.bodies())
        self.receive("spirit", 5000)
        self.begin()

    def teardown(self) -> None:
        self.keeper.book.close()
        self.folder.cleanup()

    def _done(self, act: Act, recorded: Recorded) -> None:
        assert recorded.seq == self.entries + 1
        self.entries += 1 + len(recorded.deviations)
        act.latest = recorded.seq
        self.model.acts[recorded.entry.stands_for] = act

    def _try(self, call: Callable[[], Recorded]) -> Recorded | None:
        """Return what was recorded, or None where a rule finds it impossible."""
        try:
            return call()
        except RefusedError:
            return None

    def _pick(self, codes: list[str], pick: int) -> str:
        return codes[pick % len(codes)]

    @rule(material=st.sampled_from(["spirit", "water"]), volume=VOLUMES)
    def receive(self, material: str, volume: int) -> None:
        made = self.keeper.do("receive", material=material, amount=f"{volume}mL")
        code = made.code or ""
        self.model.lots.append(code)
        self.model.liquids.append(code)
        act = Act(self.keeper.clock.now, "receipt", code, {code: volume * ML})
        self._done(act, made)

    @rule()
    def begin(self) -> None:
        made = self.keeper.do("start", product="Essence", kind="essence", target="1L")
        code = made.code or ""
        for codes in (self.model.lots, self.model.liquids, self.model.batches):
            codes.append(code)
        self._done(Act(self.keeper.clock.now, "start", code), made)

    @rule(into=PICKS, out_of=PICKS, volume=VOLUMES, minutes_ago=st.sampled_from([0, 0, 7, 60]))
    def add(self, into: int, out_of: int, volume: int, minutes_ago: int) -> None:
        lot = self._pick(self.model.batches, into)
        source = self._pick(self.model.liquids, out_of)
        made = self._try(
            lambda: self.keeper.do(
                "add",
                lot=lot,
                source=source,
                amount=f"{volume}mL",
                at=f"-{minutes_ago}m" if minutes_ago else None,
                because="so it was",
            )
        )
        if made is None:
            assert minutes_ago or source in self.model.batches
            return
        at = self.keeper.clock.now - timedelta(minutes=minutes_ago)
        self._done(Act(at, "add", lot, {source: -volume * ML, lot: volume * ML}), made)

    @rule(pick=PICKS, volume=VOLUMES)
    def count(self, pick: int, volume: int) -> None:
        lot = self._pick(self.model.liquids, pick)
        made = self.keeper.do("count", lot=lot, amount=f"{volume}mL", because="counted")
        self._done(Act(self.keeper.clock.now, "count", lot, level=volume * ML), made)

    @rule(pick=PICKS, volume=VOLUMES)
    def finish(self, pick: int, volume: int) -> None:
        lot = self._pick(self.model.batches, pick)
        made = self._try(lambda: self.keeper.do("finish", lot=lot, volume=f"{volume}mL"))
        if made:
            self._done(Act(self.keeper.clock.now, "finish", lot, level=volume * ML), made)

    @rule(pick=PICKS, bottles=st.integers(1, 5))
    def bottle(self, pick: int, bottles: int) -> None:
        source = self._pick(self.model.liquids, pick)
        made = self.keeper.do(
            "bottle", source=source, pack=f"{bottles} x 20mL", because="so it was"
        )
        code = made.code or ""
        self.model.lots.append(code)
        self.model.packed.append(code)
        moves = {source: -bottles * 20 * ML, code: bottles * EACH}
        self._done(Act(self.keeper.clock.now, "bottle", code, moves), made)

    @rule(pick=PICKS, bottles=st.integers(1, 5), way=st.sampled_from(["sale", "returned"]))
    def send(self, pick: int, bottles: int, way: str) -> None:
        if not self.model.packed:
            return
        lot = self._pick(self.model.packed, pick)
        made = self.keeper.do(
            "send", lot=lot, amount=str(bottles), moved_as=way, because="so it was"
        )
        change = bottles * EACH if way == "returned" else -bottles * EACH
        self._done(Act(self.keeper.clock.now, "move", lot, {lot: change}), made)

    @rule(pick=PICKS, volume=VOLUMES)
    def correct(self, pick: int, volume: int) -> None:
        field_names = {"receipt": "amount", "add": "amount", "count": "amount", "finish": "volume"}
        chains = [chain for chain, act in self.model.acts.items() if act.kind in field_names]
        chain = chains[pick % len(chains)]
        act = self.model.acts[chain]
        changes = f"{field_names[act.kind]}={volume}mL"
        made = self._try(
            lambda: self.keeper.do(
                "correct", entry=str(act.latest), changes=changes, because="misread"
            )
        )
        if made:
            assert made.entry.stands_for == chain
            level = None if act.level is None else volume * ML
            moves = {
                lot: volume * ML if was > 0 else -volume * ML for lot, was in act.moves.items()
            }
            self._done(Act(act.at, act.kind, act.lot, moves, level), made)

    @rule(pick=PICKS)
    def strike(self, pick: int) -> None:
        chains = [c for c, act in self.model.acts.items() if act.kind in ("add", "count", "finish")]
        if not chains:
            return
        chain = chains[pick % len(chains)]
        made = self.keeper.do(
            "strike", entry=str(self.model.acts[chain].latest), because="not done"
        )
        assert made.entry.stands_for == chain
        self.entries += 1 + len(made.deviations)
        del self.model.acts[chain]

    @invariant()
    def the_amounts_are_those_of_the_model(self) -> None:
        with self.keeper.reading() as connection:
            found = connection.execute(text("SELECT code, amount FROM on_hand"))
            view = {code: int(amount) for code, amount in found}
        expected = self.model.amounts()
        assert view == expected
        assert {code: self.keeper.held(code) for code in expected} == expected

    @invariant()
    def the_book_is_whole(self) -> None:
        with self.keeper.reading() as connection:
            query = select(ENTRY.c.seq, ENTRY.c.body).order_by(ENTRY.c.seq)
            found = [(seq, body) for seq, body in connection.execute(query)]
            root = recorder.root(connection)
        assert [seq for seq, _ in found] == list(range(1, self.entries + 1))
        assert root == naive_root([leaf_hash(body.encode()) for _, body in found])


def test_the_book_agrees_with_a_plain_model(template: Path) -> None:
    class Machine(BookMachine):
        pass

    Machine.template = template
    run_state_machine_as_test(
        Machine,
        settings=settings(max_examples=25, stateful_step_count=20),
    )
