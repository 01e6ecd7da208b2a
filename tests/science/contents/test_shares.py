"""Amounts carried agree with networkx, an outside reference for graphs, path by path."""

from math import isclose, prod

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.contents.shares import Carrying, Ways, carried, in_order

Edge = tuple[str, str, int]
MOST_LOTS = 7


@st.composite
def webs(draw: st.DrawFn) -> tuple[list[Edge], dict[str, int]]:
    """Draw lots that go only into later ones, and how much there was of each."""
    count = draw(st.integers(1, MOST_LOTS))
    pairs = [(a, b) for a in range(count) for b in range(a + 1, count)]
    taken = draw(st.lists(st.integers(0, 900), min_size=len(pairs), max_size=len(pairs)))
    is_there = draw(st.lists(st.booleans(), min_size=len(pairs), max_size=len(pairs)))
    edges = [
        (f"L{a}", f"L{b}", amount)
        for (a, b), amount, there in zip(pairs, taken, is_there, strict=True)
        if there
    ]
    wholes = {f"L{n}": draw(st.integers(1, 5_000)) for n in range(count)}
    return edges, wholes


def ways_of(edges: list[Edge]) -> Ways:
    found: dict[str, list[tuple[str, int]]] = {}
    for source, target, amount in edges:
        found.setdefault(source, []).append((target, amount))
    return found


def graph_of(edges: list[Edge], wholes: dict[str, int]) -> "nx.DiGraph[str]":
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(wholes)
    for source, target, amount in edges:
        graph.add_edge(source, target, amount=amount)
    return graph


def along_all_paths(
    graph: "nx.DiGraph[str]", wholes: dict[str, int], start: str, end: str
) -> float:
    """Add up, over every simple path, the first amount times the share taken at each lot after."""
    total = 0.0
    for path in nx.all_simple_edge_paths(graph, start, end):
        amounts = [graph.edges[edge[0], edge[1]]["amount"] for edge in path]
        shares = [
            amount / wholes[edge[0]] for edge, amount in zip(path[1:], amounts[1:], strict=True)
        ]
        total += amounts[0] * prod(shares)
    return total


@given(web=webs())
def test_the_amount_in_each_lot_is_the_sum_over_all_paths(
    web: tuple[list[Edge], dict[str, int]],
) -> None:
    edges, wholes = web
    graph = graph_of(edges, wholes)
    found, order = carried("L0", ways_of(edges), wholes)
    assert set(order.lots) == {"L0"} | nx.descendants(graph, "L0")
    assert order.circles == ()
    for lot in nx.descendants(graph, "L0"):
        assert isclose(found[lot].amount, along_all_paths(graph, wholes, "L0", lot), abs_tol=1e-9)


@given(web=webs())
def test_a_share_is_whole_only_where_every_path_was_measured(
    web: tuple[list[Edge], dict[str, int]],
) -> None:
    edges, wholes = web
    graph = graph_of(edges, wholes)
    found, _ = carried("L0", ways_of(edges), wholes)
    for lot in nx.descendants(graph, "L0"):
        paths = nx.all_simple_edge_paths(graph, "L0", lot)
        unmeasured = any(graph.edges[e[0], e[1]]["amount"] == 0 for path in paths for e in path)
        assert found[lot].is_all is not unmeasured


@given(web=webs())
def test_what_goes_back_is_what_goes_forward_turned_round(
    web: tuple[list[Edge], dict[str, int]],
) -> None:
    """Amount of A in Z, walked from A forward, is that walked from Z back."""
    edges, wholes = web
    last = max(wholes)
    back, _ = carried(last, ways_of([(b, a, amount) for a, b, amount in edges]), wholes)
    for lot in set(back) - {last}:
        ahead, _ = carried(lot, ways_of(edges), wholes)
        assert isclose(back[lot].amount, ahead[last].amount, abs_tol=1e-9)


@given(web=webs())
def test_no_lot_comes_before_one_that_leads_to_it(web: tuple[list[Edge], dict[str, int]]) -> None:
    edges, _ = web
    lots = in_order("L0", ways_of(edges)).lots
    assert len(set(lots)) == len(lots)
    for source, target, _ in edges:
        if source in lots:
            assert lots.index(source) < lots.index(target)


@given(
    edges=st.lists(
        st.tuples(st.integers(0, 5), st.integers(0, 5), st.just(1)).filter(lambda e: e[0] != e[1]),
        max_size=14,
    )
)
def test_circles_are_found_when_networkx_finds_some_and_are_circles(
    edges: list[tuple[int, int, int]],
) -> None:
    told = [(f"L{a}", f"L{b}", amount) for a, b, amount in edges]
    graph = graph_of(told, {"L0": 1})
    reached = graph.subgraph({"L0"} | nx.descendants(graph, "L0"))
    order = in_order("L0", ways_of(told))
    assert set(order.lots) == set(reached)
    assert bool(order.circles) is not nx.is_directed_acyclic_graph(reached)
    for circle in order.circles:
        assert all(
            graph.has_edge(a, b) for a, b in zip(circle, (*circle[1:], circle[0]), strict=True)
        )
    left = nx.DiGraph(reached)
    left.remove_edges_from(order.closing)
    assert nx.is_directed_acyclic_graph(left)


def test_amounts_on_and_after_a_circle_are_not_known() -> None:
    ways = {"a": [("b", 10)], "b": [("c", 10)], "c": [("b", 5), ("d", 5)]}
    found, order = carried("a", ways, {"a": 100, "b": 100, "c": 100, "d": 100})
    assert order.circles == (("b", "c"),)
    assert {lot for lot, item in found.items() if not item.is_all} == {"b", "c", "d"}


def test_a_lot_of_which_nothing_was_measured_passes_on_an_unknown_amount() -> None:
    found, _ = carried("a", {"a": [("b", 10)], "b": [("c", 5)]}, {"a": 100, "b": 0, "c": 5})
    assert found["b"] == Carrying(10.0, is_all=True)
    assert found["c"] == Carrying(0.0, is_all=False)


@pytest.mark.parametrize("length", [5_000])
def test_a_chain_of_thousands_is_reckoned(length: int) -> None:
    ways = {f"L{n}": [(f"L{n + 1}", 1)] for n in range(length)}
    found, _ = carried("L0", ways, {f"L{n}": 1 for n in range(length + 1)})
    assert found[f"L{length}"] == Carrying(1.0, is_all=True)
