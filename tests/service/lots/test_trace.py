"""Tracing agrees with networkx, an outside reference for graphs, whatever was made of what."""

from collections import Counter
from pathlib import Path

import networkx as nx
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MoveAs
from ledger.errors import RefusedError
from ledger.service.lots.trace import Carried, Trace, Way, ahead_of, trace, trace_on
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.hostile import pour
from tests.service.lots.genealogies import Player, Step, genealogies, reached, undone

SOME = settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])


def depths(found: Trace, way: Way) -> dict[str, int]:
    return {node.brief.code: node.depth for node in found.nodes if node.way is way}


def expected_depths(graph: "nx.DiGraph[str]", lot: str) -> dict[str, int]:
    lengths = nx.single_source_shortest_path_length(graph, lot)
    return {code: depth for code, depth in lengths.items() if code != lot}


@SOME
@given(steps=genealogies)
def test_a_trace_so_many_steps_far_is_what_networkx_walks(shelf: Keeper, steps: list[Step]) -> None:
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph = player.graph()
        assert nx.is_directed_acyclic_graph(graph)
        for lot in player.lots:
            found = trace_on(connection, lot, deepest=len(player.lots))
            assert set(depths(found, Way.BACK)) == nx.ancestors(graph, lot)
            assert set(depths(found, Way.FORWARD)) == nx.descendants(graph, lot)
            assert depths(found, Way.BACK) == expected_depths(graph.reverse(), lot)
            assert depths(found, Way.FORWARD) == expected_depths(graph, lot)
            near = graph.subgraph({lot} | nx.ancestors(graph, lot) | nx.descendants(graph, lot))
            amounts = {(edge.source, edge.target): edge.amount for edge in found.edges}
            assert amounts == {(a, b): graph.edges[a, b]["taken"] for a, b in near.edges}
            assert len(amounts) == len(found.edges)


@SOME
@given(steps=genealogies)
def test_a_trace_goes_only_by_what_left_a_lot_after_something_came(
    shelf: Keeper, steps: list[Step]
) -> None:
    """By ways in time that networkx walks; a lot emptied in between may end one sooner."""
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph = player.graph_in_time()
        for lot in player.lots:
            found = trace_on(connection, lot)
            behind, ahead = set(depths(found, Way.BACK)), set(depths(found, Way.FORWARD))
            assert behind <= reached(graph, lot, back=True)
            assert ahead <= reached(graph, lot)
            assert set(player.graph().predecessors(lot)) <= behind
            assert behind == set(found.behind)
            assert ahead == set(found.ahead)
            for edge in found.edges:
                assert edge.amount <= player.graph().edges[edge.source, edge.target]["taken"]


@SOME
@given(steps=genealogies, deepest=st.integers(0, 4))
def test_a_trace_goes_no_deeper_than_asked_and_one_way_if_asked(
    shelf: Keeper, steps: list[Step], deepest: int
) -> None:
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph, lot = player.graph(), player.lots[-1]
        back = trace_on(connection, lot, forward=False, deepest=deepest)
        ahead = trace_on(connection, player.lots[0], back=False, deepest=deepest)
        assert {way for node in back.nodes if (way := node.way) is not Way.HERE} <= {Way.BACK}
        assert depths(back, Way.BACK) == {
            code: depth
            for code, depth in expected_depths(graph.reverse(), lot).items()
            if depth <= deepest
        }
        assert depths(ahead, Way.FORWARD) == {
            code: depth
            for code, depth in expected_depths(graph, player.lots[0]).items()
            if depth <= deepest
        }
        assert [node.depth for node in back.nodes] == sorted(node.depth for node in back.nodes)


def test_random_genealogies_have_all_sorts_of_steps_in_them(shelf: Keeper) -> None:
    """Else the laws above would hold of nothing."""
    filled: list[Step] = [("add", 0, batch, 9_000) for batch in range(3)]
    acts = ["add", "receive", "start", "rework", "rinse", "cake", "bottle", "correct", "reroute"]
    steps: list[Step] = [(act, 0, turn % 3, 5 + turn) for turn, act in enumerate(acts * 2)]
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play([*filled, *steps, ("strike", 0, 0, 1)])
        kinds = Counter(
            kind
            for (kind,) in connection.exec_driver_sql(
                "SELECT kind || CASE WHEN corrects IS NULL THEN '' ELSE ' corrected' END FROM entry"
            )
        )
    assert {"receipt", "start", "add", "rinse", "filter", "bottle", "add corrected"} <= kinds.keys()
    assert kinds["strike corrected"] == 1
    assert player.graph().number_of_edges() > 5


def test_ahead_of_a_lot_is_all_that_is_made_of_it_however_far_and_itself() -> None:
    """Also in a circle, as a damaged book may have it."""
    ways = ("AB", "BC", "CD", "EB", "DB", "FA")
    edges = [Carried(way[0], way[1], 1, Measure.UL) for way in ways]
    found = {lot: "".join(sorted(ahead_of(lot, edges))) for lot in "ABEFZ"}
    assert found == {"A": "ABCD", "B": "BCD", "E": "BCDE", "F": "ABCDF", "Z": "Z"}


def test_the_main_path_is_traced_from_oil_to_bottle(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = trace(keeper.book, lots.essence)
    assert found.lot.code == lots.essence
    assert depths(found, Way.HERE) == {lots.essence: 0}
    assert depths(found, Way.BACK) == {lots.oil: 1, lots.spirit: 1, lots.carb: 1}
    assert depths(found, Way.FORWARD) == {lots.syrup: 1, lots.packed: 2}
    assert Carried(lots.oil, lots.essence, 30_769, Measure.UL) in found.edges
    assert Carried(lots.spirit, lots.essence, 440_000, Measure.UL) in found.edges
    assert Carried(lots.syrup, lots.packed, 3_750_000, Measure.UL) in found.edges
    assert next(edge.words for edge in found.edges if edge.source == lots.carb) == "15 g"


def test_a_struck_addition_leaves_the_trace(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    addition = next(
        entry.seq
        for entry in keeper.entries()
        if entry.kind == "add" and entry.draft.lot == lots.syrup
        and getattr(entry.facts, "source", "") == lots.essence
    )  # fmt: skip
    keeper.do("strike", entry=str(addition), because="another syrup")
    assert lots.essence not in depths(trace(keeper.book, lots.packed), Way.BACK)
    assert lots.oil not in depths(trace(keeper.book, lots.packed), Way.BACK)
    assert depths(trace(keeper.book, lots.essence), Way.FORWARD) == {}


def test_rinse_liquor_kept_apart_is_traced_to_the_batch_whose_cake_it_washed(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    batch = keeper.opens("start", product="Trial", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=lots.oil, amount="5mL")
    apart = keeper.opens(
        "rinse", lot=batch, source=lots.spirit, volume_in="20mL", volume_out="15mL", went_to="apart"
    )
    found = trace(keeper.book, apart)
    assert depths(found, Way.BACK) == {batch: 1, lots.spirit: 1, lots.oil: 2}
    carried = next(edge for edge in found.edges if edge.source == batch)
    assert (carried.amount, carried.words) == (0, "carried, not measured")


def test_holders_are_told_by_lot_and_day_and_what_came_back_counts_against(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    keeper.clock.forward(days=1)
    keeper.do(
        "send", lot=lots.packed, amount="2", moved_as="on-return", party="Fair", document="S-1"
    )
    keeper.clock.forward(days=1)
    keeper.do("send", lot=lots.packed, amount="1", moved_as="returned", party="Fair")
    found = trace(keeper.book, lots.oil)
    assert [(h.lot, h.party, h.moved_as, h.amount, h.document) for h in found.holders] == [
        (lots.packed, "Bridge Street Stall", MoveAs.SALE, 6_000_000, None),
        (lots.packed, "Fair", MoveAs.ON_RETURN, 2_000_000, "S-1"),
        (lots.packed, "Fair", MoveAs.RETURNED, -1_000_000, None),
    ]
    assert [holder.on for holder in found.holders] == sorted(h.on for h in found.holders)
    assert trace(keeper.book, lots.oil, deepest=2).holders == ()


def test_a_lot_that_is_not_in_the_book_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        trace(sqlite_keeper.book, "NONE-1")
    assert raised.value.problems == (
        ("The lot NONE-1 is not in the book.", "pottle stock lists the lots that are."),
    )


def test_a_book_damaged_into_a_circle_is_traced_to_an_end(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = trace(keeper.book, lots.oil)
    pour(Path(keeper.book.where), lots.packed, lots.oil)
    found = trace(keeper.book, lots.oil)
    assert depths(found, Way.FORWARD) == depths(before, Way.FORWARD)
    assert [node.brief.code for node in found.nodes].count(lots.oil) == 1
