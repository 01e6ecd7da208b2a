"""A trace as a table for a spreadsheet and as the view of a paper.

Guarantees: one row for each movement between two lots and each one out of the house, amounts and
units in columns of their own, days as ISO dates. Refuses: prices.
"""

from collections.abc import Iterator, Mapping, Sequence

from ledger.domain.lots.lot import Lot
from ledger.service.lots.shares import Share, Traced
from ledger.service.lots.trace import Carried, Holder, Way
from reports.kit.amounts import UNITS, amount_in
from reports.kit.format import plural
from reports.kit.frame import Frame
from reports.kit.tables import Sheet
from reports.views.lots import TraceRow, TraceView
from reports.words.lots.shares import concentration, share_words
from reports.words.lots.trace import (
    Branch,
    branches,
    circle_lines,
    opened_on,
    supplied_by,
    what_it_is,
)

HEADS = (
    "way",
    "steps",
    "lot",
    "what",
    "opened",
    "status",
    "last_look",
    "from_lot",
    "to",
    "as",
    "on",
    "document",
    "amount",
    "unit",
    "measured",
    "concentration",
    "concentration_unit",
    "all_measured",
)
"""Columns of a trace."""


def trace_sheet(found: Traced) -> Sheet:
    """Return a trace as a table."""
    rows = (*_edge_rows(found, Way.BACK), *_edge_rows(found, Way.FORWARD), *_holder_rows(found))
    return Sheet(HEADS, rows)


def _edge_rows(found: Traced, way: Way) -> Iterator[tuple[str, ...]]:
    shares = found.behind if way is Way.BACK else found.ahead
    depths = {n.brief.code: n.depth for n in found.trace.nodes if n.way in (way, Way.HERE)}
    lots = {node.brief.code: node.brief for node in found.trace.nodes}
    for edge in found.trace.edges:
        far = edge.source if way is Way.BACK else edge.target
        if edge.source in depths and edge.target in depths and far in shares:
            lot = lots[far]
            yield (
                str(way),
                str(depths[far]),
                *_lot_cells(lot),
                edge.source,
                edge.target,
                "into",
                *("", ""),
                *_amount_cells(edge),
                *_share_cells(shares[far]),
            )


def _holder_rows(found: Traced) -> Iterator[tuple[str, ...]]:
    depths = {n.brief.code: n.depth for n in found.trace.nodes if n.way is not Way.BACK}
    lots = {node.brief.code: node.brief for node in found.trace.nodes}
    for item in found.trace.holders:
        share = found.ahead.get(item.lot)
        yield (
            str(Way.FORWARD),
            str(depths[item.lot]),
            *_lot_cells(lots[item.lot]),
            item.lot,
            item.party or "",
            str(item.moved_as),
            item.on,
            item.document or "",
            *_sent_cells(item),
            *(_share_cells(share) if share else ("", "", "yes")),
        )


def _lot_cells(lot: Lot) -> tuple[str, ...]:
    return lot.code, lot.name, opened_on(lot), str(lot.status), lot.grade or ""


def _amount_cells(edge: Carried) -> tuple[str, ...]:
    amount = amount_in(edge.amount, edge.measure) if edge.amount else ""
    return amount, UNITS[edge.measure], "yes" if edge.amount else "no"


def _sent_cells(item: Holder) -> tuple[str, ...]:
    return amount_in(abs(item.amount), item.measure), UNITS[item.measure], "yes"


def _share_cells(share: Share) -> tuple[str, ...]:
    return (*concentration(share), "yes" if share.is_all else "no")


def trace_view(
    found: Traced,
    frame: Frame,
    *,
    back: bool,
    forward: bool,
    notes: Sequence[str] = (),
) -> TraceView:
    """Return a trace as a paper shows it, with what else is to be said of it."""
    lot = found.trace.lot
    notes = [*circle_lines(found.trace.circles), *notes]
    if found.hidden:
        notes.append(f"{plural(found.hidden, 'lot')} further away left out.")
    return TraceView(
        frame=frame,
        lot=lot.code,
        title=what_it_is(lot),
        back=tuple(_paper_rows(found, Way.BACK)) if back else None,
        forward=tuple(_paper_rows(found, Way.FORWARD)) if forward else None,
        notes=tuple(notes),
    )


def _paper_rows(found: Traced, way: Way) -> Iterator[TraceRow]:
    lots = {node.brief.code: node.brief for node in found.trace.nodes}
    shares = found.behind if way is Way.BACK else found.ahead
    for branch in branches(found, way):
        if branch.lasts:
            yield _paper_row(branch, lots, shares)


def _paper_row(branch: Branch, lots: Mapping[str, Lot], shares: Mapping[str, Share]) -> TraceRow:
    depth = len(branch.lasts)
    if branch.end:
        end = branch.end
        who = ", ".join(part for part in (end.party, end.document) if part)
        return TraceRow(depth, "", who, end.amount, "", end.on, end.became, end.is_held)
    if branch.code is None:
        return TraceRow(depth, "", branch.words, "", "", "")
    if branch.again:
        return TraceRow(depth, branch.code, "see above", branch.words, "", "")
    brief, share = lots[branch.code], shares.get(branch.code)
    look = f", {brief.grade}" if brief.grade else ""
    return TraceRow(
        depth,
        branch.code,
        ", ".join(part for part in (brief.name, supplied_by(brief), opened_on(brief)) if part),
        branch.words,
        share_words(share) if share else "",
        f"{brief.status}{look}",
    )
