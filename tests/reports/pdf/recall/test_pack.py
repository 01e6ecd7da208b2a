"""The pack of a recall on paper: every call whole on its page, with boxes to tick and lines."""

from itertools import product

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.kit.frame import Heading
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Words
from reports.pdf.kit.page import INNER
from reports.pdf.kit.styles import GUTTER
from reports.pdf.kit.text import width_of
from reports.pdf.recall import pack as module
from reports.pdf.recall.pack import (
    NAME,
    PHONE,
    _balance,
    _call,
    _sections,
    heading_of,
    recall_pack,
)
from reports.views.recall import CallView, RecallView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import NARROW, laid
from tests.reports.pdf.readback import images_of, printed, texts_of


def call(place: int) -> CallView:
    return CallView(
        str(place),
        f"Bar number {place}",
        "01 555 0100",
        ("1 Bridge Street",),
        "at most 6 bottles (1.5 L)",
        ("L-1: 6 sold, 2026-03-05, DN-1",) * (1 + place % 4),
        ("called 2026-03-06: no answer",),
    )


def view(calls: int) -> RecallView:
    return RecallView(
        frame=FRAME,
        kind="Recall",
        is_drill=False,
        headline="Recall",
        lot="OIL-1",
        product="Orange oil",
        title="3 lots made of it",
        course=("Recalled 2026-03-05 by AB: haze.",),
        authority=("Ask the authority.",),
        script=("Say this.",),
        ticks=("spoken to", "set aside"),
        calls=tuple(call(place) for place in range(1, calls + 1)),
        balance_heads=("lot", "made", "here", "unexplained"),
        balance=(("L-1", "15", "15", "0"), ("in all", "15", "15", "0")),
        balance_sums=("15 bottles made = 15 here + 0 unexplained.",),
        lots=(("L-1", "Orange syrup, 250 mL", "15", "recalled"),),
        contacts=(("2026-03-06 10:00", "AB", "Bar number 1", "no answer"),),
        missing=("shipping.csv lacks the address of Bar number 1.",),
    )


def test_each_call_stands_whole_on_one_page() -> None:
    pages = texts_of(printed(recall_pack, view(30)))
    assert len(pages) > 4
    for place in range(1, 31):
        (page,) = [page for page in pages if f"{place}. Bar number {place} 01 555" in page]
        below = page[page.index(f"{place}. Bar number {place}") :]
        assert "When, by" in below
        assert "spoken to" in below


@pytest.mark.parametrize("above", range(40))
def test_the_sums_stand_under_their_head_on_one_page(above: int) -> None:
    """However many sentences are above them: in one place or another a page ends there."""
    sums = ("15 bottles made = 15 here.", "Accounted for: 100.0 %.")
    long = replace(view(0), course=("Held.",) * above, balance_sums=sums)
    (page,) = [text for text in texts_of(printed(recall_pack, long)) if "Where all of it" in text]
    assert all(told in page for told in sums)


def test_all_parts_are_there_and_say_so_when_empty() -> None:
    text = "".join(texts_of(printed(recall_pack, view(0))))
    for words in (
        "If somebody may be harmed",
        "What to say",
        "Nobody was sent any.",
        "Where all of it is",
        "15 bottles made = 15 here + 0 unexplained.",
        "Unexplained",
        "Calls made",
        "What the files beside this paper lack",
        "shipping.csv lacks the address of Bar number 1.",
    ):
        assert words in text


def test_a_pack_that_lacks_nothing_says_so() -> None:
    text = "".join(texts_of(printed(recall_pack, replace(view(0), missing=()))))
    assert "Nothing that the book is asked for." in text


def test_boxes_are_drawn_and_nothing_runs_into_the_margins() -> None:
    """Boxes are lines on the paper, so no face has to have a sign for them."""
    text = "".join(texts_of(printed(recall_pack, view(3))))
    assert "☐" not in text
    for image in images_of(printed(recall_pack, view(3))):
        side = round(10 / 25.4 * 300)
        right = image.crop((image.width - side, 0, image.width, image.height))
        assert image.crop((0, 0, side, image.height)).getextrema() == (255, 255)
        assert right.getextrema() == (255, 255)


def test_the_same_pack_gives_the_same_bytes() -> None:
    assert printed(recall_pack, view(2)) == printed(recall_pack, view(2))


def test_a_drill_says_so_across_every_page_and_a_recall_does_not() -> None:
    real, drill = view(12), replace(view(12), is_drill=True, kind="Recall drill")
    assert all("DRILL" in text for text in texts_of(printed(recall_pack, drill)))
    assert not any("DRILL" in text for text in texts_of(printed(recall_pack, real)))


def test_every_mark_of_the_pack_stands_where_it_stood() -> None:
    check_golden("ink/recall.txt", ink_of(printed(recall_pack, replace(view(6), is_drill=True))))


def test_what_is_recalled_stands_first_and_a_number_is_large_enough_to_dial_from() -> None:
    first = texts_of(printed(recall_pack, view(1)))[0]
    assert first.index("\nOrange oil\n") < first.index("OIL-1: ")
    assert PHONE.size == 16
    assert "01 555 0100" in first


def test_every_part_of_the_pack_is_laid_out_as_it_was() -> None:
    """With calls of many words and without a number, and with nothing where nothing may be."""
    register()
    long = "Words that go on in a further line since they are many. " * 3
    bare = CallView("2", "Nobody's Bar", "", (), "", (), ())
    many = CallView("11", long, "01 555 0100", (long, "mail"), long, (long, "b"), (long, "c"))
    thin = replace(many, name="Inn", reach=(NARROW,), sent=(NARROW,), may_have="", called=())
    calls = (many, bare, thin, replace(thin, phone=""))
    whole = replace(view(0), calls=calls, course=(long, "Held."), authority=(long, "Ask."))
    empty = replace(view(0), balance_heads=("lot",), balance=(), lots=(), contacts=(), missing=())
    check_golden("laid/recall.txt", laid(*_sections(whole), *_sections(empty)))
    assert heading_of(whole) == Heading("Recall", "OIL-1", "Orange oil", "Recall")
    drill = heading_of(replace(whole, is_drill=True, kind="Recall drill"))
    assert drill == Heading("Recall", "OIL-1", "Orange oil", "Recall drill", across="DRILL")


@pytest.mark.parametrize("phone", ["", "01 555 0100"])
def test_a_name_has_all_the_width_beside_the_number_and_all_of_it_where_there_is_none(
    phone: str,
) -> None:
    """One that fills it to a tenth of a point stands on one line, one of a letter more does not."""
    register()
    room = INNER - 9 * mm - (width_of(phone, PHONE) + GUTTER if phone else 0)
    thin, *wider = (width_of(letter, NAME) for letter in "imra")
    counts = product(range(9), repeat=3)
    names = {
        f"{'m' * m}{'r' * r}{'a' * a}": room - m * wider[0] - r * wider[1] - a * wider[2]
        for m, r, a in counts
    }
    start = min(names, key=lambda name: names[name] % thin)
    just = f"{start}{'i' * int(names[start] / thin)}"
    assert 0 <= room - width_of(just, NAME) < 0.1
    lines = []
    for name in (just, f"{just}i"):
        marks = _call(replace(call(1), name=name, phone=phone), ()).head.marks
        lines.append(sum(isinstance(mark, Words) and mark.face == NAME for mark in marks) - 1)
    assert lines == [1, 2]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_a_lot_of_the_balance_is_named_within_a_narrow_column_of_its_own() -> None:
    """Its figures share what is left, so a name of 40 mm goes on in a second line."""
    register()
    short, long = (
        _balance(replace(view(0), balance=((told, "15", "15", "0"),)))
        for told in ("L-1", "ESSENCE-OF-THE-YEAR 2026")
    )
    assert long.rows[0].height > short.rows[0].height
