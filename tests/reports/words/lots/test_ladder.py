"""The ladder of yield: every rung once, what filters kept explained, the rest last."""

import pytest
from msgspec.structs import replace

from ledger.domain.lots.yields import Yield
from ledger.service.lots.dossier import dossier
from reports.words.lots import ladder as module
from reports.words.lots.ladder import _less, delivery_ladder, filling_ladder, ladder
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.words.bottles import pack


def rungs(keeper: Keeper, code: str) -> list[tuple[str, str, str]]:
    found = dossier(keeper.book, code)
    told = ladder(found.state, found.inputs, found.formula, found.draws)
    return [(row.sign, row.what, row.amount) for row in told]


def test_what_a_filter_kept_is_told_and_only_the_rest_is_not_accounted_for(
    orange: tuple[Keeper, str],
) -> None:
    """480 mL went in; 30 and 6 stayed in the filters, 3 were spilt, 430 came out: 11 are left."""
    assert rungs(*orange) == [
        ("", "Liquids put in", "480 mL"),
        ("\N{MINUS SIGN}", "Kept by the filter, pass 1", "30 mL"),
        ("\N{MINUS SIGN}", "Kept by the filter, pass 2", "6 mL"),
        ("\N{MINUS SIGN}", "Spilt or thrown away", "3 mL"),
        ("=", "Came out", "430 mL"),
        ("", "Not accounted for", "11 mL"),
        ("", "Share of the target of 480 mL, by the formula 85 % to 102 %", ""),
    ]


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("base-syrup", "Added by what dissolved of 600 g put in, less what was lost"),
        ("blend", "More than went in by the book"),
    ],
)
def test_what_dissolves_in_a_syrup_is_told_as_adding_to_it(
    sqlite_keeper: Keeper, kind: str, told: str
) -> None:
    """A gram of sugar adds less than a mL: 600 g may well be 370 mL."""
    keeper = sqlite_keeper
    water = keeper.opens("receive", material="water", amount="10L")
    sugar = keeper.opens("receive", material="sugar", amount="10kg")
    code = keeper.opens("start", product="Simple", kind=kind, target="1L")
    keeper.do("add", lot=code, source=water, amount="400mL")
    keeper.do("add", lot=code, source=sugar, amount="600g")
    keeper.do("finish", lot=code, volume="770mL", because="as read")
    assert ("+", told, "370 mL") in rungs(keeper, code)


def test_a_batch_that_is_not_finished_has_no_ladder(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Free", kind="blend", target="1L")
    assert rungs(sqlite_keeper, code) == []


def test_a_filling_has_its_yield(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    found = dossier(keeper.book, pack(keeper, lots, essence))
    drawn, inside, left = filling_ladder(found.state)
    assert (drawn.what, inside.sign, left.what) == ("Drawn from the bulk", "=", "Not accounted for")
    assert (drawn.sign, left.sign) == ("", "")


def test_what_went_on_the_way_is_told_by_each_of_its_ways_in_their_order() -> None:
    became = Yield(
        went_in=100, came_out=50, drawn=3, heel=2, cake=0, apart=0, waste=6, kept_back=0,
        to_lots=(("A-1", 4), ("B-1", 5)), filters=((1, 10), (2, 7)), rinse_left=1,
    )  # fmt: skip
    assert list(_less(became)) == [
        ("Kept by the filter, pass 1", 10),
        ("Kept by the filter, pass 2", 7),
        ("Kept by the cake when it was rinsed", 1),
        ("Heels", 2),
        ("Samples and what else was taken out", 3),
        ("Drawn to A-1", 4),
        ("Drawn to B-1", 5),
        ("Spilt or thrown away", 6),
    ]


def test_a_delivery_is_used_sent_here_and_the_rest_is_not_accounted_for(
    walked: tuple[Keeper, Lots],
) -> None:
    """500 mL of oil: 30.769 went into the essence, a count finds 400, so 69.231 are not told of."""
    keeper, lots = walked
    rows = [
        (r.sign, r.what, r.amount, r.is_sum)
        for r in delivery_ladder(dossier(keeper.book, lots.oil))
    ]
    assert rows == [
        ("", "Received", "500 mL", True),
        ("\N{MINUS SIGN}", "Used here", "30.769 mL", False),
        ("=", "Here", "469.231 mL", True),
        ("", "Not accounted for", "0 mL", False),
    ]
    keeper.do("send", lot=lots.oil, amount="10mL", moved_as="destroyed", witness="CD")
    keeper.do("count", lot=lots.oil, amount="400mL", because="spilt")
    last = [
        (r.sign, r.what, r.amount, r.share) for r in delivery_ladder(dossier(keeper.book, lots.oil))
    ]
    assert last[2:] == [
        ("\N{MINUS SIGN}", "Sent, thrown away or kept back", "10 mL", "2.0 %"),
        ("=", "Here", "400 mL", "80.0 %"),
        ("", "Not accounted for", "59.231 mL", "11.8 %"),
    ]


def test_without_limits_of_yield_a_formula_adds_nothing_to_the_share_of_the_target(
    orange: tuple[Keeper, str],
) -> None:
    keeper, code = orange
    found = dossier(keeper.book, code)
    assert found.formula is not None
    for low, high, words in (
        (None, None, ""),
        (85_000, None, ", by the formula at least 85 %"),
        (None, 102_000, ", by the formula at most 102 %"),
    ):
        formula = replace(found.formula, yield_min_mpct=low, yield_max_mpct=high)
        *_, last = ladder(found.state, found.inputs, formula, found.draws)
        assert last.what == f"Share of the target of 480 mL{words}"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
