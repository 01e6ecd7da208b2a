"""The record of a lot on paper: all of it, its heads on every page, its symbols read back."""

import re
from io import BytesIO

import pypdfium2 as pdfium  # type: ignore[import-untyped]
import pytest
from msgspec.structs import replace

from ledger.domain.evidence.seals import in_symbol
from ledger.errors import RefusedError
from reports.kit.boxed import noting_boxed
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Words
from reports.pdf.kit.strips import Section
from reports.pdf.lots.record import batch_record, heading_of, sections_of
from reports.pdf.lots.record_tables import steps
from reports.views import lots as lots_views
from reports.views.lots import Band, GateRow, LadderRow, NeighbourRow
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import LABEL, RECORD, long_record, step
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.readback import (
    images_of,
    metadata_of,
    printed,
    symbols_of,
    text_of,
    texts_of,
)


def test_the_record_reads_as_the_kept_one() -> None:
    check_golden("record.txt", text_of(printed(batch_record, RECORD)))


def test_every_mark_of_the_record_stands_where_it_stood() -> None:
    told = {"target": "30 mL", "limits": "29.1 mL to 30.9 mL", "off": "+0.7 %", "checked": "MS"}
    assert RECORD.inputs
    done = replace(RECORD.made[0], asked="at least 1 d", departures=("Shorter than asked.",))
    full = replace(
        RECORD,
        lot=f"{RECORD.lot}-and-a-code-that-is-longer-than-half-a-page",
        title=f"{RECORD.title} ✓ and a name that is longer than the head of a page has room for",
        band=Band("ON HOLD", "2026-06-15, IN: haze", is_dark=True),
        inputs=(replace(RECORD.inputs[0], **told), *RECORD.inputs[1:]),
        made=(done, *RECORD.made[1:]),
        labels=(("Printed", "8"), ("Spoiled", "2")),
    )
    check_golden("ink/record.txt", ink_of(printed(batch_record, full)))


def test_the_same_view_gives_the_same_bytes() -> None:
    assert printed(batch_record, RECORD) == printed(batch_record, RECORD)


def test_lot_and_seal_are_read_back_from_the_symbols_at_head_and_foot() -> None:
    images = images_of(printed(batch_record, RECORD))
    seal = in_symbol(RECORD.frame.seal)
    found = [sorted(symbols_of(image)) for image in images]
    assert found == [sorted(["E26-014-7", seal]), *([seal] for _ in images[1:])]


def test_the_metadata_name_the_lot_and_the_maker() -> None:
    found = metadata_of(printed(batch_record, RECORD))
    assert (found["Title"], found["Author"]) == ("Batch record E26-014-7", "Fennimore & Sloe")
    assert (found["Creator"], found["Producer"]) == ("Fennimore & Sloe", "Fennimore & Sloe")


def test_a_section_without_rows_says_so() -> None:
    bare = replace(
        RECORD, inputs=(), made=(), looks=(), ladder=(), back=(), forward=(), cautions=()
    )
    text = text_of(printed(batch_record, bare))
    for title in (
        "What went in",
        "How it was made",
        "Looks",
        "One step back",
        "One step forward",
    ):
        assert f"\n{title}\nNone recorded.\n" in text
    assert "Cautions" not in text


def test_a_part_that_a_paper_does_not_have_is_left_out_and_the_paper_has_its_own_head() -> None:
    bought = replace(RECORD, inputs=None, ladder=(), bar=None, paper="Lot received")
    pdf = printed(batch_record, bought)
    text = text_of(pdf)
    assert "\nLot received\n" in text
    assert metadata_of(pdf)["Title"] == "Lot received E26-014-7"
    for words in ("Batch record", "\nWhat went in\n", "\nYield\n", "How its time went"):
        assert words not in text
    assert "\nWhat was done\n" in text


def test_markup_and_scripts_print_as_they_stand() -> None:
    words = "<b>Тархун</b> &amp; [red]λεμόνι[/red] <strike>Nước"
    view = replace(RECORD, title=words, made=(step(0, "note", words, words),))
    assert text_of(printed(batch_record, view)).count(words) >= 3


def test_a_line_is_drawn_through_struck_words() -> None:
    """The same record with and without the strike differs in ink only where the words stand."""
    bare = replace(RECORD, inputs=(), looks=())
    plain, struck = (
        images_of(printed(batch_record, replace(bare, made=(step(0, "add", "oil", struck=s),))))[0]
        for s in (False, True)
    )
    darker = sum(struck.histogram()[:128]) - sum(plain.histogram()[:128])
    assert darker > 200


@pytest.mark.parametrize("lines", [1, 21, 22, 60, 1000])
def test_long_records_repeat_heads_and_number_every_page(lines: int) -> None:
    texts = texts_of(printed(batch_record, long_record(lines)))
    for number, text in enumerate(texts, start=1):
        head = f"E26-014-7 Lemon soda essence, 1:33, released Page {number} of {len(texts)}\n"
        assert text.startswith(head)
        assert text.endswith("\n".join([RECORD.frame.stood, *RECORD.frame.seal]))
        if "of many" in text:
            assert "How it was made" in text
            assert "\nEntry When What As recorded Asked By\n" in text
    found = re.findall(r"line (\d+) of many", "".join(texts))
    assert [int(number) for number in found] == list(range(lines))


def test_a_row_stands_whole_on_its_page_unless_it_is_higher_than_one() -> None:
    assert len(steps("Steps", [step(0, "note", "one\ntwo\nthree")]).rows) == 1
    words = " ".join(f"w{n}" for n in range(3000))
    view = replace(RECORD, made=(step(0, "note", words),))
    text = " ".join(text_of(printed(batch_record, view)).split())
    assert re.findall(r"\bw\d+\b", text) == words.split()


def test_hostile_names_break_and_lose_nothing() -> None:
    name = "Ж" * 300
    view = replace(
        RECORD,
        title=name,
        frame=replace(RECORD.frame, house_name=name),
        facts=((name, name),),
        made=(step(0, name, name, name, by=name),),
        forward=(NeighbourRow(name, name, name, name, name),),
        ladder=(LadderRow("", name, name, name),),
        band=Band(name, name, is_dark=True),
        cautions=(name,),
    )
    assert text_of(printed(batch_record, view)).count("Ж") >= 300 * 14


def test_a_title_longer_than_a_page_is_refused_and_nothing_is_written() -> None:
    out = BytesIO()
    with pytest.raises(RefusedError) as raised:
        batch_record(replace(RECORD, title="word " * 3000), out)
    assert str(raised.value).startswith("A part of the paper that must stay in one piece needs ")
    assert out.getvalue() == b""


def test_a_character_without_a_shape_is_boxed_and_noted() -> None:
    with noting_boxed() as boxed:
        record = printed(batch_record, replace(RECORD, made=(step(0, "note", "bright ✓"),)))
    assert boxed == {"✓"}
    assert "bright" in text_of(record)


def test_signatures_never_stand_on_a_page_of_their_own() -> None:
    """Four lines to sign on, with two rows of what they are signed for."""
    for rows in range(14, 60, 3):
        gate = tuple(GateRow(True, f"asked {n}", "so") for n in range(rows))
        *_, last = texts_of(printed(batch_record, replace(RECORD, gate=gate)))
        assert "Made by" in last
        assert f"asked {rows - 2}" in last


def test_the_chapters_of_a_record_can_be_jumped_to() -> None:
    with pdfium.PdfDocument(printed(batch_record, RECORD)) as document:
        titles = [item.get_title() for item in document.get_toc()]
    assert titles == [
        "What went in",
        "How its time went",
        "How it was made",
        "How clear it was",
        "Looks",
        "Yield",
        "What happened since",
        "One step back",
        "One step forward",
        "Vessels and instruments",
        "What is in it, and in a glass",
        "People",
        "The gate of release",
    ]


def test_a_record_has_its_parts_in_order_and_none_of_what_is_empty() -> None:
    """Of a batch with all of them, of a delivery, and of either with as few as may be."""
    register()
    label = replace(LABEL, across="SPECIMEN")
    full = replace(RECORD, labels=(("Label", "front"),), specimen=label)
    bare = replace(
        RECORD,
        **dict.fromkeys(("bar", "clarity")),
        **dict.fromkeys(("since", "looks", "ladder", "cautions", "gate", "serving"), ()),
        **dict.fromkeys(("people", "around", "made", "back", "forward"), ()),
    )
    told = []
    for view in (full, replace(full, inputs=None), bare, replace(bare, inputs=None)):
        told += [str(heading_of(view)), *map(_part, sections_of(view))]
    check_golden("laid/record.txt", "\n".join(told) + "\n")


def _part(section: Section) -> str:
    """Tell a part by its first words and how much there is of it."""
    strips = (section.head, *section.rows)
    words = [mark.text for strip in strips for mark in strip.marks if isinstance(mark, Words)]
    return f"{len(section.rows)} rows, {len(words)} words: {', '.join(words[:12])}"


def test_what_is_not_told_on_it_is_the_kept_nothing() -> None:
    check_constants(lots_views)
