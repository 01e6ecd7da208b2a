"""A trace on paper: every line of it, indented, with its heads on every page."""

from msgspec.structs import replace

from reports.pdf.lots.trace import trace_paper
from reports.views.lots import TraceRow, TraceView
from tests.golden import check_golden
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.readback import printed, texts_of


def view(rows: int) -> TraceView:
    lines = tuple(
        TraceRow(1 + number % 12, f"L-{number:03d}", "Orange syrup", "30 mL", "6.7 %", "released")
        for number in range(rows)
    )
    return TraceView(FRAME, "OIL-1", "Orange oil", None, lines, ("A note.",))


def test_every_lot_is_printed_and_heads_stand_on_every_page() -> None:
    pages = texts_of(printed(trace_paper, view(120)))
    assert len(pages) > 2
    whole = "".join(pages)
    assert all(f"L-{number:03d}" in whole for number in range(120))
    assert all("Steps and lot" in page and "Root: 5f8b" in page for page in pages)
    assert "A note." in pages[0]


def test_the_same_trace_gives_the_same_bytes() -> None:
    assert printed(trace_paper, view(3)) == printed(trace_paper, view(3))


def test_a_way_that_was_not_asked_for_has_no_part() -> None:
    text = "".join(texts_of(printed(trace_paper, replace(view(1), back=(), forward=()))))
    assert "Made of no other lot." in text
    assert "Went nowhere yet." in text
    text = "".join(texts_of(printed(trace_paper, view(1))))
    assert "Made of" not in text
    assert "What became of it (share: how much of OIL-1 is in it)" in text


def test_who_has_goods_how_many_and_since_when_stand_in_columns_of_their_own() -> None:
    rows = (
        TraceRow(2, "", "Pretend Bar, DN-1", "5", "", "2026-04-28", "sold to", is_held=True),
        TraceRow(2, "", "waste sheet 7", "6", "", "2026-07-10", "destroyed"),
    )
    on_letter = replace(FRAME, size="Letter")
    whole = replace(view(2), frame=on_letter, forward=rows, back=view(3).forward)
    paper = printed(trace_paper, whole)
    text = "".join(texts_of(paper))
    check_golden("ink/trace.txt", ink_of(paper))
    lines = [line.replace("\N{NO-BREAK SPACE}", " ").strip() for line in text.splitlines()]
    assert [line for line in lines if "–" in line] == [
        "– sold to Pretend Bar, DN-1 5 2026-04-28",
        "– destroyed waste sheet 7 6 2026-07-10",
    ]


def test_a_page_that_begins_within_a_lot_says_within_which() -> None:
    first = TraceRow(1, "OE-001-5", "Orange essence", "30 mL", "6.7 %", "released")
    inner = [
        TraceRow(2, f"L-{number:03d}", "Orange syrup", "30 mL", "6.7 %", "released")
        for number in range(90)
    ]
    pages = texts_of(printed(trace_paper, replace(view(1), forward=(first, *inner))))
    assert len(pages) > 1
    assert "Within" not in pages[0]
    assert all("Within OE-001-5" in page for page in pages[1:])
