"""What became of the liquid of a batch: all of it is told of, once, or is unexplained."""

from collections import Counter
from dataclasses import dataclass, field

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Entry,
    Facts,
    Filter,
    Finish,
    MakeUp,
    Move,
    Opened,
    Rinse,
)
from ledger.domain.entries.choices import LotType, MoveAs, RinseTo
from ledger.domain.lots.movements import movements
from ledger.domain.lots.yields import Yield, yield_of
from tests.domain.builders import draft, entry, grams, lot, make, ml, oil, powder, scene

LIQUIDS = frozenset({"O-1"})
SOURCES = scene(None, oil(), powder(), lot("E-1"))


def told(facts: Facts, seq: int = 1, about: str = "E-1") -> Entry:
    """Return an entry with the movements it makes."""
    is_apart = isinstance(facts, Rinse) and facts.went_to is RinseTo.APART
    opens = Opened("R-1", LotType.RINSE, Measure.UL) if is_apart else None
    done = draft(facts, about, opens=opens)
    return replace(entry(facts, seq), draft=done, postings=movements(done, SOURCES)[0])


def became(*acts: Facts | Entry) -> Yield:
    """Return what became of E-1 after acts in that order; an entry is one about another lot."""
    numbered = list(enumerate(acts, start=1))
    own = [told(item, seq) for seq, item in numbered if not isinstance(item, Entry)]
    others = [
        replace(item, seq=seq, stands_for=seq) for seq, item in numbered if isinstance(item, Entry)
    ]
    found = yield_of("E-1", own, LIQUIDS, others)
    assert found is not None
    return found


def drawn_for(code: str, amount: Quantity) -> Entry:
    """Return the entry by which another lot draws of E-1."""
    return told(Add("E-1", amount), about=code)


def test_a_batch_that_is_not_finished_has_no_yield() -> None:
    assert yield_of("E-1", [told(Add("O-1", ml(30)))], LIQUIDS) is None


def test_only_liquids_count_as_put_in() -> None:
    found = became(Add("O-1", ml(480)), Add("C-1", grams(15)), Finish(ml(430), waste=ml(3)))
    assert (found.went_in, found.came_out, found.waste) == (480_000, 430_000, 3_000)
    assert found.unexplained == 47_000


def test_what_a_rinse_fetches_out_of_a_cake_is_no_longer_in_it() -> None:
    """15 mL in the cake and 10 mL of them fetched out apart: 5 mL in it, nothing unexplained."""
    filtered = make(Filter, volume_in=ml(445), volume_out=ml(430), in_cake=ml(15))
    rinsed = make(Rinse, volume_in=ml(30), volume_out=ml(40), went_to=RinseTo.WASTE)
    found = became(Add("O-1", ml(445)), filtered, rinsed, Finish(ml(430)))
    assert (found.cake, found.apart, found.unexplained) == (5_000, 10_000, 0)


def test_a_rinse_before_a_cake_is_measured_takes_nothing_off_it() -> None:
    rinsed = make(Rinse, volume_in=ml(30), volume_out=ml(40))
    filtered = make(Filter, volume_in=ml(450), volume_out=ml(445), in_cake=ml(5))
    found = became(Add("O-1", ml(450)), rinsed, filtered, Finish(ml(445)))
    assert found.cake == 5_000


def test_a_sample_taken_before_the_end_is_told_and_one_after_it_is_part_of_what_came_out() -> None:
    kept = Move(MoveAs.RETAINED, ml(10))
    found = became(Add("O-1", ml(480)), kept, Finish(ml(470)), kept, kept)
    assert (found.drawn, found.kept_back, found.unexplained) == (10_000, 20_000, 0)


def test_what_other_lots_drew_before_the_end_is_told_lot_by_lot() -> None:
    """Of 480 mL S-1 draws 30 mL and 5 mL, S-2 10 mL; S-1 draws once more of what came out."""
    early = (drawn_for("S-1", ml(30)), drawn_for("S-2", ml(10)), drawn_for("S-1", ml(5)))
    found = became(Add("O-1", ml(480)), *early, Finish(ml(435)), drawn_for("S-1", ml(50)))
    assert found.to_lots == (("S-1", 35_000), ("S-2", 10_000))
    assert (found.drawn, found.unexplained) == (0, 0)


def test_bottles_filled_and_a_cake_used_again_before_the_end_are_told_by_what_was_measured() -> (
    None
):
    filled = told(make(Bottle, source="E-1", drawn=ml(60)), about="P-1")
    carried = told(make(Filter, cake_of="E-1"), about="S-1")
    found = became(Add("O-1", ml(480)), filled, carried, Finish(ml(420)))
    assert (found.to_lots, found.unexplained) == ((("P-1", 60_000),), 0)


def test_what_comes_back_before_the_end_is_no_longer_gone() -> None:
    out, back = Move(MoveAs.SAMPLE, ml(10)), Move(MoveAs.RETURNED, ml(4))
    assert became(Add("O-1", ml(480)), out, back, Finish(ml(474))).drawn == 6_000


def test_what_goes_in_after_the_end_waits_for_the_next_one() -> None:
    first = (Add("O-1", ml(480)), Finish(ml(470), waste=ml(10)), Add("O-1", ml(20)))
    assert became(*first).unexplained == 0
    again = became(*first, Finish(ml(489), waste=ml(1)))
    assert (again.went_in, again.waste, again.unexplained) == (500_000, 11_000, 0)


AMOUNTS = st.integers(0, 60_000)
ACTS = st.lists(
    st.tuples(
        st.sampled_from(
            ("add", "makeup", "filter", "rinse", "decant", "sample", "blend", "finish")
        ),
        AMOUNTS,
        AMOUNTS,
        st.sampled_from(RinseTo),
    ),
    max_size=12,
)


def ul(amount: int) -> Quantity:
    return Quantity(amount, Measure.UL, f"{amount / 1000:g} mL")


@dataclass
class Bench:
    """A batch of which it is known where every drop goes, whatever the book is told."""

    there: int = 500_000
    where: Counter[str] = field(default_factory=Counter)
    told: list[Facts | Entry] = field(default_factory=lambda: [Add("O-1", ul(500_000))])

    def lose(self, wanted: int, where: str) -> int:
        """Move at most `wanted` of what is there to another place."""
        lost = min(wanted, self.there)
        self.there -= lost
        self.where[where] += lost
        return lost

    def do(self, act: str, one: int, other: int, to: RinseTo) -> None:
        had = self.there
        if act in ("add", "makeup"):
            self.there += one
            done = Add("O-1", ul(one)) if act == "add" else MakeUp(ul(had + one), "O-1", ul(one))
            self.told.append(done)
        elif act == "filter":
            cake = self.lose(one, "cake")
            self.lose(other, "filter")
            self.told.append(Filter(1, "paper", ul(had), ul(self.there), in_cake=ul(cake)))
        elif act == "rinse":
            self.rinse(one, other, to)
        elif act == "decant":
            heel = self.lose(one, "heel")
            self.lose(other, "air")
            self.told.append(Decant(ul(self.there), ul(heel)))
        elif act == "sample":
            self.told.append(Move(MoveAs.SAMPLE, ul(self.lose(one, "sample"))))
        elif act == "blend":
            self.told.append(drawn_for("S-1", ul(self.lose(one, "blend"))))
        else:
            waste = self.lose(one, "waste")
            self.lose(other, "air")
            self.told.append(Finish(ul(self.there), waste=ul(waste)))

    def rinse(self, put_on: int, wanted: int, to: RinseTo) -> None:
        """Put liquid on the cake: all of it runs through, and takes some of the cake's with it."""
        fetched = min(wanted, self.where["cake"])
        self.where["cake"] -= fetched
        if to is RinseTo.BATCH:
            self.there += put_on + fetched
        else:
            self.where["rinse apart"] += fetched
        self.told.append(Rinse("O-1", ul(put_on), ul(put_on + fetched), to))


@given(acts=ACTS)
def test_every_drop_is_where_it_went_and_only_what_nobody_measured_is_unexplained(
    acts: list[tuple[str, int, int, RinseTo]],
) -> None:
    bench = Bench()
    for act in (*acts, ("finish", 0, 0, RinseTo.BATCH)):
        bench.do(*act)
    found, where = became(*bench.told), bench.where
    assert found.came_out == bench.there
    assert (found.drawn, found.heel, found.cake) == (where["sample"], where["heel"], where["cake"])
    assert (found.apart, found.waste) == (where["rinse apart"], where["waste"])
    assert sum(amount for _, amount in found.to_lots) == where["blend"]
    assert found.unexplained == where["air"] + where["filter"]
    # What a filter kept by its volumes is accounted for, whatever became of it in the cake.
    assert found.unaccounted == where["air"]
