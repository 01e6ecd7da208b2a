"""The view of a sheet of labels.

Guarantees: one label a bottle unless a count is given, with the strength as it was made, and with
the ingredients, allergens and statements that follow from what is in it. Refuses: labels of what is
not bottled.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from ledger.domain.entries import Bottle, Entry, House, Start
from ledger.domain.entries.choices import Across, LotType, ProductKind
from ledger.domain.lots.state import latest, name, opener
from ledger.domain.masters.gaps import NUTRITION
from ledger.domain.masters.gs1 import lot_link, read_gtin
from ledger.errors import InputError, RefusedError
from ledger.service.glass.card import ServingCard
from ledger.service.glass.doses import dose_of
from ledger.service.lots.dossier import Dossier
from reports.kit.frame import frame_of
from reports.kit.pages import symbol_address
from reports.views.goods import Declared, LabelSheetView, LabelView
from reports.words.glass.cautions import HANDLE_WITH_CARE, label_cautions, own_caution
from reports.words.glass.declaration import (
    allergens_text,
    contains_text,
    ingredients_text,
    nutrition_text,
)
from reports.words.goods.label_words import LabelWords, label_words
from reports.words.goods.list_words import card_in_language
from reports.words.goods.net_volume import (
    figures_mm,
    is_canadian,
    is_us,
    net_volume,
    panel_sq_in,
)
from reports.words.goods.typed_list import formula_text, only_typed
from reports.words.lots.dates import keeping_words
from reports.words.lots.record import cautions
from reports.words.lots.strength import label_strength

SMALL_UL = 50_000
"""Largest bottle that counts as small: even one four times as tall as wide has less than 80 cm² of
surface around it, by which letters may be smaller (Regulation (EU) No 1169/2011, Article 13(3))."""

TINY_UL = 2_000
"""Largest bottle whose label needs no list of ingredients: one four times as tall as wide has less
than 10 cm² of surface around it; allergens stay on it (Regulation (EU) No 1169/2011, Article 16(2),
label_law.csv)."""


def label_sheet_view(
    dossier: Dossier,
    count: int | None = None,
    card: ServingCard | None = None,
    *,
    with_nutrition: bool = False,
    language: str | None = None,
    link: str | None = None,
    gtin: str | None = None,
) -> LabelSheetView:
    """Return a sheet of labels for a packed lot, one a bottle unless a count is given.

    Its symbol says the address that was asked for, the Digital Link of its article, where the page
    of the lot is, or the lot.

    Raises:
        RefusedError: The lot is not bottled.
        InputError: An address has no place for the lot, or a number of an article is wrong.
    """
    filled = latest(dossier.state, Bottle)
    if dossier.state.opened.lot_type is not LotType.PACKED or filled is None:
        raise RefusedError(
            f"{dossier.state.code} is not a packed lot, so it has no bottles to label.",
            f'Fill it first: pottle bottle {dossier.state.code} "15 x 250mL"',
        )
    return LabelSheetView(
        label=replace(
            _label(
                dossier,
                filled,
                card_in_language(card, dossier.materials, language),
                label_words(language),
                with_nutrition=with_nutrition,
            ),
            symbol=_linked(link, gtin, dossier)
            or symbol_address(
                dossier.house,
                name(dossier.state),
                dossier.state.code,
                dossier.state.best_before,
            ),
        ),
        count=count or filled.count,
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
    )


def specimen_of(dossier: Dossier, card: ServingCard | None = None) -> LabelView | None:
    """Return a specimen of the label of a packed lot; None where its filling was struck."""
    filled = latest(dossier.state, Bottle)
    if filled is None:
        return None
    label = _label(dossier, filled, card, label_words(None))
    return replace(label, across=str(Across.SPECIMEN))


def across_each(sheet: LabelSheetView, word: Across | None) -> LabelSheetView:
    """Return a sheet with a word across each label, or none."""
    return replace(sheet, label=replace(sheet.label, across=str(word) if word else None))


def _label(
    dossier: Dossier,
    filled: Bottle,
    card: ServingCard | None,
    words: LabelWords,
    *,
    with_nutrition: bool = False,
) -> LabelView:
    house, bulk = dossier.house, dossier.state.bulk
    made = opener(bulk) if bulk else None
    best_before = dossier.state.best_before
    typed = formula_text(dossier, card)
    return LabelView(
        house_name=house.name if house else "",
        house_address=_address(house),
        product=name(bulk) if bulk else name(dossier.state),
        lot=dossier.state.code,
        volume=net_volume(filled.size, house),
        strength=label_strength(card, words.strength) if card else None,
        made_on=_made(made, words) if made else "",
        best_before=words.best_before.format(day=words.day(best_before)) if best_before else None,
        dilution=dilution(dossier, latest(bulk, Start) if bulk else None, words),
        text=label_text(dossier, words, typed.rest),
        cautions=tuple(
            words.care if caution == HANDLE_WITH_CARE else caution
            for caution in (
                *own_caution(dossier.formula),
                *(label_cautions(card, dossier.materials) if card else cautions(dossier)),
            )
        ),
        statements=card.declaration.statements if card else (),
        declared=(
            _declared(
                card,
                words,
                typed.typed,
                with_nutrition=with_nutrition,
                is_tiny=filled.size.amount <= TINY_UL,
            )
            if card
            else ()
        ),
        is_us=is_us(house),
        is_canadian=is_canadian(house),
        is_small=filled.size.amount <= SMALL_UL,
        figures_mm=figures_mm(filled.size.amount),
        panel_sq_in=panel_sq_in(filled.size.amount),
        lot_word=words.lot,
    )


def _made(first: Entry, words: LabelWords) -> str:
    return words.made.format(day=words.day(first.draft.happened.local().date()))


def _address(house: House | None) -> str | None:
    """Return the address of a house with its country."""
    if house is None:
        return None
    return ", ".join(part for part in (house.address, house.country) if part) or None


def _linked(link: str | None, gtin: str | None, dossier: Dossier) -> str:
    """Return the address that a symbol says, with the lot in it; nothing where none was given.

    Raises:
        InputError: It has no place for the lot, or two are given.
    """
    code = dossier.state.code
    if link is not None and gtin is not None:
        raise InputError(
            "A symbol says one address, and two were given.", "Leave --link or --gtin out."
        )
    if gtin is not None:
        return lot_link(read_gtin(gtin), code, dossier.state.best_before)
    if link is None:
        return ""
    if LOT_PLACE not in link:
        raise InputError(
            f"The address {link} has no place for the lot.",
            f"Write {LOT_PLACE} in it, such as https://example.com/lot/{LOT_PLACE}.",
        )
    return link.replace(LOT_PLACE, code)


LOT_PLACE = "{lot}"
"""Where the lot stands in an address."""


def _declared(
    card: ServingCard, words: LabelWords, typed: str, *, with_nutrition: bool, is_tiny: bool
) -> tuple[Declared, ...]:
    """Return what a label declares besides; what matters most first.

    The list gives way to its allergens on a tiny bottle alone, whose label needs no more.
    """
    listed, told = card.declaration.listed, []
    if listed.ingredients:
        hidden = ", ".join(name.upper() for name in only_typed(listed, typed))
        besides = f"{words.contains}: {hidden}." if hidden else ""
        parts = ingredients_text(listed, words.ingredients), contains_text(listed), besides
        least = (allergens_text(listed, words.contains), besides) if is_tiny else parts
        whole, short = _sentences(parts), _sentences(least)
        told.append(Declared("the list of ingredients", whole, short, is_list=True))
    if with_nutrition:
        told.append(Declared("the nutrition", nutrition_text(card)))
    return tuple(told)


def _sentences(parts: Iterable[str | None]) -> str:
    return " ".join(part for part in parts if part)


def left_out_lines(left_out: tuple[str, ...]) -> tuple[str, ...]:
    """Return that a label has no room for what it declares, and what to do; none where it has."""
    if not left_out:
        return ()
    return (
        f"No room for {' and '.join(left_out)}: the label says the least it must, with any "
        "allergens. Shorten its names and texts, or put the rest beside the bottle; local law says "
        "what has to stand on it.",
    )


def panels_line(panels: int, stock: str | None = None) -> tuple[str, ...]:
    """Return how labels of two panels are counted; nothing where a label is one.

    >>> panels_line(1), panels_line(2)
    ((), ('Each is a front and a back, next to each other; a pair counts as one label.',))
    """
    if panels == 1:
        return ()
    blank = f", and as one of {stock}" if stock else ""
    return (f"Each is a front and a back, next to each other; a pair counts as one label{blank}.",)


def lacking_lines(card: ServingCard, *, with_nutrition: bool = True) -> tuple[str, ...]:
    """Return of which materials facts are missing for what a label declares, in a line."""
    gaps = card.declaration.gaps
    codes = dict.fromkeys(gap.material for gap in gaps if with_nutrition or gap.fact != NUTRITION)
    if not codes:
        return ()
    return (
        f"Missing for what it declares: facts of {', '.join(codes)}. What to record: "
        f"pottle serving {card.code}",
    )


def label_text(dossier: Dossier, words: LabelWords, formula: str) -> str | None:
    """Return what a label says besides: how to keep the bottle, and the formula's words."""
    days = dossier.state.dates.opened_days
    if words == label_words(None):
        kept = keeping_words(dossier.state.dates)
    else:
        kept = f"{words.opened.format(days=days)}." if days is not None else None
    told = " ".join(part for part in (kept, formula) if part)
    return told or None


GLASSES_UL = (240_000, 360_000)
"""The two glasses for which a pour is told (8 and 12 US fluid ounces; common practice)."""


def dilution(dossier: Dossier, started: Start | None, words: LabelWords) -> str | None:
    """Return how to dilute what is in the bottle, in one line, for a syrup with two glasses.

    A syrup is poured one part to seven of soda water unless its batch says otherwise, and an
    essence is dosed as its formula says, else 30 mL to a litre (common practice, no source).
    """
    kind = dossier.lot.product_kind
    if kind == ProductKind.SYRUP:
        parts = (started.pour_parts if started else None) or 7
        poured = ", ".join(
            words.makes.format(ml=f"{glass / (parts + 1) / 1000:.3g}", glass=glass // 1000)
            for glass in GLASSES_UL
        )
        return f"{words.pour.format(parts=parts)} ({poured})"
    if kind in (ProductKind.ESSENCE, ProductKind.WASHED_ESSENCE, ProductKind.GUM_EMULSION):
        dose = dose_of(dossier.formula)
        return f"{dose.said} flavour {dose.into[0][0]} of syrup"
    return None
