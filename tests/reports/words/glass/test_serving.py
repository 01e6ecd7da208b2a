"""Clouding on a serving card: each oil by itself, then all oils of the drink together."""

from ledger.science.contents.louche import Outlook
from ledger.service.glass.card import ServingCard
from ledger.service.glass.serving import serving
from reports.json.glass.serving import CloudingTold, serving_answer
from reports.words.glass import serving as module
from reports.words.glass.declaration import declared_lines
from reports.words.glass.limits import close_lines, limit_table
from reports.words.glass.serving import (
    caution_lines,
    glass_table,
    head,
    louche_lines,
    missing_lines,
    unrecorded,
)
from reports.words.lots.strength import content_facts
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told
from tests.path import Lots, receive_all, walk_main_path
from tests.reports.words.glass.preserved import preserved


def with_two_oils(keeper: Keeper) -> ServingCard:
    """Return the card of an essence of 0.9 mL orange and 20 mL sweet birch in 480 mL of spirit."""
    lots = receive_all(keeper)
    birch_is = "methyl salicylate 98%"
    keeper.do(
        "material", code="birch", name="Birch", kind="oil", density="1.18", constituents=birch_is
    )
    birch = keeper.opens("receive", material="birch", amount="100mL")
    code = keeper.opens("start", product="Root beer", kind="essence", target="500mL")
    keeper.do("add", lot=code, source=lots.oil, amount="0.9mL")
    keeper.do("add", lot=code, source=birch, amount="20mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="478.8mL")
    return serving(keeper.book, code)


def test_oils_that_stay_clear_alone_may_cloud_together(sqlite_keeper: Keeper) -> None:
    """By hand: 30 mL in 1.03 L, poured 1:7, hold 5.54 mg/L of orange oil and 172 of birch.

    94 % limonene of 6 to 19.4 mg/L fills 0.87 to 0.27 of the drink, and 98 % methyl salicylate
    of 639 to 740 mg/L fills 0.26 to 0.23 of it.
    """
    card = with_two_oils(sqlite_keeper)
    rows = [row[:2] for row in glass_table(card).rows if "cloud" in row[0] or "all" in row[0]]
    assert rows == [
        ("  will it cloud?", "likely not"),
        ("  will it cloud?", "likely not"),
        ("all oils together", "177 mg/L"),
        ("  will they cloud it?", "it may"),
    ]
    way = card.pourings[0]
    assert way.together is not None
    assert louche_lines(card)[-1] == f"All oils together (30 mL in 1 L): {way.together.because}"
    assert serving_answer(card).oils_together == CloudingTold(
        "177.5", Outlook.MAY, way.together.because
    )


def test_one_oil_is_not_told_twice(sqlite_keeper: Keeper) -> None:
    card = serving(sqlite_keeper.book, walk_main_path(sqlite_keeper).packed)
    assert [row[0] for row in glass_table(card).rows if "together" in row[0]] == []
    assert len(louche_lines(card)) == 1
    assert serving_answer(card).oils_together is None


def test_a_preservative_of_which_nothing_is_recorded_is_named(sqlite_keeper: Keeper) -> None:
    code = preserved(sqlite_keeper)
    card = serving(sqlite_keeper.book, code)
    assert missing_lines(card) == [
        "Missing: what of concern keeps carries is not recorded, so none is reckoned. By its name "
        "it usually carries sodium benzoate. Record it: pottle material change keeps "
        '--constituents "NAME SHARE%"',
        "Missing: The class and number of the additive Sodium benzoate are not recorded. "
        'Record it: pottle material change keeps --additive "CLASS AND NUMBER"',
        "Missing: Whether Sodium benzoate carries allergens is not recorded. Record it: pottle "
        'material change keeps --allergens "NONE OR WHICH"',
        "Missing: What 100 g of Sodium benzoate hold is not recorded, so it counts as nothing. "
        'Record it: pottle material change keeps --nutrition "carbohydrate 80; sugars 78"',
    ]
    assert not limit_table(card).rows


def test_the_cards_of_an_essence_and_of_bottles_are_the_kept_ones(
    walked: tuple[Keeper, Lots],
) -> None:
    """Every line and figure of them: what is there, in a glass, beside limits, what to mind."""
    keeper, lots = walked
    cards = [serving(keeper.book, code) for code in (lots.essence, lots.packed)]
    cards.append(with_two_oils(keeper))
    lines = [
        line
        for card in cards
        for line in (
            *head(card),
            *told("glass", glass_table(card)),
            *louche_lines(card),
            *told("limits", limit_table(card)),
            *close_lines(card),
            *missing_lines(card),
            *caution_lines(card),
            *told("contents", content_facts(card)),
            *declared_lines(card),
            "",
        )
    ]
    check_golden("cards.txt", "\n".join(lines))


def test_what_of_concern_is_not_recorded_is_told_with_how_to_record_it() -> None:
    assert unrecorded("keeps") == (
        "what of concern keeps carries is not recorded, so none is reckoned.",
        'Record it: pottle material change keeps --constituents "NAME 1%"',
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
