"""What is dealt out to a batch is counted by batches, and batches that share luck are one."""

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from networkx import Graph, connected_components

from ledger.science.statistics.exact import Table
from ledger.science.statistics.levels import grounds, level_of, tables
from ledger.science.statistics.suspects import Level, Observed
from tests.science.statistics.suspected import observed

BATCHES = st.lists(
    st.sets(st.integers(0, 6), min_size=1, max_size=3).map(
        lambda codes: " ".join(f"E-{code}" for code in sorted(codes))
    ),
    min_size=1,
    max_size=12,
)


def syrups(*batches: str) -> list[Observed]:
    return [observed(f"S-{place}", batch) for place, batch in enumerate(batches)]


@given(BATCHES)
def test_lots_that_hang_together_by_any_batch_are_one_unit(batches: list[str]) -> None:
    """Networkx finds the same parts of the graph of lots and batches."""
    graph = Graph(
        (f"S-{place}", code) for place, batch in enumerate(batches) for code in batch.split()
    )
    expected = {
        frozenset(int(node[2:]) for node in part if node.startswith("S-"))
        for part in connected_components(graph)
    }
    units = grounds(syrups(*batches))[Level.BATCH].units
    assert {frozenset(unit.runs) for unit in units} == expected


def test_a_batch_failed_when_any_of_its_lots_did() -> None:
    lots = syrups("E-1", "E-1", "E-2")
    lots[1] = replace(lots[1], is_failed=True)
    ground = grounds(lots)[Level.BATCH]
    assert [unit.is_failed for unit in ground.units] == [True, False]
    assert (ground.failed, ground.failures) == (0b01, 1)


def test_units_stand_in_the_order_in_which_they_were_begun() -> None:
    days = ("2026-03-02", "2026-01-05", "2026-02-03")
    lots = [replace(lot, begun=day) for lot, day in zip(syrups("A", "B", "C"), days, strict=True)]
    ground = grounds(lots)[Level.BATCH]
    assert ground.is_dated
    assert [unit.begun_on for unit in ground.units] == sorted(days)
    assert not grounds(syrups("A"))[Level.BATCH].is_dated


def test_what_is_the_same_in_every_batch_is_judged_by_batches_else_by_runs() -> None:
    lots = syrups("A", "A", "B", "B")
    found = grounds(lots)
    assert level_of(frozenset({0, 1}), lots, found) is Level.BATCH
    assert level_of(frozenset({0, 2}), lots, found) is Level.RUN


def test_what_is_the_same_in_every_base_is_judged_by_bases() -> None:
    bases = ("X", "Y", "X", "Y")
    lots = [replace(lot, bases=base) for lot, base in zip(syrups(*"AABB"), bases, strict=True)]
    assert level_of(frozenset({0, 2}), lots, grounds(lots)) is Level.BASE


def test_runs_are_compared_within_one_product_and_one_batch() -> None:
    lots = [replace(lot, is_failed=place % 2 == 0) for place, lot in enumerate(syrups(*"AABBC"))]
    strata = grounds(lots)[Level.RUN].strata
    assert strata == {"syrup, A": 0b00011, "syrup, B": 0b01100}


def test_lots_without_a_batch_are_counted_each() -> None:
    lots = [replace(lot, is_failed=place == 0) for place, lot in enumerate(syrups("", ""))]
    assert list(grounds(lots)) == [Level.RUN]
    assert grounds(lots)[Level.RUN].strata == {"syrup": 0b11}


def test_counts_are_those_of_each_stratum() -> None:
    assert tables(0b0101, 0b0110, {"a": 0b0011, "b": 0b1100}) == {
        "a": Table(0, 1, 1, 0),
        "b": Table(1, 0, 0, 1),
    }


def test_a_mask_has_the_bit_of_every_unit_of_which_a_lot_is_told() -> None:
    found = grounds(syrups("A", "B", "B", "C"))
    assert found[Level.BATCH].mask([0, 2]) == 0b011
    assert found[Level.BATCH].mask([1, 2, 3]) == 0b110
    assert found[Level.RUN].mask([]) == 0


def test_batches_are_compared_within_one_product() -> None:
    lots = [replace(lot, is_failed=place == 0) for place, lot in enumerate(syrups("A", "B"))]
    assert grounds(lots)[Level.BATCH].strata == {"syrup": 0b11}
