"""The view of a sheet of labels.

Guarantees: one label a bottle unless a count is given, with the strength as it was made, and with
the ingredients, allergens and statements that follow from what is in it. Refuses: labels of what is
not bottled.
"""

from msgspec.structs import replace

from ledger.domain.entries import Bottle, Start
from ledger.domain.entries.choices import Across, LotType, ProductKind
from ledger.domain.lots.state import latest, name, opener
from ledger.errors import RefusedError
from ledger.service.glass.card import ServingCard
from ledger.service.glass.doses import dose_of
from ledger.service.lots.dossier import Dossier
from reports.kit.format import day, plural, tidy
from reports.kit.frame import frame_of
from reports.views.goods import Declared, LabelSheetView, LabelView
from reports.words.glass.cautions import label_cautions, own_caution
from reports.words.glass.declaration import (
    allergens_text,
    contains_text,
    ingredients_text,
    nutrition_text,
)
from reports.words.lots.dates import keeping_words
from reports.words.lots.record import cautions
from reports.words.lots.strength import label_strength

SMALL_UL = 50_000
"""Largest bottle that counts as small: even one four times as tall as wide has less than 80 cm² of
surface around it, by which letters may be smaller (Regulation (EU) No 1169/2011, Article 13(3))."""


def label_sheet_view(
    dossier: Dossier,
    count: int | None = None,
    card: ServingCard | None = None,
    *,
    with_nutrition: bool = False,
) -> LabelSheetView:
    """Return a sheet of labels for a packed lot, one a bottle unless a count is given.

    Raises:
        RefusedError: The lot is not bottled.
    """
    filled = latest(dossier.state, Bottle)
    if dossier.state.opened.lot_type is not LotType.PACKED or filled is None:
        raise RefusedError(
            f"{dossier.state.code} is not a packed lot, so it has no bottles to label.",
            f'Fill it first: pottle bottle {dossier.state.code} "15 x 250mL"',
        )
    return LabelSheetView(
        label=_label(dossier, filled, card, with_nutrition=with_nutrition),
        count=count or filled.count,
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
    )


def specimen_of(dossier: Dossier, card: ServingCard | None = None) -> LabelView | None:
    """Return a specimen of the label of a packed lot; None where its filling was struck."""
    filled = latest(dossier.state, Bottle)
    if filled is None:
        return None
    return replace(_label(dossier, filled, card), across=str(Across.SPECIMEN))


def across_each(sheet: LabelSheetView, word: Across | None) -> LabelSheetView:
    """Return a sheet with a word across each label, or none."""
    return replace(sheet, label=replace(sheet.label, across=str(word) if word else None))


def _label(
    dossier: Dossier, filled: Bottle, card: ServingCard | None, *, with_nutrition: bool = False
) -> LabelView:
    house, bulk = dossier.house, dossier.state.bulk
    made = opener(bulk) if bulk else None
    best_before = dossier.state.best_before
    return LabelView(
        house_name=house.name if house else "",
        house_address=house.address if house else None,
        product=name(bulk) if bulk else name(dossier.state),
        lot=dossier.state.code,
        volume=tidy(filled.size.written),
        strength=label_strength(card) if card else None,
        made_on=day(made.draft.happened) if made else "",
        best_before=best_before.isoformat() if best_before else None,
        dilution=dilution(dossier, latest(bulk, Start) if bulk else None),
        text=label_text(dossier),
        cautions=(
            *own_caution(dossier.formula),
            *(label_cautions(card, dossier.materials) if card else cautions(dossier)),
        ),
        statements=card.declaration.statements if card else (),
        declared=_declared(card, with_nutrition=with_nutrition) if card else (),
        is_small=filled.size.amount <= SMALL_UL,
    )


def _declared(card: ServingCard, *, with_nutrition: bool) -> tuple[Declared, ...]:
    """Return what a label declares besides; what matters most first."""
    listed, told = card.declaration.listed, []
    if listed.ingredients:
        whole = " ".join(filter(None, (ingredients_text(listed), contains_text(listed))))
        told.append(Declared("the list of ingredients", whole, allergens_text(listed)))
    if with_nutrition:
        told.append(Declared("the nutrition", nutrition_text(card)))
    return tuple(told)


def left_out_lines(left_out: tuple[str, ...]) -> tuple[str, ...]:
    """Return that a label has no room for what it declares, and what to do; none where it has."""
    if not left_out:
        return ()
    return (
        f"No room for {' and '.join(left_out)}: the label says the least it must, with any "
        "allergens. Shorten its names and texts, or put the rest beside the bottle; local law says "
        "what has to stand on it.",
    )


def lacking_lines(card: ServingCard) -> tuple[str, ...]:
    """Return of which materials facts are missing for what a label declares, in a line."""
    codes = dict.fromkeys(gap.material for gap in card.declaration.gaps)
    if not codes:
        return ()
    return (
        f"Missing for what it declares: facts of {', '.join(codes)}. What to record: "
        f"pottle serving {card.code}",
    )


def label_text(dossier: Dossier) -> str | None:
    """Return what a label says besides: how to keep the bottle, and the formula's words."""
    formula = dossier.formula.label_text if dossier.formula else None
    told = " ".join(part for part in (keeping_words(dossier.state.dates), formula) if part)
    return told or None


def dilution(dossier: Dossier, started: Start | None) -> str | None:
    """Return how to dilute what is in the bottle, in one line.

    A syrup is poured one part to seven of soda water unless its batch says otherwise, and an
    essence is dosed as its formula says, else 30 mL to a litre (common practice, no source).
    """
    kind = dossier.lot.product_kind
    if kind == ProductKind.SYRUP:
        parts = (started.pour_parts if started else None) or 7
        return f"1 part syrup to {plural(parts, 'part')} soda water"
    if kind in (ProductKind.ESSENCE, ProductKind.WASHED_ESSENCE, ProductKind.GUM_EMULSION):
        dose = dose_of(dossier.formula)
        return f"{dose.said} flavour {dose.into[0][0]} of syrup"
    return None
