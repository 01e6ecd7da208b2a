"""The view of the record of a lot.

Guarantees: everything recorded about a lot stands on its record, in force or not.
"""

from datetime import date

from ledger.domain.entries import (
    Bottle,
    Formula,
    House,
    Judge,
    Labels,
    Material,
    Receipt,
    Start,
    entries_of,
)
from ledger.domain.entries.choices import LotType, ProductKind
from ledger.domain.lots.lot import Status
from ledger.domain.lots.state import is_trial, latest, opener
from ledger.domain.masters.formulas import version_of
from ledger.service.glass.card import ServingCard
from ledger.service.lots.around import Around
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, initials, money, plural, tidy
from reports.kit.frame import frame_of
from reports.views.goods import LabelView
from reports.views.lots import Band, LadderRow, RecordView
from reports.words.glass.cautions import (
    HANDLE_WITH_CARE,
    neat_caution,
    own_caution,
    record_cautions,
)
from reports.words.lots.around import around_rows
from reports.words.lots.clarity import clarity_strip, look_rows
from reports.words.lots.dates import keeping_words
from reports.words.lots.gate import gate_rows
from reports.words.lots.hours import time_bar
from reports.words.lots.label_balance import labels_balance
from reports.words.lots.ladder import delivery_ladder, filling_ladder, ladder
from reports.words.lots.neighbours import back_rows, forward_rows
from reports.words.lots.put_in import input_rows
from reports.words.lots.story import story_of
from reports.words.lots.strength import content_facts
from reports.words.lots.there import there_words
from reports.words.lots.trace import supplied_by
from reports.words.masters.formula import checker
from reports.words.masters.house import kept_until
from reports.words.verdicts.control import control_facts

OPENED = {LotType.MADE: "Begun", LotType.RECEIVED: "Received", LotType.PACKED: "Filled"}
"""What its first entry did to a lot."""
DARK = (Status.HELD, Status.REJECTED, Status.RECALLED, Status.REWORK)
"""Where a lot stands that nobody may use or send as it is."""


def record_view(
    dossier: Dossier,
    card: ServingCard | None = None,
    around: Around | None = None,
    specimen: LabelView | None = None,
) -> RecordView:
    """Return the record of a lot, with what it contains when its card is given.

    One of a delivery is headed so and has no parts that only a batch can fill, unless they are.
    """
    state, inputs = dossier.state, input_rows(dossier)
    made, since = story_of(dossier)
    is_delivery = state.opened.lot_type is LotType.RECEIVED
    parties = {party.name: party for party in around.parties} if around else {}
    return RecordView(
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
        lot=state.code,
        title=dossier.lot.name,
        band=_band(dossier),
        facts=_head(dossier),
        inputs=None if is_delivery and not inputs else inputs,
        made=made,
        since=since,
        looks=look_rows(dossier),
        ladder=_ladder(dossier),
        back=back_rows(dossier, parties),
        forward=forward_rows(dossier, parties),
        cautions=(
            *own_caution(dossier.formula),
            *(record_cautions(card, dossier.materials) if card else cautions(dossier)),
        ),
        paper="Lot received" if is_delivery else "Batch record",
        bar=time_bar(state),
        clarity=clarity_strip(dossier),
        gate=gate_rows(dossier, inputs),
        serving=content_facts(card) if card else (),
        people=tuple((p.initials, p.name, p.role or "") for p in around.people) if around else (),
        around=around_rows(around) if around else (),
        labels=_labels(dossier),
        specimen=specimen,
    )


def _ladder(dossier: Dossier) -> tuple[LadderRow, ...]:
    match dossier.state.opened.lot_type:
        case LotType.RECEIVED:
            return delivery_ladder(dossier)
        case LotType.PACKED:
            return filling_ladder(dossier.state)
        case _:
            return ladder(dossier.state, dossier.inputs, dossier.formula, dossier.draws)


def _band(dossier: Dossier) -> Band:
    """Return where a lot stands; a trial that nobody released is said to be one."""
    status = dossier.lot.status
    is_tried = is_trial(dossier.state) and status in (Status.MAKING, Status.FINISHED)
    verdicts = list(entries_of(dossier.state.entries, Judge))
    last = verdicts[-1] if verdicts else None
    words = f"{clock(last.draft.happened)}, {initials(last)}" if last else ""
    if last and last.draft.reason:
        words = f"{words}: {last.draft.reason}"
    return Band("TRIAL" if is_tried else str(status).upper(), words, is_tried or status in DARK)


def _head(dossier: Dossier) -> tuple[tuple[str, str], ...]:
    state, lot, formula = dossier.state, dossier.lot, dossier.formula
    first, start = opener(state), latest(state, Start)
    filled, receipt = latest(state, Bottle), latest(state, Receipt)
    lines = (
        ("Kind", lot.product_kind or lot.sort or lot.lot_type),
        (
            OPENED.get(state.opened.lot_type, "Opened"),
            f"{clock(first.draft.happened)}, {initials(first)}" if first else "",
        ),
        ("Batch size", tidy(start.target.written) if start else ""),
        ("Bottles", f"{filled.count} of {tidy(filled.size.written)}" if filled else ""),
        ("Supplier", supplied_by(lot)),
        ("Cost", _cost(receipt, dossier.house)),
        ("Formula", _formula(formula)),
        *(
            (label, words)
            for label, words in control_facts(dossier, on_paper=True)
            if label != "Formula"
        ),
        ("On hand", there_words(lot)),
        ("Allergens", _allergens(dossier)),
        ("Best before", str(state.best_before or "")),
        ("Date set by", state.dates.set_by or ""),
        ("Keeping", keeping_words(state.dates) or ""),
        ("Record kept", kept_until(dossier.house, _last_date(dossier))),
        ("Entries", str(len(dossier.said))),
    )
    return tuple((label, value) for label, value in lines if value)


def _formula(formula: Formula | None) -> str:
    if formula is None:
        return ""
    prepared = f"prepared by {formula.prepared_by or 'nobody named'}"
    return f"{version_of(formula)}, {prepared}, checked by {checker(formula)}"


def _cost(receipt: Receipt | None, house: House | None) -> str:
    if receipt is None or receipt.cost_minor is None:
        return ""
    return money(receipt.cost_minor, house.currency if house else "", receipt.cost_digits)


def _allergens(dossier: Dossier) -> str:
    named = dict.fromkeys(item.allergens for item in dossier.materials if item.allergens)
    return ", ".join(named) or ("none recorded" if dossier.materials else "")


def _labels(dossier: Dossier) -> tuple[tuple[str, str], ...]:
    """Return what became of the labels of a packed lot."""
    told = [entry.facts for entry in entries_of(dossier.state.entries, Labels)]
    if not told:
        return ()
    stocks = dict.fromkeys(facts.stock for facts in told if facts.stock)
    filled = latest(dossier.state, Bottle)
    rows = (
        ("Labels", labels_balance(told)),
        ("Bottles", plural(filled.count, "bottle") if filled else ""),
        ("Printed on", ", ".join(stocks)),
    )
    return tuple((label, words) for label, words in rows if words)


def _last_date(dossier: Dossier) -> date | None:
    """Return the last date on a record: best before, or the day that goods last went."""
    gone = [date.fromisoformat(holder.on) for holder in dossier.holders]
    days = [*gone, *([dossier.state.best_before] if dossier.state.best_before else [])]
    return max(days, default=None)


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
