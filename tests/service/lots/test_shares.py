"""What is carried along a trace follows from what was really moved."""

from itertools import pairwise
from math import isclose
from pathlib import Path

import networkx as nx
from hypothesis import HealthCheck, given, settings

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind
from ledger.service.lots.shares import Share, no_deeper, only_kind, traced, traced_on
from ledger.service.lots.trace import Way
from ledger.store.read.turnover import turnovers
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.hostile import pour
from tests.service.lots.genealogies import Player, Step, genealogies, undone

SOME = settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])


@SOME
@given(steps=genealogies)
def test_shares_of_any_genealogy_are_the_sums_over_networkx_paths(
    shelf: Keeper, steps: list[Step]
) -> None:
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph = player.graph()
        start = player.lots[0]
        found = traced_on(connection, start, back=False)
        lots = {node.brief.code: node.brief for node in found.trace.nodes}
        turned = turnovers(connection, (brief.seq for brief in lots.values()))
        wholes = {code: turned[b.seq].whole(b.on_hand) for code, b in lots.items()}
        assert set(found.ahead) == nx.descendants(graph, start)
        for lot, share in found.ahead.items():
            total = 0.0
            for path in nx.all_simple_paths(graph, start, lot):
                carried = 1.0 * wholes[start]
                for a, b in pairwise(path):
                    carried *= graph.edges[a, b]["taken"] / wholes[a] if wholes[a] else 0.0
                total += carried
            assert isclose(share.amount, total, rel_tol=1e-9, abs_tol=1e-6)
        assert found.circles == ()


@SOME
@given(steps=genealogies)
def test_no_more_is_drawn_from_a_lot_than_there_was_in_all(
    shelf: Keeper, steps: list[Step]
) -> None:
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph = player.graph()
        found = traced_on(connection, player.lots[0], back=False)
        lots = [node.brief for node in found.trace.nodes]
        turned = turnovers(connection, [brief.seq for brief in lots])
        for brief in lots:
            drawn = sum(graph.edges[edge]["taken"] for edge in graph.out_edges(brief.code))
            assert turned[brief.seq].used == drawn
            assert turned[brief.seq].whole(brief.on_hand) >= drawn


def test_the_oil_is_followed_from_essence_to_bottle(walked: tuple[Keeper, Lots]) -> None:
    """30.769 mL of oil in 30.769 + 420 + 20 mL; 30 mL of that in 3.8 L; 3.75 L in 15 bottles."""
    keeper, lots = walked
    found = traced(keeper.book, lots.oil, back=False)
    whole = 30_769 + 420_000 + 20_000
    essence, syrup, packed = (found.ahead[lot] for lot in (lots.essence, lots.syrup, lots.packed))
    assert essence == Share(30_769.0, Measure.UL, whole, Measure.UL, is_all=True)
    assert isclose(syrup.amount, 30_000 * 30_769 / whole)
    assert (syrup.whole, syrup.whole_measure) == (3_800_000, Measure.UL)
    assert isclose(packed.amount, syrup.amount * 3_750_000 / 3_800_000)
    assert (packed.whole, packed.whole_measure) == (15_000_000, Measure.UEACH)


def test_bottles_that_came_back_are_not_counted_twice(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = traced(keeper.book, lots.oil, back=False).ahead[lots.packed]
    keeper.do("send", lot=lots.packed, amount="4", moved_as="returned", party="Bridge Street Stall")
    keeper.do("send", lot=lots.packed, amount="4", party="Quay Bar")
    assert traced(keeper.book, lots.oil, back=False).ahead[lots.packed] == before


def test_an_old_cake_makes_a_share_one_of_at_least(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    batch = keeper.opens("start", product="Trial", kind="essence", target="1L")
    keeper.do("add", lot=batch, source=lots.spirit, amount="100mL")
    keeper.do(
        "filter",
        lot=batch,
        medium="paper",
        volume_in="100mL",
        volume_out="90mL",
        cake="same",
        cake_of=lots.essence,
        because="the cake was still good",
    )
    found = traced(keeper.book, batch, forward=False)
    assert (found.behind[lots.essence].amount, found.behind[lots.essence].is_all) == (0.0, False)
    assert not found.behind[lots.oil].is_all
    assert found.behind[lots.spirit].amount >= 100_000
    assert not found.behind[lots.spirit].is_all


def test_rinse_liquor_poured_away_ends_at_waste(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do(
        "rinse",
        lot=lots.essence,
        source=lots.spirit,
        volume_in="20mL",
        volume_out="15mL",
        went_to="waste",
        because="tastes of the paper",
    )
    assert traced(keeper.book, lots.spirit).wasted == {lots.spirit: 20_000}


def test_a_depth_hides_lots_and_changes_no_amount(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    whole = traced(keeper.book, lots.oil, back=False)
    near = no_deeper(whole, 1)
    assert [node.brief.code for node in near.trace.nodes] == [lots.oil, lots.essence]
    assert (near.hidden, near.trace.holders) == (2, ())
    assert near.ahead == whole.ahead
    assert no_deeper(whole, None) is whole


def test_only_the_ways_to_one_kind_of_material_stay(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = only_kind(traced(keeper.book, lots.packed, forward=False), MaterialKind.OIL)
    codes = [node.brief.code for node in found.trace.nodes]
    assert codes == [lots.packed, lots.syrup, lots.essence, lots.oil]
    assert [(edge.source, edge.target) for edge in found.trace.edges] == [
        (lots.syrup, lots.packed),
        (lots.essence, lots.syrup),
        (lots.oil, lots.essence),
    ]
    none = only_kind(traced(keeper.book, lots.packed, forward=False), MaterialKind.GUM)
    assert [node.brief.code for node in none.trace.nodes] == [lots.packed]


def test_a_circle_in_a_damaged_book_is_named_and_not_followed(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = traced(keeper.book, lots.oil, back=False)
    pour(Path(keeper.book.where), lots.packed, lots.essence)
    found = traced(keeper.book, lots.oil)
    assert found.circles == ((lots.packed, lots.essence, lots.syrup),)
    assert [node.brief.code for node in found.trace.nodes if node.way is Way.FORWARD] == [
        node.brief.code for node in before.trace.nodes if node.way is Way.FORWARD
    ]
    assert not found.ahead[lots.packed].is_all
