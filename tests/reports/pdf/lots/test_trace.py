"""A trace on paper: every line of it, indented, with its heads on every page."""

from msgspec.structs import replace

from reports.pdf.kit.fonts import register
from reports.pdf.lots import trace as module
from reports.pdf.lots.trace import _part, trace_paper
from reports.views.lots import TraceRow, TraceView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
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


def test_every_mark_of_a_trace_stands_where_it_stood() -> None:
    """Lots in lots to below the deepest indent, who has goods held or not, and words that go on."""
    register()
    long = "Orange syrup of many words that go on in a further line " * 2
    deep = [TraceRow(1 + n, f"L-{n}", "Syrup", "3 mL", "6.7 %", "released") for n in range(11)]
    rows = (
        *deep,
        replace(deep[2], what=long),
        TraceRow(3, "", "Pretend Bar, DN-1", "5", "", "2026-04-28", "sold to", is_held=True),
        TraceRow(12, "", long, "6", "1 %", "2026-07-10", "destroyed"),
        TraceRow(2, "L-20", "Oil", "", "", ""),
        TraceRow(1, "L-21", "Oil", "", "", ""),
    )
    cut = (TraceRow(1, "L-1", "many words that go on " * 400, "", "", ""), rows[0])
    told = laid(*_part("To", rows, ""), *_part("To", (), "Nothing."), *_part("To", None, "No."))
    check_golden("laid/trace.txt", told)
    (section,) = _part("To", cut, "")
    assert len(section.rows) > len(cut)
    assert section.within == ()


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
