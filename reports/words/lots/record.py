"""The views of papers: the batch record and the label sheet.

Guarantees: everything recorded about a lot stands on its record, in force or not. Refuses: labels
for lots that are not bottled.
"""

from datetime import date

from ledger.domain.amounts.quantity import show
from ledger.domain.entries import Add, Deviation, Look, Material, Measurement, Receipt
from ledger.domain.entries.choices import LotType, ProductKind
from ledger.domain.lots.state import opener
from ledger.service.glass.card import ServingCard
from ledger.service.lots.around import Around
from ledger.service.lots.dossier import Dossier
from ledger.service.lots.journal import Said
from reports.kit.format import clock, initials, tidy
from reports.kit.frame import frame_of
from reports.views.goods import LabelView
from reports.views.lots import InputRow, RecordView, StepRow
from reports.words.entries.goods import gone
from reports.words.entries.sentence import notes, sentence, strikes, title
from reports.words.glass.cautions import (
    HANDLE_WITH_CARE,
    neat_caution,
    own_caution,
    record_cautions,
)
from reports.words.lots.around import around_rows
from reports.words.lots.balance import balance
from reports.words.lots.dates import keeping_words
from reports.words.lots.strength import content_facts
from reports.words.lots.there import there_words
from reports.words.lots.trace import supplied_by
from reports.words.masters.house import kept_until
from reports.words.verdicts.control import control_facts

OPENED = {LotType.MADE: "Begun", LotType.RECEIVED: "Received", LotType.PACKED: "Filled"}
"""What its first entry did to a lot."""


def record_view(
    dossier: Dossier,
    card: ServingCard | None = None,
    around: Around | None = None,
    specimen: LabelView | None = None,
) -> RecordView:
    """Return the record of a lot, with what it contains when its card is given.

    One of a delivery is headed so and has no parts that only a batch can fill, unless they are.
    """
    state = dossier.state
    rows = [_row(said, strikes(item.entry for item in dossier.said)) for said in dossier.said]
    pairs = list(zip(dossier.said, rows, strict=True))
    seen = (Look, Measurement)
    inputs = _inputs(dossier)
    yields = balance(state, dossier.inputs, dossier.formula, dossier.draws)
    is_delivery = state.opened.lot_type is LotType.RECEIVED
    return RecordView(
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
        lot=state.code,
        title=dossier.lot.name,
        facts=(*_head(dossier), *(content_facts(card) if card else ())),
        inputs=None if is_delivery and not inputs else inputs,
        steps=tuple(row for said, row in pairs if not isinstance(_facts(said), (*seen, Deviation))),
        looks=tuple(row for said, row in pairs if isinstance(_facts(said), seen)),
        balance=None if is_delivery and not yields else yields,
        went_to=_went_to(dossier),
        deviations=tuple(row for said, row in pairs if isinstance(_facts(said), Deviation)),
        cautions=(
            *own_caution(dossier.formula),
            *(record_cautions(card, dossier.materials) if card else cautions(dossier)),
        ),
        status=str(dossier.lot.status),
        paper="Lot received" if is_delivery else "Batch record",
        around=around_rows(around) if around else (),
        specimen=specimen,
    )


def _facts(said: Said) -> object:
    return said.entry.facts


def _row(said: Said, struck: frozenset[int]) -> StepRow:
    entry = said.entry
    return StepRow(
        entry=str(entry.seq),
        when=clock(entry.draft.happened),
        what=title(entry),
        words=sentence(entry),
        by=initials(entry),
        notes=notes(entry, said.corrected_by, is_struck=entry.seq in struck),
        struck=said.corrected_by is not None,
    )


def _head(dossier: Dossier) -> tuple[tuple[str, str], ...]:
    state, lot = dossier.state, dossier.lot
    first = opener(state)
    lines = (
        ("Kind", lot.product_kind or lot.sort or lot.lot_type),
        (
            OPENED.get(state.opened.lot_type, "Opened"),
            clock(first.draft.happened) if first else "",
        ),
        ("By", initials(first) if first else ""),
        ("Supplier", supplied_by(lot)),
        ("Status", str(lot.status)),
        *control_facts(dossier),
        ("On hand", there_words(lot)),
        ("Best before", str(state.best_before or "")),
        ("Date set by", state.dates.set_by or ""),
        ("Keeping", keeping_words(state.dates) or ""),
        ("Record kept", kept_until(dossier.house, _last_date(dossier))),
        ("Entries", str(len(dossier.said))),
    )
    return tuple((label, value) for label, value in lines if value)


def _last_date(dossier: Dossier) -> date | None:
    """Return the last date on a record: best before, or the day that goods last went."""
    gone = [date.fromisoformat(holder.on) for holder in dossier.holders]
    days = [*gone, *([dossier.state.best_before] if dossier.state.best_before else [])]
    return max(days, default=None)


def _inputs(dossier: Dossier) -> tuple[InputRow, ...]:
    lots = {node.brief.code: node.brief for node in dossier.trace.nodes}
    rows = []
    for said in dossier.said:
        facts = said.entry.facts
        for posting in said.entry.postings:
            if posting.target != dossier.state.code or posting.source is None:
                continue
            brief = lots.get(posting.source)
            what = brief.name if brief else "no longer counted as an input"
            if brief and brief.supplier_lot:
                what = f"{what}, {brief.supplier or 'supplier'} lot {brief.supplier_lot}"
            amount = show(posting.taken, brief.measure) if brief and posting.taken else "carried"
            written = facts.amount.written if isinstance(facts, Add | Receipt) else None
            rows.append(
                InputRow(
                    lot=posting.source,
                    what=what,
                    amount=tidy(written) if written else amount,
                    when=clock(said.entry.draft.happened, is_repeated=said.is_repeated),
                    by=initials(said.entry),
                    entry=str(said.entry.seq),
                    struck=said.corrected_by is not None,
                )
            )
    return tuple(rows)


def _went_to(dossier: Dossier) -> tuple[tuple[str, str, str], ...]:
    into = [(edge.target, _name_of(dossier, edge.target), edge.words) for edge in dossier.outputs]
    sent = [
        (
            holder.party or "–",
            f"{gone(holder.moved_as, None)} on {holder.on}",
            show(abs(holder.amount), holder.measure),
        )
        for holder in dossier.holders
    ]
    return (*into, *sent)


def _name_of(dossier: Dossier, code: str) -> str:
    return next((node.brief.name for node in dossier.trace.nodes if node.brief.code == code), "")


def cautions(dossier: Dossier) -> tuple[str, ...]:
    """Return the cautions that go with a lot: those of its kind, and its materials' own.

    What is said of a material is true of it neat, so in anything made with it the words say so.
    """
    told = [_caution(dossier, material) for material in dossier.materials if material.caution]
    kind = dossier.lot.product_kind
    if kind in (ProductKind.ESSENCE, ProductKind.WASHED_ESSENCE, ProductKind.MACERATE):
        told.insert(0, HANDLE_WITH_CARE)
    return tuple(dict.fromkeys(told))


def _caution(dossier: Dossier, material: Material) -> str:
    is_itself = dossier.lot.material == material.code
    return material.caution or "" if is_itself else neat_caution(material)
