"""Limits of the maker beside those that came, and the days they are in force."""

from datetime import UTC, date, datetime

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula, Limit
from ledger.domain.entries.choices import ProductKind
from ledger.domain.masters.limits import Holds, ListedLimit
from ledger.errors import InputError, RefusedError
from ledger.service.account.shipped import shipped
from ledger.service.glass.serving import serving
from ledger.service.masters.limits import limits
from tests.keeper import Keeper
from tests.path import receive_all, walk_main_path
from tests.service.engines import ON_EACH_ENGINE
from tests.service.masters.said_anew import check_each_alone
from tests.service.wrong_words import check_wrong_words


def counting(keeper: Keeper) -> tuple[Limit, ...]:
    return tuple(item.limit for item in limits(keeper.book))


def test_a_limit_of_the_book_takes_the_place_of_one_that_came(keeper: Keeper) -> None:
    keeper.do("limit", code="eu-safrole", value="2", citation="read again", known_by="read")
    mine = next(item for item in counting(keeper) if item.code == "eu-safrole")
    assert (mine.value_micro, mine.citation, mine.substance) == (2_000_000, "read again", "safrole")
    assert len(counting(keeper)) == len(shipped())


def test_a_limit_in_any_unit_takes_a_new_value_and_keeps_the_rest(sqlite_keeper: Keeper) -> None:
    units = {item.unit: item for item in counting(sqlite_keeper)}
    assert len(units) > 3
    for old in units.values():
        sqlite_keeper.do("limit", code=old.code, value="0.5")
    now = {item.code: item for item in counting(sqlite_keeper)}
    assert [now[old.code] for old in units.values()] == [
        replace(old, value_micro=500_000) for old in units.values()
    ]


def test_a_limit_that_is_past_said_anew_holds_from_that_day(sqlite_keeper: Keeper) -> None:
    days = {"since": "2026-01-01", "until": "2026-02-01"}
    sqlite_keeper.do("limit", code="eu-sorbate", value="200", citation="read", **days)

    def now() -> ListedLimit:
        return next(item for item in limits(sqlite_keeper.book) if item.limit.code == "eu-sorbate")

    assert now().holds is Holds.PAST
    sqlite_keeper.do("limit", code="eu-sorbate", value="250", citation="read again")
    found = now()
    assert (found.holds, found.limit.value_micro) == (Holds.NOW, 250_000_000)
    assert (found.limit.since, found.limit.until) == (date(2026, 3, 2), None)


def test_the_end_of_a_limit_that_is_past_can_be_mended(sqlite_keeper: Keeper) -> None:
    days = {"since": "2026-01-01", "until": "2026-02-01"}
    sqlite_keeper.do("limit", code="eu-sorbate", value="200", citation="read", **days)
    done = sqlite_keeper.do("limit", code="eu-sorbate", until="2026-02-10")
    facts = done.entry.facts
    assert isinstance(facts, Limit)
    assert (facts.since, facts.until) == (date(2026, 1, 1), date(2026, 2, 10))


def test_a_new_limit_tells_all_that_is_missing_at_once(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("limit", code="mine")
    assert [what for what, _ in raised.value.problems] == [
        "The value is missing.",
        "The substance is missing.",
        "The unit is missing.",
        "The basis is missing.",
        "The place is missing.",
        "The citation is missing.",
    ]


def no_limonene(keeper: Keeper, **words: str) -> None:
    told = {
        "code": "no-limonene",
        "substance": "limonene",
        "value": "0",
        "unit": "mg/kg",
        "basis": "as-served",
        "place": "here",
        "citation": "a rule of the house",
    }
    keeper.do("limit", **{**told, **words})


def limonene_held_against(keeper: Keeper, lot: str) -> list[tuple[str, int]]:
    concern = serving(keeper.book, lot).pourings[0].concerns[0]
    return [(item.limit.code, item.limit.value_micro) for item in concern.limits]


@pytest.mark.parametrize(
    ("days", "is_compared"),
    [
        ({"until": "2026-04-01"}, False),
        ({"until": "2026-04-02"}, True),
        ({"since": "2026-04-02"}, True),
        ({"since": "2026-04-03"}, False),
        ({"since": "2026-04-02", "until": "2026-04-02"}, True),
    ],
)
def test_a_glass_is_held_against_the_limits_in_force_on_the_day_it_is_asked_for(
    days: dict[str, str], is_compared: bool, sqlite_keeper: Keeper
) -> None:
    lots = walk_main_path(sqlite_keeper)
    no_limonene(sqlite_keeper, **days)
    sqlite_keeper.clock.now = datetime(2026, 4, 2, 12, tzinfo=UTC)
    expected = [("no-limonene", 0)] if is_compared else []
    assert limonene_held_against(sqlite_keeper, lots.packed) == expected


def test_the_day_is_that_of_the_house_s_clock(sqlite_keeper: Keeper) -> None:
    """23:30 UTC of 30 June is half past midnight of 1 July in Dublin."""
    lots = walk_main_path(sqlite_keeper)
    no_limonene(sqlite_keeper, since="2026-07-01")
    sqlite_keeper.clock.now = datetime(2026, 6, 30, 22, 30, tzinfo=UTC)
    assert limonene_held_against(sqlite_keeper, lots.packed) == []
    sqlite_keeper.clock.now = datetime(2026, 6, 30, 23, 30, tzinfo=UTC)
    assert limonene_held_against(sqlite_keeper, lots.packed) == [("no-limonene", 0)]


@ON_EACH_ENGINE
def test_a_value_to_come_leaves_the_one_before_in_force_until_its_day(keeper: Keeper) -> None:
    lots = walk_main_path(keeper)
    no_limonene(keeper, value="5")
    no_limonene(keeper, value="3", since="2026-04-01")
    assert limonene_held_against(keeper, lots.packed) == [("no-limonene", 5_000_000)]
    found = next(item for item in limits(keeper.book) if item.limit.code == "no-limonene")
    assert (found.holds, found.limit.value_micro) == (Holds.NOW, 5_000_000)
    assert found.to_come is not None
    assert found.to_come.since == date(2026, 4, 1)
    keeper.clock.forward(days=40)
    assert limonene_held_against(keeper, lots.packed) == [("no-limonene", 3_000_000)]


def test_a_limit_that_ends_before_it_begins_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(RefusedError) as raised:
        no_limonene(sqlite_keeper, since="2026-04-01", until="2026-03-31")
    assert raised.value.problems == (
        (
            "The limit would hold until 2026-03-31, before it begins on 2026-04-01.",
            "Give --since the earlier day.",
        ),
    )


def test_a_card_knows_what_its_formula_claims(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    formula = Formula("test", 1, "Test", ProductKind.BLEND, parse_quantity("100mL"))
    sqlite_keeper.record(replace(formula, claim="uk-low-alcohol"))
    code = sqlite_keeper.opens("start", formula="test", target="100mL")
    sqlite_keeper.do("add", lot=code, source=lots.spirit, amount="100mL")
    assert serving(sqlite_keeper.book, code).claim == "uk-low-alcohol"


def test_a_fact_of_a_limit_that_is_said_anew_alone_keeps_the_rest(sqlite_keeper: Keeper) -> None:
    check_each_alone(
        sqlite_keeper,
        "limit",
        {"code": "house-limonene"},
        {
            "substance": "limonene",
            "bound": "at-most",
            "value": "1.5",
            "unit": "mg/kg",
            "basis": "as-served",
            "place": "here",
            "citation": "a rule",
            "known_by": "read",
            "says": "a wish",
            "since": "2026-01-01",
            "until": "2026-12-31",
        },
        [
            ("substance", "linalool", {"substance": "linalool"}),
            ("bound", "above", {"bound": "above"}),
            ("value", "0", {"value_micro": 0}),
            ("unit", "mg/L", {"unit": "mg/L"}),
            ("basis", "as-sold", {"basis": "as-sold"}),
            ("place", "there", {"place": "there"}),
            ("citation", "another rule", {"citation": "another rule"}),
            ("known_by", "recalled", {"known_by": "recalled"}),
            ("says", "a wish of the house", {"says": "a wish of the house"}),
            ("since", "2026-02-01", {"since": "2026-02-01"}),
            ("until", "2026-11-30", {"until": "2026-11-30"}),
        ],
    )


def test_a_new_value_whose_source_is_the_old_one_is_remarked_on(sqlite_keeper: Keeper) -> None:
    """A value of nothing is one; the same value again, or one with its source, is no matter."""
    no_limonene(sqlite_keeper, value="5", known_by="read")
    told = sqlite_keeper.do("limit", code="no-limonene", value="0").remarks
    assert [what for what, _ in told] == [
        'The value is another now, and its source still the old one: "a rule of the house", read. '
        "If the value stands elsewhere: pottle limits no-limonene --citation SOURCE --known-by read"
    ]
    assert sqlite_keeper.do("limit", code="no-limonene", value="0").remarks == ()
    assert sqlite_keeper.do("limit", code="no-limonene", value="3", citation="new").remarks == ()


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "limit")
