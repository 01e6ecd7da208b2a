"""A trace, for machines: its lots, movements and holders, with how much is carried."""

from collections.abc import Sequence
from datetime import date

from msgspec import field
from msgspec.structs import asdict

from ledger.domain.entries.choices import MoveAs
from ledger.service.lots.shares import Share, Traced
from ledger.service.lots.trace import Carried, Holder, Way
from reports.json.kit.answer import Amount, Answer, Code, Figure, File, amount_of
from reports.json.kit.lot import LotBrief, lot_brief
from reports.words.lots.shares import concentration


class ShareTold(Answer, frozen=True):
    """How much of one lot is in another: of a lot back, in the lot traced; else of that in it."""

    carried: Amount
    """How much is carried, rounded to the smallest unit."""
    whole: Amount
    """How much there was in all of the lot it is in."""
    concentration: Figure | None
    """The one in the other, to three figures; null for none and where nobody measured."""
    concentration_unit: str
    """What that counts in: % of like measures, else such as g/L or mL each."""
    all_measured: bool
    """Whether every way was measured; else there is at least this much."""


class NodeTold(LotBrief, frozen=True):
    """A lot met on a trace."""

    depth: int
    """Fewest steps from the lot traced."""
    way: Way
    """Which way it was met."""
    share: ShareTold | None
    """How much is carried; null for the lot traced itself."""


class EdgeTold(Answer, frozen=True):
    """What went from one lot into another, in all."""

    source: Code = field(name="from")
    """Code of the lot it left."""
    target: Code = field(name="to")
    """Code of the lot it went into."""
    amount: Amount
    """How much; nothing: carried, and nobody measured."""


class HolderTold(Answer, frozen=True):
    """Goods that went out or came back."""

    code: Code
    """Code of the lot."""
    party: str | None
    """Who, if anybody was named."""
    moved_as: MoveAs = field(name="as")
    """How it went."""
    amount: Amount
    """How much; below nothing what came back."""
    on: date
    """On which day."""
    document: str | None
    """Delivery note, invoice or stall sheet."""


class TraceAnswer(Answer, frozen=True):
    """A lot with all it is made of and all that is made of it."""

    code: Code
    """Code of the lot traced."""
    nodes: tuple[NodeTold, ...]
    """The lot, then the lots back, then those forward, each nearest first."""
    edges: tuple[EdgeTold, ...]
    """What went into what, between those lots."""
    holders: tuple[HolderTold, ...]
    """Where the lot and all forward of it went, by lot and day."""
    circles: tuple[tuple[Code, ...], ...]
    """Circles in a damaged book: codes, each lot gone into the next and the last into the first."""
    left_out_count: int
    """How many lots are further away than was asked for."""
    next: str
    """The command that usually comes next."""
    files: tuple[File, ...]
    """The files that were written."""


def trace_answer(found: Traced, step: str, paths: Sequence[str] = ()) -> TraceAnswer:
    """Return a trace with how much is carried."""
    return TraceAnswer(
        code=found.trace.lot.code,
        nodes=tuple(_nodes(found)),
        edges=edges_told(found.trace.edges),
        holders=holders_told(found.trace.holders),
        circles=found.trace.circles,
        left_out_count=found.hidden,
        next=step,
        files=tuple(map(File, paths)),
    )


def edges_told(edges: Sequence[Carried]) -> tuple[EdgeTold, ...]:
    """Return what went into what."""
    return tuple(
        EdgeTold(edge.source, edge.target, amount_of(edge.amount, edge.measure)) for edge in edges
    )


def holders_told(holders: Sequence[Holder]) -> tuple[HolderTold, ...]:
    """Return goods that went out or came back."""
    return tuple(
        HolderTold(
            code=item.lot,
            party=item.party,
            moved_as=item.moved_as,
            amount=amount_of(item.amount, item.measure),
            on=date.fromisoformat(item.on),
            document=item.document,
        )
        for item in holders
    )


def _nodes(found: Traced) -> list[NodeTold]:
    told = []
    for node in found.trace.nodes:
        shares = found.behind if node.way is Way.BACK else found.ahead
        share = shares.get(node.brief.code)
        told.append(
            NodeTold(
                **asdict(lot_brief(node.brief)),
                depth=node.depth,
                way=node.way,
                share=share_told(share) if share else None,
            )
        )
    return told


def share_told(share: Share) -> ShareTold:
    """Return how much of one lot is in another."""
    number, unit = concentration(share)
    return ShareTold(
        carried=amount_of(round(share.amount), share.measure),
        whole=amount_of(share.whole, share.whole_measure),
        concentration=number or None,
        concentration_unit=unit,
        all_measured=share.is_all,
    )
