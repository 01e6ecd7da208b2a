"""One step back and one forward from a lot, with days and addresses.

Guarantees: every lot it was made of and everybody who was sent any stands in them; what the book
does not know of an address is left open.
"""

from collections.abc import Iterator, Mapping

from ledger.domain.amounts.quantity import show
from ledger.domain.entries import Party, Receipt
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import latest
from ledger.service.lots.dossier import Dossier
from reports.kit.format import day, tidy
from reports.views.lots import NeighbourRow
from reports.words.entries.goods import gone
from reports.words.lots.trace import supplied_by

Parties = Mapping[str, Party]
"""Who is outside the house, by name."""


def back_rows(dossier: Dossier, parties: Parties) -> tuple[NeighbourRow, ...]:
    """Return what a lot was made of, and of a delivery who sent it."""
    lots = _lots(dossier)
    rows = [
        _lot_row(lots.get(edge.source), edge.source, edge.words, parties) for edge in dossier.inputs
    ]
    return (*rows, *_delivered(dossier, parties))


def _delivered(dossier: Dossier, parties: Parties) -> Iterator[NeighbourRow]:
    """Yield who sent a delivery, with their lot, its day and how much came."""
    lot, receipt = dossier.lot, latest(dossier.state, Receipt)
    if not lot.supplier:
        return
    theirs = f"their lot {lot.supplier_lot}" if lot.supplier_lot else ""
    yield NeighbourRow(
        who=lot.supplier,
        what=", ".join(part for part in (lot.name, theirs) if part),
        on=day(lot.opened_at) if lot.opened_at else "",
        amount=tidy(receipt.amount.written) if receipt else "",
        where=_address(lot.supplier, parties),
    )


def forward_rows(dossier: Dossier, parties: Parties) -> tuple[NeighbourRow, ...]:
    """Return what a lot went into, and who was sent any."""
    lots = _lots(dossier)
    into = [
        _lot_row(lots.get(edge.target), edge.target, edge.words, {}) for edge in dossier.outputs
    ]
    sent = [
        NeighbourRow(
            who=holder.party or "\N{EN DASH}",
            what=", ".join(part for part in (gone(holder.moved_as, None), holder.document) if part),
            on=holder.on,
            amount=show(abs(holder.amount), holder.measure),
            where=_address(holder.party, parties),
        )
        for holder in dossier.holders
    ]
    return (*into, *sent)


def _lots(dossier: Dossier) -> dict[str, Lot]:
    return {node.brief.code: node.brief for node in dossier.trace.nodes}


def _lot_row(lot: Lot | None, code: str, amount: str, parties: Parties) -> NeighbourRow:
    if lot is None:
        return NeighbourRow(code, "", "", amount, "")
    supplied = supplied_by(lot)
    return NeighbourRow(
        who=code,
        what=f"{lot.name}, {supplied}" if supplied else lot.name,
        on=day(lot.opened_at) if lot.opened_at else "",
        amount=amount,
        where=_address(lot.supplier, parties),
    )


def _address(name: str | None, parties: Parties) -> str:
    known = parties.get(name or "")
    return (known.address or "") if known else ""
