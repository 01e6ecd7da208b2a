"""Words beside dots: near theirs, over no other and over no dot, or left out."""

from hypothesis import given
from hypothesis import strategies as st

from reports.pdf.causes.beside import LINE, RADIUS, Area, Spot, words_beside
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.styles import SMALL
from reports.pdf.kit.text import width_of

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
