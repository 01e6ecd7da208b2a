"""Lots in order agree with networkx, an outside reference for graphs."""

from collections.abc import Callable

import networkx as nx
from hypothesis import given
from hypothesis import strategies as st

from ledger.science.contents.order import in_order

Edges = list[tuple[int, int]]
EDGES = st.lists(
    st.tuples(st.integers(0, 5), st.integers(0, 5)).filter(lambda edge: edge[0] != edge[1]),
    max_size=14,
)


def sources_of(edges: Edges) -> Callable[[str], list[str]]:
    found: dict[str, list[str]] = {}
    for lot, source in edges:
        found.setdefault(f"L{lot}", []).append(f"L{source}")
    return lambda lot: found.get(lot, [])


def graph_of(edges: Edges) -> "nx.DiGraph[str]":
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_node("L0")
    graph.add_edges_from((f"L{lot}", f"L{source}") for lot, source in edges)
    return graph


@given(edges=EDGES)
def test_no_lot_comes_before_one_it_follows_from(edges: Edges) -> None:
    acyclic = [(low, high) for low, high in edges if low < high]
    lots = in_order(["L0"], sources_of(acyclic)).lots
    assert set(lots) == {"L0"} | nx.descendants(graph_of(acyclic), "L0")
    assert lots[-1] == "L0"
    for lot, source in acyclic:
        if f"L{lot}" in lots:
            assert lots.index(f"L{source}") < lots.index(f"L{lot}")


@given(edges=EDGES)
def test_circles_are_found_when_networkx_finds_some_and_are_circles(edges: Edges) -> None:
    graph = graph_of(edges)
    reached = graph.subgraph({"L0"} | nx.descendants(graph, "L0"))
    order = in_order(["L0"], sources_of(edges))
    assert set(order.lots) == set(reached)
    assert bool(order.circles) is not nx.is_directed_acyclic_graph(reached)
    for circle in order.circles:
        assert all(
            graph.has_edge(a, b) for a, b in zip(circle, (*circle[1:], circle[0]), strict=True)
        )
    left = nx.DiGraph(reached)
    left.remove_edges_from(order.closing)
    assert nx.is_directed_acyclic_graph(left)


def test_lots_begun_with_are_told_once_each() -> None:
    sources = {"a": ["c"], "b": ["c", "a"], "c": []}
    assert in_order(["a", "b", "a"], sources.__getitem__).lots == ("c", "a", "b")
