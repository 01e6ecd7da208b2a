"""Words beside dots: near theirs, over no other and over no dot, or left out."""

from hypothesis import given
from hypothesis import strategies as st

from reports.pdf.causes import beside as module
from reports.pdf.causes.beside import LINE, RADIUS, Area, Spot, words_beside
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.styles import SMALL
from reports.pdf.kit.text import width_of
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import marked

WITHIN = Area(0, 0, 400, 170)
SPOTS = st.lists(
    st.builds(
        Spot, st.floats(0, 380), st.floats(0, 170), st.integers(0, 999).map("T1-{:03d}-X".format)
    ),
    max_size=25,
)


def area_of(words: Words) -> Area:
    return Area(words.x, words.y - LINE / 2, words.x + width_of(words.text, SMALL), words.y + 1)


@given(SPOTS)
def test_no_words_stand_over_others_over_a_dot_or_outside(spots: list[Spot]) -> None:
    areas = [area_of(mark) for mark in words_beside(spots, WITHIN) if isinstance(mark, Words)]
    dots = [Area(s.x - RADIUS, s.y - RADIUS, s.x + RADIUS, s.y + RADIUS) for s in spots]
    for number, area in enumerate(areas):
        assert not any(map(area.crosses, [*areas[:number], *dots]))
        assert area.left >= 0
        assert area.right <= 400


def test_words_stand_right_beside_a_dot_that_is_alone_and_a_line_leads_to_others() -> None:
    (alone,) = words_beside([Spot(100, 80, "A-1")], WITHIN)
    assert isinstance(alone, Words)
    assert 0 < alone.x - (100 + RADIUS) < 5
    marks = words_beside([Spot(100, 80, f"A-{n}") for n in range(5)], WITHIN)
    assert [mark.text for mark in marks if isinstance(mark, Words)] == [f"A-{n}" for n in range(5)]
    assert len([mark for mark in marks if isinstance(mark, Rule)]) == 3


def test_words_for_which_there_is_no_room_are_left_out() -> None:
    assert words_beside([Spot(100, 80, "A-1")], Area(95, 75, 105, 85)) == []


def test_words_beside_dots_stand_where_they_stood() -> None:
    """Right, left, above and below of dots, and further off, at the edges of what is allowed."""
    register()
    crowd = [Spot(200, 80 + n % 3, f"T1-{n:03d}-X") for n in range(40)]
    edge = [Spot(395, 5, "A-1"), Spot(395, 165, "A-2"), Spot(3, 5, "A-3"), Spot(200, 169, "A-4")]
    told = [words_beside(spots, WITHIN) for spots in (crowd, edge, crowd[:7] + edge)]
    check_golden("laid/beside.txt", "\n".join(map(marked, told)))


def test_areas_that_touch_do_not_cross_and_one_holds_another_up_to_its_edges() -> None:
    one = Area(0, 0, 10, 10)
    beside = [Area(10, 0, 20, 10), Area(-10, 0, 0, 10), Area(0, 10, 10, 20), Area(0, -10, 10, 0)]
    assert not any(map(one.crosses, beside))
    inner = [Area(9, 0, 20, 10), Area(-10, 0, 1, 10), Area(0, 9, 10, 20), Area(0, -10, 10, 1)]
    assert all(map(one.crosses, inner))
    assert one.holds(one)
    outer = [Area(-1, 0, 10, 10), Area(0, -1, 10, 10), Area(0, 0, 11, 10), Area(0, 0, 10, 11)]
    assert not any(map(one.holds, outer))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
