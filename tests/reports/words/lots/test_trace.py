"""A trace as a tree: every lot stands once, and the depth of nesting can be read."""

import re
from datetime import UTC, datetime

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import When
from ledger.domain.entries.choices import LotType, MoveAs, ProductKind
from ledger.domain.lots.lot import Lot, Status
from ledger.service.lots.shares import Share, Traced
from ledger.service.lots.trace import Carried, Holder, Node, Trace, Way
from reports.words.lots import trace as module
from reports.words.lots.trace import describe, holder_words, opened_on, rules, traced_lines
from tests.kept.said import check_constants, check_said

LOT = Lot(
    seq=1,
    code="L-0",
    lot_type=LotType.MADE,
    measure=Measure.UL,
    opened_at=When(datetime(2026, 3, 2, 23, 30, tzinfo=UTC), 60),
    name="Orange essence",
    product="Orange essence",
    product_kind=ProductKind.ESSENCE,
    status=Status.FINISHED,
    on_hand=0,
)


def traced(edges: list[tuple[int, int]], way: Way, holders: tuple[Holder, ...] = ()) -> Trace:
    """Return a trace of lot 0 over edges from one number to another, 10 mL each."""
    numbers = sorted({end for edge in edges for end in edge} | {0})
    briefs = [replace(LOT, seq=number + 1, code=f"L-{number}") for number in numbers]
    nodes = [
        Node(brief, min(number, 1), way if number else Way.HERE)
        for number, brief in zip(numbers, briefs, strict=True)
    ]
    carried = [Carried(f"L-{one}", f"L-{other}", 10_000, Measure.UL) for one, other in edges]
    return Trace(briefs[0], tuple(nodes), tuple(carried), holders)


def trace_lines(trace: Trace, *, back: bool, forward: bool) -> list[str]:
    """Return the tree of a trace of which no amount is known."""
    found = Traced(trace, {}, {}, {})
    return [describe(trace.lot), *traced_lines(found, back=back, forward=forward)]


def holder(lot: str, amount: int, moved_as: MoveAs, document: str | None = None) -> Holder:
    place = (datetime(2026, 3, 5, 12, tzinfo=UTC), 9)
    return Holder(lot, "A stall", moved_as, amount, Measure.UEACH, "2026-03-05", document, place)


def test_a_branch_met_again_is_referred_to_and_not_repeated() -> None:
    found = traced([(0, 1), (0, 2), (1, 3), (2, 3), (3, 4)], Way.FORWARD)
    assert trace_lines(found, back=False, forward=True) == [
        "L-0  Orange essence, 2026-03-03, finished",
        "",
        "Went into 4 lots",
        "├─ 10 mL  L-1  Orange essence, 2026-03-03, finished",
        "│  └─ 10 mL  L-3  Orange essence, 2026-03-03, finished",
        "│     └─ 10 mL  L-4  Orange essence, 2026-03-03, finished",
        "└─ 10 mL  L-2  Orange essence, 2026-03-03, finished",
        "   └─ 10 mL  L-3, see above",
    ]


def test_goods_that_left_stand_before_lots_with_what_became_of_them() -> None:
    holders = (
        holder("L-0", 6_000_000, MoveAs.SALE, "DN-1"),
        holder("L-0", -2_000_000, MoveAs.RETURNED),
    )
    found = traced([(0, 1)], Way.FORWARD, holders)
    assert trace_lines(found, back=False, forward=True)[3:] == [
        "├─ 6 sold to A stall, 2026-03-05, DN-1",
        "├─ 2 came back from A stall, 2026-03-05",
        "└─ 10 mL  L-1  Orange essence, 2026-03-03, finished",
    ]


@pytest.mark.parametrize(
    ("moved_as", "amount", "with_party", "without"),
    [
        (MoveAs.SALE, 6, "6 sold to A stall", "6 sold"),
        (MoveAs.RETURNED, -2, "2 came back from A stall", "2 came back"),
        (MoveAs.DESTROYED, 1, "1 destroyed by A stall", "1 destroyed"),
    ],
)
def test_goods_are_told_with_whom_they_went_to_or_without(
    moved_as: MoveAs, amount: int, with_party: str, without: str
) -> None:
    item = holder("L-0", amount * 1_000_000, moved_as, "DN-1")
    assert holder_words(item) == f"{with_party}, 2026-03-05, DN-1"
    assert holder_words(item, with_party=False) == f"{without}, 2026-03-05, DN-1"
    assert holder_words(replace(item, document=None)) == f"{with_party}, 2026-03-05"


@pytest.mark.parametrize(
    ("found", "head"),
    [
        (traced([], Way.FORWARD), "Went nowhere yet"),
        (traced([], Way.FORWARD, (holder("L-0", 1, MoveAs.SALE),)), "Went out"),
        (traced([(0, 1)], Way.FORWARD), "Went into 1 lot"),
    ],
    ids=["nothing", "goods alone", "one lot"],
)
def test_the_head_says_how_far_it_went(found: Trace, head: str) -> None:
    assert trace_lines(found, back=False, forward=True)[2] == head


def test_a_lot_of_no_other_says_so() -> None:
    assert trace_lines(traced([], Way.BACK), back=True, forward=False)[2] == "Made of no other lot"
    assert trace_lines(traced([(1, 0)], Way.BACK), back=True, forward=False)[2:] == [
        "Made of 1 lot",
        "└─ 10 mL  L-1  Orange essence, 2026-03-03, finished",
    ]


def test_the_day_of_a_lot_is_that_of_its_own_clock_and_none_when_struck() -> None:
    assert opened_on(LOT) == "2026-03-03"
    elsewhere = When(datetime(2026, 3, 2, 23, 30, tzinfo=UTC), 0)
    assert opened_on(replace(LOT, opened_at=elsewhere)) == "2026-03-02"
    assert opened_on(replace(LOT, opened_at=None)) == ""


def test_three_hundred_lots_stand_once_each_a_line_within_bounds() -> None:
    edges = [(number // 3, number) for number in range(1, 301)]
    lines = trace_lines(traced(edges, Way.FORWARD), back=False, forward=True)
    assert lines[2] == "Went into 300 lots"
    told = [re.findall(r"L-\d+", line) for line in lines[3:]]
    assert [len(codes) for codes in told] == [1] * 300
    assert len({codes[0] for codes in told}) == 300
    assert max(map(len, lines)) <= 80


def test_a_chain_of_thousands_is_told_in_lines_that_still_fit() -> None:
    edges = [(number, number + 1) for number in range(3000)]
    lines = trace_lines(traced(edges, Way.FORWARD), back=False, forward=True)
    assert len(lines) == 3003
    assert max(map(len, lines)) <= 100
    assert lines[-1].lstrip() == "└─ (3000) 10 mL  L-3000  Orange essence, 2026-03-03, finished"


def test_the_rules_at_the_left_show_what_still_hangs_below() -> None:
    assert rules([False]) == "├─ "
    assert rules([True, False, True]) == "   │  └─ "


SHARE = Share(6_000.0, Measure.UL, 450_000, Measure.UL, is_all=True)


def test_the_share_stands_after_the_code_and_the_head_says_what_it_is() -> None:
    found = Traced(traced([(0, 1), (0, 2)], Way.FORWARD), {}, {"L-1": SHARE}, {})
    assert list(traced_lines(found, back=False, forward=True)) == [
        "",
        "Went into 2 lots (amount, lot, how much of L-0 is in it)",
        "├─ 10 mL  L-1  1.33 %  Orange essence, 2026-03-03, finished",
        "└─ 10 mL  L-2  Orange essence, 2026-03-03, finished",
    ]


def test_goods_that_are_still_here_and_waste_end_a_branch() -> None:
    trace = traced([(0, 1)], Way.FORWARD)
    lots = [replace(node, brief=replace(node.brief, on_hand=30_000)) for node in trace.nodes]
    found = Traced(replace(trace, nodes=tuple(lots)), {}, {}, {"L-1": 20_000})
    assert list(traced_lines(found, back=False, forward=True))[2:] == [
        "├─ 30 mL still here",
        "└─ 10 mL  L-1  Orange essence, 2026-03-03, finished",
        "   ├─ 20 mL to waste",
        "   └─ 30 mL still here",
    ]


def test_a_circle_and_what_was_left_out_are_said_below_the_tree() -> None:
    trace = replace(traced([(0, 1)], Way.FORWARD), circles=(("L-0", "L-1"),))
    found = Traced(trace, {}, {}, {}, hidden=2)
    assert list(traced_lines(found, back=False, forward=True))[3:] == [
        "2 lots further away left out; without --depth they show.",
        "The book is damaged: L-0 into L-1 into L-0 is a circle. It was not followed, and amounts "
        "on it are not known. pottle verify says more.",
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


@pytest.mark.parametrize(("depth", "told"), [(10, ""), (11, "(11) ")])
def test_ten_rules_are_drawn_and_one_more_depth_is_told_as_a_number(depth: int, told: str) -> None:
    assert rules([True] * depth) == f"{'   ' * 9}└─ {told}"
