"""Laws of movements: what is taken is what was told, and a batch's sums come out even."""

from collections import Counter
from dataclasses import dataclass

from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import MOST, Measure, Quantity
from ledger.domain.entries import (
    Add,
    Bottle,
    Draft,
    Facts,
    Filter,
    Finish,
    MakeUp,
    Material,
    Move,
    Posting,
    Receipt,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import LotType, MaterialKind, MoveAs, RinseTo
from ledger.domain.lots.movements import movements
from ledger.domain.lots.scene import Scene
from tests.domain.bench import Bench
from tests.domain.builders import at, draft, lot, make, oil, packed, powder, scene

UL, UEACH = Measure.UL, Measure.UEACH
APART = lot("R-1", kind="rinse").opened


def ul(amount: int) -> Quantity:
    return Quantity(amount, Measure.UL, f"{amount} µL")


VOLUMES = st.integers(1, MOST).map(ul)
COUNTS = st.integers(1, 10**6)


@dataclass(frozen=True)
class Told:
    """A draft with its scene, what it says it takes of each lot, and what it says it gives."""

    draft: Draft
    scene: Scene
    takes: dict[str, int]
    gives: dict[str, int]


def told(facts: Facts, takes: dict[str, int], gives: dict[str, int], about: str = "E-1") -> Told:
    is_apart = isinstance(facts, Rinse) and facts.went_to is RinseTo.APART
    opens = APART if is_apart else packed().opened if isinstance(facts, Bottle) else None
    state = None if isinstance(facts, Bottle) else lot(about)
    return Told(draft(facts, about, opens=opens), scene(state, oil(), powder()), takes, gives)


def rinse(went_to: RinseTo, put_on: Quantity, through: Quantity) -> Told:
    to = {RinseTo.BATCH: "E-1", RinseTo.APART: "R-1"}.get(went_to)
    facts = make(Rinse, went_to=went_to, volume_in=put_on, volume_out=through)
    return told(facts, {"O-1": put_on.amount}, {to: through.amount} if to else {})


def bottling(count: int, drawn: Quantity, bottles: str | None, caps: str | None) -> Told:
    facts = make(Bottle, count=count, drawn=drawn, bottles=bottles, caps=caps)
    takes = Counter({"E-1": drawn.amount})
    for code in (bottles, caps):
        takes.update({code: count * 10**6} if code else {})
    return told(facts, dict(takes), {"P-1": count * 10**6}, "P-1")


def move(word: MoveAs, amount: Quantity) -> Told:
    facts, moved = make(Move, moved_as=word, amount=amount), {"E-1": amount.amount}
    is_back = word is MoveAs.RETURNED
    return told(facts, {} if is_back else moved, moved if is_back else {})


def weighed(mass_mg: int) -> Told:
    facts = make(Add, source="C-1", amount=Quantity(mass_mg, Measure.MG, "weighed"))
    return told(facts, {"C-1": mass_mg}, {})


MOVING = st.one_of(
    VOLUMES.map(lambda v: told(make(Add, amount=v), {"O-1": v.amount}, {"E-1": v.amount})),
    VOLUMES.map(lambda v: told(make(MakeUp, used=v), {"O-1": v.amount}, {"E-1": v.amount})),
    st.integers(1, MOST).map(weighed),
    st.builds(rinse, st.sampled_from(RinseTo), VOLUMES, VOLUMES),
    st.builds(
        bottling,
        COUNTS,
        VOLUMES,
        st.sampled_from([None, "B-1"]),
        st.sampled_from([None, "C-9", "B-1"]),
    ),
    st.builds(move, st.sampled_from(MoveAs), VOLUMES),
)


@given(case=MOVING)
def test_what_is_taken_and_given_is_what_the_facts_say(case: Told) -> None:
    taken: Counter[str] = Counter()
    given_: Counter[str] = Counter()
    for posting in movements(case.draft, case.scene)[0]:
        taken[posting.source or ""] += posting.taken if posting.source else 0
        given_[posting.target or ""] += posting.given if posting.target else 0
    assert {code: amount for code, amount in taken.items() if amount} == case.takes
    assert {code: amount for code, amount in given_.items() if amount} == case.gives


@given(case=MOVING)
def test_a_posting_has_two_ends_and_a_place_only_where_one_is_no_lot(case: Told) -> None:
    for posting in movements(case.draft, case.scene)[0]:
        ends = [end for end in (posting.source, posting.target) if end]
        assert len(ends) == (1 if posting.place else 2)
        assert posting.source != posting.target
        assert posting.taken >= 0
        assert posting.given >= 0


@dataclass(frozen=True)
class Run:
    """The volumes of one making run, each possible after those before it."""

    spirit: int
    oil: int
    filtered: int
    rinsed_in: int
    rinsed_out: int
    used: int
    made_up: int
    finished: int
    bottles: int
    sampled: int


@st.composite
def runs(draw: st.DrawFn) -> Run:
    spirit, essential = draw(st.integers(10_000, 10**8)), draw(st.integers(1_000, 10**7))
    filtered = draw(st.integers(5_000, spirit + essential))
    rinsed_in = draw(st.integers(1, 10**6))
    rinsed_out = draw(st.integers(1, rinsed_in))
    used = draw(st.integers(100, 10**6))
    before = filtered + rinsed_out
    made_up = draw(st.integers(before + 1, before + used))
    finished = draw(st.integers(1_000, made_up))
    bottles = draw(st.integers(1, max(1, finished // 1_000 // 2)))
    sampled = draw(st.integers(1, finished - bottles * 1_000 or 1))
    return Run(
        spirit,
        essential,
        filtered,
        rinsed_in,
        rinsed_out,
        used,
        made_up,
        finished,
        bottles,
        min(sampled, finished),
    )


def play(run: Run) -> Bench:
    bench = Bench(at(9))
    for code, sort in (("O-1", MaterialKind.OIL), ("A-1", MaterialKind.ETHANOL)):
        bench.receive(code, make(Receipt, amount=ul(10**9)), Material("oil", code, sort))
    bench.do(make(Start), opens=("E-1", LotType.MADE, UL))
    bench.do(make(Add, source="A-1", amount=ul(run.spirit)), "E-1")
    bench.do(make(Add, amount=ul(run.oil)), "E-1")
    whole = ul(run.spirit + run.oil)
    bench.do(make(Filter, volume_in=whole, volume_out=ul(run.filtered)), "E-1")
    through = {"volume_in": ul(run.rinsed_in), "volume_out": ul(run.rinsed_out)}
    bench.do(make(Rinse, source="A-1", **through), "E-1")
    bench.do(make(MakeUp, source="A-1", volume=ul(run.made_up), used=ul(run.used)), "E-1")
    bench.do(make(Finish, volume=ul(run.finished)), "E-1")
    filled = make(Bottle, count=run.bottles, size=ul(1_000), drawn=ul(run.bottles * 1_000))
    bench.do(filled, opens=("P-1", LotType.PACKED, UEACH))
    bench.do(make(Move, moved_as=MoveAs.SAMPLE, amount=ul(run.sampled)), "E-1")
    return bench


def all_postings(bench: Bench) -> list[Posting]:
    return [posting for entry in bench.entries for posting in entry.postings]


@given(run=runs())
def test_what_went_into_a_batch_is_what_came_out_was_lost_and_is_there(run: Run) -> None:
    bench = play(run)
    moved = all_postings(bench)
    total_in = sum(posting.given for posting in moved if posting.target == "E-1")
    total_out = sum(posting.taken for posting in moved if posting.source == "E-1")
    assert total_in == run.spirit + run.oil + run.rinsed_out + run.used
    assert total_out == run.bottles * 1_000 + run.sampled
    in_the_filter = run.spirit + run.oil - run.filtered
    by_mixing = run.filtered + run.rinsed_out + run.used - run.made_up
    at_the_finish = run.made_up - run.finished
    lost = in_the_filter + by_mixing + at_the_finish
    assert total_in == total_out + lost + bench.lots["E-1"].on_hand


@given(run=runs())
def test_what_left_the_shelf_is_what_the_run_used(run: Run) -> None:
    bench = play(run)
    assert 10**9 - bench.lots["O-1"].on_hand == run.oil
    assert 10**9 - bench.lots["A-1"].on_hand == run.spirit + run.rinsed_in + run.used
    assert bench.lots["P-1"].on_hand == run.bottles * 10**6


@given(run=runs())
def test_a_run_whose_volumes_fit_is_never_found_impossible(run: Run) -> None:
    told_off = [finding for found in play(run).found for finding in found]
    assert [finding for finding in told_off if finding.severity == "impossible"] == []
