"""A trace, for machines."""

from ledger.domain.entries.choices import MoveAs
from ledger.service.lots.shares import traced
from reports.json.kit.answer import Amount
from reports.json.lots.trace import EdgeTold, ShareTold, trace_answer
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_trace_has_its_lots_movements_holders_and_shares(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = trace_answer(traced(keeper.book, lots.oil), "pottle stock", ["trace.csv"])
    nodes = {node.code: node for node in told.nodes}
    assert [*nodes] == [lots.oil, lots.essence, lots.syrup, lots.packed]
    assert [node.depth for node in nodes.values()] == [0, 1, 2, 3]
    assert nodes[lots.oil].share is None
    assert EdgeTold(lots.oil, lots.essence, Amount("30.769", "mL")) in told.edges
    (holder,) = told.holders
    assert (holder.party, holder.moved_as) == ("Bridge Street Stall", MoveAs.SALE)
    assert (holder.code, holder.amount) == (lots.packed, Amount("6", "each"))
    assert (told.circles, told.left_out_count) == ((), 0)
    assert [file.path for file in told.files] == ["trace.csv"]


def test_a_share_is_amounts_and_a_concentration(walked: tuple[Keeper, Lots]) -> None:
    """30.769 mL of oil in 450.769, filtered to 430, made up to 450; at last 29.221 in 448 mL."""
    keeper, lots = walked
    told = trace_answer(traced(keeper.book, lots.oil), "")
    shares = {node.code: node.share for node in told.nodes}
    assert shares[lots.essence] == ShareTold(
        carried=Amount("29.221", "mL"),
        whole=Amount("448", "mL"),
        concentration="6.52",
        concentration_unit="%",
        all_measured=True,
    )
    packed = shares[lots.packed]
    assert packed is not None
    assert packed.concentration_unit == "mL each"


def test_every_field_of_a_trace_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    answer = trace_answer(traced(keeper.book, lots.syrup), "pottle stock")
    check("trace", answer)
