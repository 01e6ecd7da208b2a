"""Limits beside the figures of a card."""

from types import SimpleNamespace
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries.choices import Bound
from ledger.science.doubt.conformity import Verdict
from ledger.service.glass.card import ServingCard
from ledger.service.glass.doubted import DOSE, ETHANOL, SUGAR, VOLUME
from ledger.service.glass.serving import serving
from reports.json.glass.serving import serving_answer
from reports.words.glass import limits as module
from reports.words.glass.limits import _counts, _share, close_lines, limit_table
from reports.words.glass.serving import glass_table
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import receive_all, walk_main_path
from tests.reports.words.glass.preserved import preserved


def test_a_daily_limit_of_nothing_at_all_is_told_as_passed_without_a_share(
    sqlite_keeper: Keeper,
) -> None:
    keeper, lots = sqlite_keeper, walk_main_path(sqlite_keeper)
    keeper.do(
        "limit",
        code="no-limonene",
        substance="limonene",
        value="0",
        unit="mg/kg body weight",
        basis="a-day",
        place="here",
        citation="a rule of the house",
    )
    found = serving(keeper.book, lots.packed)
    assert limit_table(found).rows[:2] == (
        ("limonene: 0 mg a day, adult of 60 kg", "PAST", "1"),
        ("limonene: 0 mg a day, child of 20 kg", "PAST", "1"),
    )
    ceilings = serving_answer(found).concerns[0].ceilings
    assert [(item.percent, item.passed) for item in ceilings] == [(None, True)] * 2


def markers_of(card: ServingCard) -> list[tuple[str, str]]:
    rows = (row for row in limit_table(card).rows if "alcohol" in row[0] or "sugar" in row[0])
    return [(row[0], row[1]) for row in rows]


YARDSTICK = "yardstick for food syrups unfit for beverage use, strength and sugar together"


def test_a_yardstick_of_strength_and_sugar_is_told_whole(sqlite_keeper: Keeper) -> None:
    """The syrup of the main path holds 611 g of sugar in a litre."""
    lots = walk_main_path(sqlite_keeper)
    told = serving(sqlite_keeper.book, lots.packed)
    assert limit_table(told).heads == ("limit or marker", "as it is", "source")
    assert markers_of(told) == [
        (
            "US, alcohol in the bottle from 0.5 % vol: treated as an alcoholic beverage unless "
            "unfit for beverage use",
            "0.685 ± 0.010 % vol REACHED",
        ),
        (f"US, alcohol in the bottle at most 12 % vol: {YARDSTICK}", "0.685 ± 0.010 % vol"),
        (f"US, sugar in the bottle from 60 g/100mL: {YARDSTICK}", "61.1 ± 0.7 g/100mL REACHED"),
    ]


def test_what_is_too_close_says_what_it_is_in_doubt_by_and_what_would_decide() -> None:
    def close(substance: str, by: str, verdict: Verdict = Verdict.UNDECIDED) -> Any:
        limit = SimpleNamespace(substance=substance, place="EU", code="x", bound=Bound.AT_MOST)
        return SimpleNamespace(limit=limit, by=by, verdict=verdict)

    causes = {"alcohol": ETHANOL, "sugar": SUGAR, "a": VOLUME, "b": DOSE, "limonene": "SOO-001-3"}
    items = tuple(close(what, by) for what, by in causes.items())
    kept = (close("none", ETHANOL, Verdict.BELOW), close("unknown", ""))
    served = SimpleNamespace(daily=items[:1], limits=(*items, close("c", DOSE), *kept))
    card: Any = SimpleNamespace(
        pourings=(SimpleNamespace(concerns=(served,), markers=()),), claim=None
    )
    check_golden("too_close.txt", "".join(f"{line}\n" for line in close_lines(card)))
    served.daily, served.limits = (), kept
    assert close_lines(card) == []


@pytest.mark.parametrize(
    ("water", "told"),
    [
        ("2.43L", "61.1 ± 0.7 g/100mL REACHED"),
        ("2.52L", "59.7 ± 0.7 g/100mL TOO CLOSE"),
        ("4L", None),
    ],
)
def test_the_yardstick_stays_on_a_card_that_just_misses_it(
    sqlite_keeper: Keeper, water: str, told: str | None
) -> None:
    """By ICUMSA SPS-4 2.4 kg of sugar and 2.52 L of water are 59.7 g in 100 mL."""
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Orange syrup", kind="syrup", target="4L")
    sqlite_keeper.do("add", lot=code, source=lots.sugar, amount="2.4kg")
    sqlite_keeper.do("add", lot=code, source=lots.water, amount=water)
    found = dict(markers_of(serving(sqlite_keeper.book, code)))
    assert found.get(f"US, sugar in the bottle from 60 g/100mL: {YARDSTICK}") == told


@pytest.mark.parametrize(
    ("bound", "figure", "verdict", "is_told"),
    [
        (Bound.FROM, 0.9, Verdict.BELOW, True),
        (Bound.FROM, 0.89, Verdict.BELOW, False),
        (Bound.ABOVE, 0.95, Verdict.BELOW, True),
        (Bound.AT_MOST, 0.95, Verdict.BELOW, False),
        (Bound.AT_MOST, 0.95, Verdict.UNDECIDED, True),
    ],
)
def test_a_marker_is_told_from_nine_tenths_of_it_and_a_ceiling_where_it_may_be_passed(
    bound: Bound, figure: float, verdict: Verdict, *, is_told: bool
) -> None:
    def item(says: str | None) -> Any:
        limit = SimpleNamespace(bound=bound, code="x", says=says, value_micro=1_000_000)
        return SimpleNamespace(limit=limit, figure=figure, verdict=verdict)

    card: Any = SimpleNamespace(claim=None)
    claimed: Any = SimpleNamespace(claim="x")
    assert _counts(item(None), card) is is_told
    assert _counts(item("the words weak"), card) is False
    assert _counts(item("the words weak"), claimed) is True


@pytest.mark.parametrize(
    ("percent", "doubt", "told"),
    [
        (None, 0.0, ""),
        (0.8, 0.1, "<1 %"),
        (0.75, 0.25, "0.8 ± 0.3 %"),
        (12.0, 0.5, "12.0 ± 0.5 %"),
    ],
)
def test_a_share_of_a_day_that_stays_below_one_per_cent_needs_no_digits(
    percent: float | None, doubt: float, told: str
) -> None:
    item: Any = SimpleNamespace(percent=percent, doubt=doubt, ceiling_mg=100.0)
    assert _share(item) == told


def test_a_limit_for_words_is_told_where_the_label_claims_them(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    card = serving(sqlite_keeper.book, lots.packed)
    words = "UK, alcohol in the bottle at most 0.5 % vol: the words de-alcoholised"
    assert words not in [row for row, _ in markers_of(card)]
    claimed = replace(card, claim="uk-de-alcoholised")
    assert (words, "0.685 ± 0.010 % vol PAST") in markers_of(claimed)


def test_a_limit_of_the_maker_on_alcohol_is_told_where_it_is_passed(sqlite_keeper: Keeper) -> None:
    lots = walk_main_path(sqlite_keeper)
    told = {"substance": "alcohol", "unit": "% vol", "place": "here", "citation": "our own rule"}
    sqlite_keeper.do("limit", code="weak", value="0.6", basis="as-sold", **told)
    sqlite_keeper.do("limit", code="weaker", value="0.2", basis="as-served", **told)
    found = markers_of(serving(sqlite_keeper.book, lots.packed))
    assert ("here, alcohol in the bottle at most 0.6 % vol", "0.685 ± 0.010 % vol PAST") in found
    assert not [row for row, _ in found if "0.2 % vol" in row]


def test_benzoate_is_held_against_the_limit_for_the_acid(sqlite_keeper: Keeper) -> None:
    """By hand: 1.4 g/L in 30 mL of 240 mL are 175 mg/L, x 122.12/144.10 = 148.3 mg/L of acid.

    So a glass stays below 150 mg/L counted as the acid, which as salt it would pass; and what a
    litre of it weighs is 0.9982 kg and 1.4 g, of which the salt is 0.140 %.
    """
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    card = serving(sqlite_keeper.book, code)
    assert [row[:2] for row in limit_table(card).rows] == [
        ("EU, benzoic acid in the glass at most 150 mg/L: soft drinks, counted as the acid",
         "148.3 ± 1.7 mg/L"),
        ("US, sodium benzoate in the bottle at most 0.1 % mass: as a preservative in food",
         "0.1401 ± 0.0007 % mass PAST"),
    ]  # fmt: skip
    assert glass_table(card).rows[-2:] == (
        ("benzoic acid, with its salts", "35.6 mg"),
        ("sodium benzoate", "42 mg"),
    )


def test_sorbate_beside_benzoate_is_held_against_the_lower_limit_too(
    sqlite_keeper: Keeper,
) -> None:
    """By hand: 2.9 g/L in 30 mL of 240 mL are 362.5 mg/L, x 112.13/150.22 = 270.6 mg/L of acid.

    So a glass is within 300 mg/L, which is for sorbates alone, and past the 250 mg/L that hold
    beside benzoates (trade press report of the Union list for soft drinks, 25 November 2008).
    """
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    alone = "EU, sorbic acid in the glass at most 300 mg/L: soft drinks, alone, counted as the acid"
    beside = (
        "EU, sorbic acid in the glass at most 250 mg/L: soft drinks, with benzoates, counted as "
        "the acid"
    )
    sqlite_keeper.do(
        "material",
        code="sorb",
        name="Potassium sorbate",
        kind="preservative",
        constituents="potassium sorbate 100%",
    )
    salt = sqlite_keeper.opens("receive", material="sorb", amount="50g")
    sqlite_keeper.do("add", lot=code, source=salt, amount="2.9g")
    told = {row[0]: row[1] for row in limit_table(serving(sqlite_keeper.book, code)).rows}
    assert (told[alone], told[beside]) == ("271 ± 4 mg/L", "271 ± 4 mg/L PAST")


def test_sorbate_alone_is_not_held_against_the_limit_beside_benzoate(
    sqlite_keeper: Keeper,
) -> None:
    code = preserved(sqlite_keeper, constituents="potassium sorbate 100%")
    rows = limit_table(serving(sqlite_keeper.book, code)).rows
    assert [row[0] for row in rows if "sorbic" in row[0]] == [
        "EU, sorbic acid in the glass at most 300 mg/L: soft drinks, alone, counted as the acid"
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "limit_table")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
