"""A trace, for machines: its lots, movements and holders."""

from typing import Any

from ledger.service.lots.shares import Traced
from ledger.service.lots.trace import Holder, Trace, Way
from reports.json.lots.brief import brief_plain
from reports.json.lots.shares import share_plain


def trace_plain(trace: Trace) -> dict[str, Any]:
    """Return a trace: the lot, its nodes, edges and holders."""
    return {
        "lot": trace.lot.code,
        "nodes": [
            {**brief_plain(node.brief), "depth": node.depth, "way": str(node.way)}
            for node in trace.nodes
        ],
        "edges": [
            {
                "from": edge.source,
                "to": edge.target,
                "amount": str(edge.amount),
                "unit": str(edge.measure),
            }
            for edge in trace.edges
        ],
        "holders": [holder_plain(item) for item in trace.holders],
    }


def holder_plain(item: Holder) -> dict[str, Any]:
    """Return goods that went out or came back."""
    return {
        "lot": item.lot,
        "party": item.party,
        "as": str(item.moved_as),
        "amount": str(item.amount),
        "unit": str(item.measure),
        "on": item.on,
        "document": item.document,
    }


def traced_plain(found: Traced) -> dict[str, Any]:
    """Return a trace with how much is carried; `share` of a lot back is of it in the lot traced."""
    plain = trace_plain(found.trace)
    for node, told in zip(found.trace.nodes, plain["nodes"], strict=True):
        shares = found.behind if node.way is Way.BACK else found.ahead
        if node.brief.code in shares:
            told["share"] = share_plain(shares[node.brief.code])
    circles = [list(circle) for circle in found.trace.circles]
    return {**plain, "circles": circles, "left_out": found.hidden}
