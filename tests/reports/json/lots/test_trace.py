"""A trace, for machines."""

from ledger.domain.entries.choices import MoveAs
from ledger.service.lots.shares import Share, Traced, traced
from reports.json.kit.answer import Amount
from reports.json.lots.trace import EdgeTold, ShareTold, trace_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
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


def test_every_part_of_a_trace_stands_under_its_own_key() -> None:
    """Circles, lots left out, documents, shares of which not every way was measured."""
    share = filled(Share, amount=2_500.4, whole=10_000, is_all=False, is_in_cake=False)
    full = filled(Traced, code="A-1", behind={"A-1": share}, ahead={})
    check("trace_filled", trace_answer(full, "next", ["a.csv", "b.pdf"]))
    assert trace_answer(bare(Traced), "next").files == ()


def test_lots_behind_have_a_share_of_what_is_behind_and_others_of_what_is_ahead() -> None:
    near, far = (filled(Share, amount=amount, is_in_cake=False) for amount in (1_000.0, 2_000.0))
    found = filled(Traced, code="A-1", behind={"A-1": near}, ahead={"A-1": far})
    nodes = [(node.way, node.share) for node in trace_answer(found, "").nodes]
    assert [(way, share and share.carried.amount) for way, share in nodes] == [
        ("here", "2"),
        ("back", "1"),
    ]
