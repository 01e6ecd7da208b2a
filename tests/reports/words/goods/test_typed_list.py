"""A label has one list of ingredients: that of its lot, whatever a formula's text has typed."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.words.goods import typed_list as module
from reports.words.goods.label import label_sheet_view
from reports.words.goods.page import page_view
from reports.words.goods.typed_list import typed_list_lines
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import receive_all

TYPED = "Ingredients: alcohol, orange oil, almond extract."
LEFT_OFF = (
    f'Left off: "{TYPED}", in the text of orange version 1. A label has one list, that of the lot '
    "as it was made. Take it out of the formula, and load that as a new version."
)


def bottles(keeper: Keeper, text: str) -> str:
    """Fill three bottles by a formula whose label has a text."""
    lots = receive_all(keeper)
    keeper.do("house", country="IE")
    litre, essence = parse_quantity("1L"), ProductKind.ESSENCE
    keeper.record(Formula("orange", 1, "Orange essence", essence, litre, label_text=text))
    code = keeper.opens("start", formula="orange", target="500mL")
    keeper.do("add", lot=code, source=lots.oil, amount="30mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="450mL")
    keeper.do("finish", lot=code, volume="470mL")
    return keeper.opens("bottle", source=code, pack="3 x 50mL", bottles=lots.bottles)


def test_the_reckoned_list_stands_alone_on_label_and_page_and_hides_no_allergen(
    sqlite_keeper: Keeper,
) -> None:
    packed = bottles(sqlite_keeper, f"Store upright. {TYPED} May hold traces of milk.")
    found, served = dossier(sqlite_keeper.book, packed), card(sqlite_keeper.book, packed)
    label = label_sheet_view(found, None, served).label
    (declared,) = label.declared
    assert label.text == "Store upright. May hold traces of milk."
    assert declared.text == "Ingredients: alcohol, natural flavouring, water. Contains: NUTS."
    assert declared.least == declared.text
    page = " ".join(f"{head}: {text}" for head, text in page_view(found, served).facts)
    assert declared.text in page
    assert page.lower().count("ingredients") == 1
    assert typed_list_lines(found, served) == (
        LEFT_OFF,
        f"It names NUTS, of which no material of {packed} tells: the label says it too. Record it: "
        'pottle material change CODE --allergens "nuts"',
    )


def test_a_typed_list_stands_where_none_is_reckoned_and_no_list_is_no_matter(
    sqlite_keeper: Keeper,
) -> None:
    found = dossier(sqlite_keeper.book, bottles(sqlite_keeper, TYPED))
    assert label_sheet_view(found, None, None).label.text == TYPED
    assert typed_list_lines(found, None) == ()


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
