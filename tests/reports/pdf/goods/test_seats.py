"""Where labels stand: each place once, and front and back next to each other."""

from itertools import islice

import pytest
from msgspec.structs import replace

from ledger.errors import RefusedError
from reports.pdf.goods import seats as module
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.pdf.goods.seats import neighbours, seats
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

ALL = shipped_layouts()


@pytest.mark.parametrize("layout", ALL.values(), ids=lambda each: each.name)
@pytest.mark.parametrize("panels", [1, 2])
def test_every_place_is_taken_once_and_none_before_the_first_that_is_free(
    layout: Layout, panels: int
) -> None:
    start = min(4, layout.per_page)
    taken = list(islice(seats(layout, panels, start), 50))
    places = [seat for label in taken for seat in label]
    assert len(set(places)) == 50 * panels
    assert min(places) >= (0, start - 1)
    assert all(0 <= place < layout.per_page for _, place in places)
    assert [seat[0] for seat in taken] == sorted(seat[0] for seat in taken)


@pytest.mark.parametrize("layout", ALL.values(), ids=lambda each: each.name)
def test_front_and_back_touch_and_at_most_one_place_of_a_page_stays_blank(layout: Layout) -> None:
    """On a roll of single labels the back is the next one."""
    if layout.per_page == 1:
        assert list(islice(seats(layout, 2), 2)) == [((0, 0), (1, 0)), ((2, 0), (3, 0))]
        return
    pairs = neighbours(layout)
    assert layout.per_page - 2 * len(pairs) in (0, 1)
    wide, high = (size + gap for size, gap in zip(_size(layout), layout.gap, strict=True))
    mm = 72 / 25.4
    for front, back in pairs:
        (x, y), (u, v) = layout.place(front), layout.place(back)
        apart = (round((u - x) / mm, 3), round((y - v) / mm, 3))
        assert apart in {(round(wide, 3), 0.0), (0.0, round(high, 3))}


def _size(layout: Layout) -> tuple[float, float]:
    return layout.width, layout.height


def test_a_column_that_is_left_over_has_its_pairs_one_below_the_other() -> None:
    sheet = replace(ALL["3x7"], down=3)
    assert neighbours(sheet) == [(0, 1), (2, 5), (3, 4), (6, 7)]
    assert neighbours(replace(sheet, across=1, down=4)) == [(0, 1), (2, 3)]


def test_a_sheet_without_two_neighbours_left_is_refused() -> None:
    with pytest.raises(RefusedError) as raised:
        seats(ALL["2x6"], 2, 12)
    assert str(raised.value) == (
        "A sheet of 2x6 has no two neighbours, for front and back, from label 12 on. "
        "Give --start-at with 1 to 11."
    )
    assert next(iter(seats(ALL["2x6"], 2, 11))) == ((0, 10), (0, 11))
    with pytest.raises(RefusedError) as raised:
        seats(ALL["2x6"], 1, 13)
    assert str(raised.value) == (
        "A sheet of 2x6 has 12 labels, and no label 13. Give --start-at with 1 to 12."
    )


def test_the_seats_of_each_layout_are_as_kept() -> None:
    """Of one panel and of two, from the first, from a later and from the last that is free."""
    told = []
    for layout in (*ALL.values(), replace(ALL["3x7"], name="5x3", across=5, down=3)):
        for panels in (1, 2):
            for start in sorted({1, min(4, layout.per_page), layout.per_page}):
                try:
                    taken = list(islice(seats(layout, panels, start), 14))
                    told.append(f"{layout.name} {panels} from {start}: {taken}")
                except RefusedError as error:
                    told.append(f"{layout.name} {panels} from {start}: {error}")
    with pytest.raises(RefusedError) as raised:
        seats(ALL["2x6"], 1, 0)
    check_golden("laid/seats.txt", "\n".join([*told, str(raised.value)]) + "\n")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
