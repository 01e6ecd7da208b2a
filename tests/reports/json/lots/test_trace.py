"""A trace, for machines."""

from ledger.service.lots.shares import traced
from reports.json.lots.trace import traced_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_trace_has_its_lots_movements_holders_and_shares(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = traced_plain(traced(keeper.book, lots.oil))
    nodes = {node["code"]: node for node in told["nodes"]}
    assert [*nodes] == [lots.oil, lots.essence, lots.syrup, lots.packed]
    assert [node["depth"] for node in nodes.values()] == [0, 1, 2, 3]
    assert "share" not in nodes[lots.oil]
    assert nodes[lots.packed]["share"]["concentration_unit"] == "mL each"
    assert {"from": lots.oil, "to": lots.essence, "amount": "30769", "unit": "uL"} in told["edges"]
    (holder,) = told["holders"]
    assert (holder["party"], holder["as"], holder["amount"]) == (
        "Bridge Street Stall",
        "sale",
        "6000000",
    )
    assert (told["circles"], told["left_out"]) == ([], 0)
