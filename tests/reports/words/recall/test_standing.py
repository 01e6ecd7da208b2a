"""How far a recall is, in words."""

from msgspec.structs import replace

from ledger.domain.lots.lot import Status
from ledger.service.recall.standing import recall_of
from reports.words.recall import standing as module
from reports.words.recall.standing import (
    accounted_line,
    balance_line,
    balance_rows,
    call_lines,
    course,
    lot_rows,
    lots_made,
    may_have,
    next_line,
)
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told
from tests.path import Lots
from tests.reports.words.recall.story import recalled


def test_a_drill_is_said_to_hold_nothing(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = recall_of(keeper.book, lots.oil)
    assert list(course(found, drill=True)) == ["DRILL: nothing was held and nothing was recorded."]
    assert lots_made(found) == (
        "SOO-001-3, Sweet orange oil: 3 lots made of it, 1 lot of bottles in all."
    )
    assert balance_line(found) == "15 bottles made = 9 here + 6 sent + 0 unexplained."


def test_a_call_has_its_deliveries_below_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert list(call_lines(recall_of(keeper.book, lots.oil))) == [
        "1. Bridge Street Stall: no telephone number in the book; at most 6 bottles (1.5 L)",
        "     BOS-001-S: 6 sold, 2026-03-04",
    ]


def test_every_lot_says_how_much_is_here_and_where_it_stands(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.oil, because="throws haze")
    assert lot_rows(recall_of(keeper.book, lots.oil)) == [
        [lots.oil, "Sweet orange oil", "469.231 mL", "recalled"],
        [lots.essence, "Orange essence", "418 mL", "recalled"],
        [lots.syrup, "Orange syrup", "50 mL", "recalled"],
        [lots.packed, "Orange syrup, 250 mL", "9", "recalled"],
    ]


def test_a_recall_in_which_all_happens_reads_as_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    """From a drill to the end: every way to go, people with and without a number, what is open."""
    keeper, lots = walked
    found = recalled(keeper, lots)
    unbegun = replace(found, begun=None, contacts=())
    keeper.do("close", lot=lots.oil, cause="the oil was old", because="two were never reached")
    states = (
        ("as it stands", found, False),
        ("not begun", unbegun, False),
        ("a drill", unbegun, True),
        ("closed", recall_of(keeper.book, lots.oil), False),
    )
    bare = recall_of(keeper.book, keeper.opens("receive", material="sugar", amount="2kg"))
    lines = [
        *(
            line
            for name, item, is_drill in states
            for line in (
                f"== {name}",
                *course(item, drill=is_drill),
                f"next: {next_line(item, drill=is_drill)}",
            )
        ),
        "== whom to call, and where all is",
        *call_lines(found),
        *told("balance", balance_rows(found)),
        balance_line(found),
        accounted_line(found),
        "== of a lot of which nothing was made",
        lots_made(bare),
        *told("balance", balance_rows(bare)),
        balance_line(bare),
        accounted_line(bare),
    ]
    check_golden("recall_words.txt", "\n".join((*lines, "")))


def test_what_is_next_of_a_recall_follows_what_is_open(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = recalled(keeper, lots)
    spoken = next(call for call in found.to_call if call.is_reached)
    all_called = replace(found, to_call=(spoken,))
    assert next_line(all_called, drill=False) == f"pottle send {lots.oil} AMOUNT --as destroyed"
    empty = tuple(replace(item, brief=replace(item.brief, on_hand=0)) for item in found.lots)
    gone = replace(all_called, lots=empty)
    assert next_line(gone, drill=False) == f'pottle recall {lots.oil} --close "CAUSE"'
    held = replace(found.lots[0].brief, status=Status.HELD)
    other = replace(found, lots=(replace(found.lots[0], brief=held), *found.lots[1:]))
    assert list(course(other, drill=False))[1] == f"Not recalled: {lots.oil}."
    assert next_line(other, drill=False) == f'pottle recall {lots.oil} --because "WHY"'
    assert next_line(other, drill=True).startswith("pottle contact ")
    unnamed = tuple(call for call in found.to_call if call.name == "market")
    assert not next_line(replace(found, to_call=unnamed), drill=False).startswith("pottle contact")


def test_what_somebody_may_have_is_told_by_bottles_or_volume_and_who_says_so(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    call = recalled(keeper, lots).to_call[0]
    empty: dict[str, object] = {"pieces": 0, "volume_ul": 0}
    cases: tuple[tuple[dict[str, object], str], ...] = (
        ({}, "at most 2 bottles (500 mL)"),
        ({"pieces": 1_000_000, "volume_ul": 250_000}, "at most 1 bottle (250 mL)"),
        ({"pieces": 0}, "at most 500 mL"),
        (empty, "nothing left by the book"),
    )
    assert [may_have(replace(call, **changes)) for changes, _ in cases] == [w for _, w in cases]
    keeper.do("contact", lot=lots.oil, party=call.name, reached="spoken", still_there="0")
    (told_none,) = (
        one for one in recall_of(keeper.book, lots.oil).to_call if one.name == call.name
    )
    assert may_have(replace(told_none, **empty)) == "nothing left, as they say"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
