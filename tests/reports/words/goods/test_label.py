"""What a label says of the bottle, and what it refuses."""

from math import pi
from types import SimpleNamespace
from typing import Any

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.errors import InputError, RefusedError
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.pdf.goods.label_fit import fit_label
from reports.pdf.kit.marks import Words
from reports.words.goods import label as module
from reports.words.goods.label import (
    SMALL_UL,
    TINY_UL,
    _linked,
    label_sheet_view,
    lacking_lines,
    left_out_lines,
)
from reports.words.goods.list_words import typed_lines
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.words.bottles import pack
from tests.science.published import rows


def test_a_symbol_says_the_one_address_that_was_given_with_the_lot_in_it() -> None:
    found: Any = SimpleNamespace(state=SimpleNamespace(code="BOS-001-S", best_before=None))
    web, article = "https://example.com/{lot}", "9521234543213"
    assert _linked(None, None, found) == ""
    assert _linked(web, None, found) == "https://example.com/BOS-001-S"
    assert _linked(None, article, found).endswith("/01/09521234543213/10/BOS-001-S")
    for link, gtin, told in (
        (web, article, "A symbol says one address, and two were given."),
        ("https://example.com", None, "The address https://example.com has no place for the lot."),
    ):
        with pytest.raises(InputError) as raised:
            _linked(link, gtin, found)
        assert raised.value.what == told


def test_a_label_says_what_is_in_the_bottle_and_how_to_pour_it(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    sheet = label_sheet_view(dossier(keeper.book, packed))
    label = sheet.label
    assert (label.product, label.lot, label.volume) == ("Orange syrup", packed, "250 mL")
    assert (
        label.dilution
        == "1 part syrup to 7 parts soda water (30 mL makes 240 mL, 45 mL makes 360 mL)"
    )
    assert label.made_on == "made on 4 Mar 2026"
    assert sheet.count == 15
    assert len(sheet.frame.seal) == 3
    assert label_sheet_view(dossier(keeper.book, packed), 4).count == 4


def test_what_is_in_the_bottle_and_its_nutrition_need_no_typing(
    made: tuple[Keeper, Lots, str],
) -> None:
    """By the lot as it was made; allergens in capitals.

    Regulation (EU) No 1169/2011, Article 16(2): only a pack below 10 cm² needs no list; a bottle of
    30 mL has more, one of 2 mL has less, and says its allergens in a line.
    """
    keeper, lots, essence = made
    keeper.do("house", country="IE")
    keeper.do("material", code="sugar", change=True, allergens="milk")
    packed = pack(keeper, lots, essence)
    found, served = dossier(keeper.book, packed), card(keeper.book, packed)
    assert served is not None
    (told,) = label_sheet_view(found, None, served).label.declared
    assert told.name == "the list of ingredients"
    assert told.text.startswith("Ingredients: sugar (MILK), water, alcohol, natural flavouring")
    assert told.least == told.text
    tiny = pack(keeper, lots, essence, pack="15 x 2mL")
    vial = label_sheet_view(dossier(keeper.book, tiny), None, card(keeper.book, tiny)).label
    assert vial.declared[0].least == "Contains: MILK."
    _, facts = label_sheet_view(found, None, served, with_nutrition=True).label.declared
    assert facts.text.startswith("Nutrition, 100 mL as sold: energy ")
    assert "; of which sugars " in facts.text
    assert lacking_lines(served) == ()


@pytest.mark.parametrize(
    ("volume_ul", "row"),
    [(SMALL_UL, "EU small pack, surface for the 0.9 mm rule"), (TINY_UL, "EU tiny pack")],
)
def test_a_bottle_that_counts_as_small_or_tiny_has_that_little_surface(
    volume_ul: int, row: str
) -> None:
    """Regulation (EU) No 1169/2011, Articles 13(3) and 16(2) (label_law.csv), in cm².

    Around a cylinder four times as high as wide, the slimmest of bottles (common practice, no
    source): of radius r it holds 8 pi r³, and its side has 16 pi r².
    """
    radius_cm = (volume_ul / 1000 / (8 * pi)) ** (1 / 3)
    law = {told["quantity"]: told["value"] for told in rows("label_law.csv")}
    assert 0.9 * float(law[row]) < 16 * pi * radius_cm**2 < float(law[row])


def test_a_fact_that_a_label_declares_and_the_book_lacks_is_told_with_it(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, _ = made
    keeper.do("material", code="gum", kind="other", ingredient_name="gum")
    gum = keeper.opens("receive", material="gum", amount="100g")
    syrup = keeper.opens("start", product="Gum syrup", kind="syrup", target="1L")
    keeper.do("add", lot=syrup, source=lots.water, amount="1L")
    keeper.do("add", lot=syrup, source=gum, amount="20g")
    served = card(keeper.book, syrup)
    assert served is not None
    told = lacking_lines(served, with_nutrition=False)
    assert told[0].startswith("Missing for what it declares: facts of gum. ")
    keeper.do("material", code="gum", change=True, allergens="none")
    bare = card(keeper.book, syrup)
    assert bare is not None
    assert lacking_lines(bare, with_nutrition=False) == ()
    assert lacking_lines(bare)[0].startswith("Missing for what it declares: facts of gum. ")


def test_an_essence_is_labelled_with_its_own_dose_and_every_caution_on_a_small_bottle(
    sqlite_keeper: Keeper,
) -> None:
    """The formula says a gallon, so neither card nor label says a litre."""
    keeper = sqlite_keeper
    birch = "methyl salicylate 98%"
    keeper.do("material", code="wintergreen", name="Wintergreen oil", kind="oil",
              density="1.18", constituents=birch)  # fmt: skip
    keeper.do("material", code="spirit96", name="Neutral spirit", kind="ethanol", abv="96")
    keeper.do("material", code="vial", name="30 mL bottle", kind="bottle")
    oil = keeper.opens("receive", material="wintergreen", amount="500mL", supplier="Invented")
    spirit = keeper.opens("receive", material="spirit96", amount="5L", supplier="Invented")
    vials = keeper.opens("receive", material="vial", amount="50 each", supplier="Invented")
    keeper.record(
        Formula(
            "wintergreen", 1, "Wintergreen essence", ProductKind.ESSENCE, parse_quantity("1L"),
            caution="Poison undiluted: never taste it neat; a teaspoon can kill a child.",
            dose=parse_quantity("30mL"), dose_into=parse_quantity("1US gal"),
        )
    )  # fmt: skip
    lot = keeper.opens("start", formula="wintergreen", target="500mL")
    keeper.do("add", lot=lot, source=oil, amount="31mL")
    keeper.do("add", lot=lot, source=spirit, amount="469mL")
    keeper.do("finish", lot=lot, volume="495mL")
    packed = keeper.opens("bottle", source=lot, pack="12 x 30mL", bottles=vials)
    served = card(keeper.book, packed)
    assert served is not None
    assert [way.said for way in served.pourings] == ["30 mL in 1 US gal"]
    label = label_sheet_view(dossier(keeper.book, packed), None, served).label
    assert label.dilution == "30 mL flavour 1 US gal of syrup"
    assert len(label.cautions) == 5
    fitted = fit_label(label)
    words = " ".join(mark.text for mark in fitted.marks if isinstance(mark, Words))
    assert all(caution in words for caution in label.cautions)
    assert "Ingredients: alcohol, " in words
    assert fitted.left_out == ()


def test_what_has_no_room_is_named_with_what_to_do() -> None:
    assert left_out_lines(()) == ()
    assert left_out_lines(("the list of ingredients", "the nutrition")) == (
        "No room for the list of ingredients and the nutrition: the label says the least it must, "
        "with any allergens. Shorten its names and texts, or put the rest beside the bottle; local "
        "law says what has to stand on it.",
    )


@pytest.mark.parametrize(
    ("own", "earliest"),
    [
        (None, "30 Jun 2027"),
        ("2026-09-30", "30 Sep 2026"),
        ("2030-01-01", "30 Jun 2027"),
    ],
    ids=["none of its own", "its own is first", "that of its oil is first"],
)
def test_the_best_before_day_is_the_earliest_of_the_lot_and_all_it_is_made_of(
    made: tuple[Keeper, Lots, str], own: str | None, earliest: str
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence, **({"best_before": own} if own else {}))
    label = label_sheet_view(dossier(keeper.book, packed)).label
    assert label.best_before == f"Best before {earliest}"


def test_a_lot_that_is_not_packed_has_no_labels(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    with pytest.raises(RefusedError) as refused:
        label_sheet_view(dossier(keeper.book, essence))
    assert refused.value.problems == (
        (
            f"{essence} is not a packed lot, so it has no bottles to label.",
            f'Fill it first: pottle bottle {essence} "15 x 250mL"',
        ),
    )


def test_a_symbol_may_say_the_makers_own_address_with_the_lot(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    found = dossier(keeper.book, packed)
    link = "https://example.com/lot/{lot}"
    assert label_sheet_view(found, link=link).label.symbol == f"https://example.com/lot/{packed}"
    with pytest.raises(InputError) as raised:
        label_sheet_view(found, link="https://example.com")
    assert raised.value.problems == (
        (
            "The address https://example.com has no place for the lot.",
            "Write {lot} in it, such as https://example.com/lot/{lot}.",
        ),
    )


def test_a_label_in_another_language_says_which_of_its_words_stay(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    found = dossier(keeper.book, pack(keeper, lots, essence))
    label = label_sheet_view(found, language="de").label
    assert (label.lot_word, label.best_before) == ("Los", "Mindestens haltbar bis 30.6.2027")
    assert typed_lines(None) == ()
    assert typed_lines("de")[0].startswith("Its fixed words are in German.")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
