"""The page of a lot in words, for who pours it.

Guarantees: it says what the bottle's label says, and where the lot stands as the book stood.
Refuses: whom the goods went to, what they cost, and why a lot is held.
"""

from ledger.domain.lots.lot import BARRED, Status
from ledger.domain.lots.state import opener
from ledger.domain.masters.articles import article_of
from ledger.service.glass.card import ServingCard
from ledger.service.lots.dossier import Dossier
from reports.kit.format import closed, day
from reports.views.goods import PageView
from reports.words.goods.label import label_sheet_view

STANDS = {
    Status.RELEASED: "Released by the maker.",
    Status.PACKED: "Bottled, and not released yet.",
    Status.HELD: "Held back by the maker: do not serve it, and ask.",
    Status.REJECTED: "Rejected by the maker: do not serve it, and ask.",
    Status.REWORK: "Taken back by the maker: do not serve it, and ask.",
    Status.RECALLED: "Recalled by the maker: do not serve it, keep it apart, and call.",
}
"""What is said of where a lot stands."""


def stands(status: Status) -> tuple[str, bool]:
    """Return what is said of where a lot stands, and whether it must not be served."""
    barred = status in BARRED or status is Status.REWORK
    return STANDS.get(status, closed(str(status).capitalize())), barred


def _headed(text: str, name: str) -> tuple[str, str]:
    """Return a declaration apart from the words that it begins with, or by its name without such.

    >>> _headed("Ingredients: sugar, water.", "the list"), _headed("Water.", "the list")
    (('Ingredients', 'sugar, water.'), ('List', 'Water.'))
    """
    head, colon, rest = text.partition(": ")
    return (head, rest) if colon else (name.removeprefix("the ").capitalize(), text)


def page_view(dossier: Dossier, card: ServingCard | None) -> PageView:
    """Return the page of a packed lot.

    Raises:
        RefusedError: The lot is not bottled.
    """
    sheet = label_sheet_view(dossier, card=card, with_nutrition=True)
    label, house, bulk = sheet.label, dossier.house, dossier.state.bulk
    made = opener(bulk) if bulk else None
    article = article_of(house, dossier.lot.name)
    said, is_barred = stands(dossier.lot.status)
    told = (
        ("Pour", label.dilution),
        ("Best before", str(dossier.state.best_before or "")),
        ("Strength", label.strength),
        ("Bottle", label.volume),
        ("Article", f"GTIN {article.gtin}" if article else ""),
        ("Made on", day(made.draft.happened) if made else ""),
        *(_headed(each.text, each.name) for each in label.declared),
        ("Keep", label.text),
    )
    reach = (label.house_name, label.house_address, house.phone if house else None)
    return PageView(
        product=label.product,
        code=label.lot,
        status=said,
        is_barred=is_barred,
        facts=tuple((name, text) for name, text in told if text),
        cautions=(*label.statements, *label.cautions),
        house=tuple(line for line in reach if line),
        seal=sheet.frame.seal,
        stood=sheet.frame.stood,
    )
