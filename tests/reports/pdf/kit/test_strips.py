from io import BytesIO

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from ledger.errors import RefusedError
from reports.pdf.kit import strips as module
from reports.pdf.kit.marks import Rule
from reports.pdf.kit.strips import Section, Strip, draw_strips, paginate, stacked
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.ink import ink_of

HEIGHTS = st.lists(st.integers(1, 30).map(lambda h: Strip(float(h))), max_size=30)
SECTIONS = st.builds(
    Section,
    head=st.just(Strip(12.0)),
    again=st.just(Strip(7.0)),
    rows=HEIGHTS.map(tuple),
    whole=st.booleans(),
)


@given(st.lists(SECTIONS, max_size=6))
def test_every_row_stands_once_and_no_page_is_overfull(sections: list[Section]) -> None:
    pages = paginate(sections, 100.0)
    assert all(sum(strip.height for strip in page) <= 100 for page in pages)
    heads = [id(strip) for section in sections for strip in (section.head, section.again)]
    placed = [id(strip) for page in pages for strip in page if id(strip) not in heads]
    assert placed == [
        id(row) for section in sections for row in section.rows if id(row) not in heads
    ]


def test_a_head_never_ends_a_page_and_stands_again_on_the_next() -> None:
    head, again, row = Strip(10), Strip(8), Strip(30)
    pages = paginate([Section(Strip(65), Strip(0)), Section(head, again, (row,) * 5)], 100)
    assert pages == [[Strip(65)], [head, row, row, row], [again, row, row]]


def test_a_head_keeps_two_rows_and_two_rows_end_what_goes_on() -> None:
    head, again, row = Strip(10), Strip(8), Strip(30)
    begun = [Section(Strip(40), Strip(0)), Section(head, again, (row, row, row))]
    assert paginate(begun, 100) == [[Strip(40)], [head, row, row, row]]
    ended = [Section(head, again, (row,) * 4)]
    assert paginate(ended, 101) == [[head, row, row], [again, row, row]]


def test_a_row_that_would_find_no_more_room_on_another_page_stays_where_it_is() -> None:
    """The last two rows need 30, and have 20 here as they would have below what they are in."""
    head, low, row, within = Strip(10), Strip(5), Strip(15), Strip(10)
    section = Section(head, head, (low, low, row, row), within=(within,) * 4)
    assert paginate([section], 40) == [[head, low, low, row], [head, within, row]]


def test_what_is_tied_never_begins_a_page() -> None:
    head, row, signed = Strip(10), Strip(30), Section(Strip(25), Strip(0), tied=True)
    pages = paginate([Section(head, Strip(0), (row,) * 3), signed], 101)
    assert [[strip.height for strip in page] for page in pages] == [[10, 30], [0, 85]]


def test_a_section_with_too_few_rows_comes_along_whole_with_what_is_tied() -> None:
    people = Section(Strip(10), Strip(0), (Strip(5),))
    signed = Section(Strip(25), Strip(0), tied=True)
    pages = paginate([Section(Strip(10), Strip(8), (Strip(20),) * 4), people, signed], 101)
    assert [[strip.height for strip in page] for page in pages] == [[10, 20, 20], [8, 20, 60]]


def test_what_is_whole_moves_to_a_new_page_together() -> None:
    row = Strip(30)
    whole = Section(Strip(0), Strip(0), (row, row), whole=True)
    assert paginate([Section(Strip(50), Strip(0)), whole], 100) == [
        [Strip(50)],
        [Strip(0), row, row],
    ]


def test_a_piece_higher_than_a_page_is_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        paginate([Section(Strip(850), Strip(0))], 567)
    assert str(raised.value) == (
        "A part of the paper that must stay in one piece needs 300 mm of height and a page has "
        "200 mm. Shorten its names and texts and print again."
    )


def test_the_pages_that_sections_are_shared_out_over_are_as_kept() -> None:
    """Heads, rows, what stands within and what is tied, at every height of page that matters."""
    head, again, row = Strip(10), Strip(8), Strip(30)
    plain = Section(head, again, (row,) * 5)
    inside = Section(
        head, again, (row,) * 5, within=(Strip(0), Strip(3), Strip(0), Strip(4), Strip(5))
    )
    signed = Section(Strip(25), Strip(0), tied=True)
    cases = {
        "plain": [plain, plain],
        "within": [Section(Strip(5), Strip(0)), inside],
        "whole": [Section(Strip(5), Strip(0)), Section(head, again, (row,) * 3, whole=True)],
        "tied": [plain, signed],
        "tied to few": [plain, Section(head, again, (row,)), signed],
        "tied to none": [Section(head, again), signed, signed],
        "one": [Section(Strip(40), Strip(0)), Section(head, again, (row,))],
    }
    told = []
    for name, sections in cases.items():
        for height in (40, 48, 68, 69, 70, 71, 95, 98, 99, 100, 101, 103, 128, 130, 160):
            try:
                pages = [[each.height for each in page] for page in paginate(sections, height)]
                told.append(f"{name} on {height}: {pages}")
            except RefusedError as error:
                told.append(f"{name} on {height}: {error}")
    check_golden("laid/strips.txt", "\n".join(told) + "\n")


def test_strips_are_drawn_below_each_other_and_their_titles_listed() -> None:
    mark = Rule(10, 2, 90, 2, 0.5)
    both = stacked([Strip(10, (mark,)), Strip(20, (mark,), "First"), Strip(5, (), "Other")])
    assert (both.height, both.title) == (35, "First")
    out = BytesIO()
    canvas = Canvas(out, pagesize=(100, 100), invariant=1)
    draw_strips(canvas, [Strip(7, (mark,)), both, Strip(3, (mark,), "Last")], 90)
    canvas.setProducer("Invented")
    canvas.save()
    check_golden("ink/strips.txt", ink_of(out.getvalue()))
    assert out.getvalue().count(b"/XYZ") + out.getvalue().count(b"/FitH") == 2


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
