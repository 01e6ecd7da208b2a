"""The packet on paper: contents that name the right pages, every part on pages of its own."""

import re

from msgspec.structs import replace

from reports.kit.frame import Heading
from reports.pdf.kit.fonts import register
from reports.pdf.lots import packet as module
from reports.pdf.lots.packet import _contents, _entries, _parts, packet_paper
from reports.views.evidence import EntryRow, PacketView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME, RECORD
from tests.reports.pdf.glass.test_spirit import VIEW as SPIRIT
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import printed, texts_of

ENTRY = EntryRow("17", "2026-03-01 10:30", "E26-014-7", "added", "30 mL", "AF", ("Late.",), True)


def view(entries: int) -> PacketView:
    rows = tuple(replace(ENTRY, entry=str(number)) for number in range(entries))
    return PacketView(
        FRAME, "E26-014-7", "Lemon essence", (RECORD, RECORD), SPIRIT, (), rows[:1], rows, ()
    )


def test_the_contents_name_the_page_on_which_each_part_begins() -> None:
    first, *others = texts_of(printed(packet_paper, view(200)))
    pages = [first, *others]
    named = re.findall(r"^(.+) (\d+)$", first.partition("Contents")[2], re.M)
    told = {title: int(page) for title, page in named if int(page) <= len(pages)}
    assert (
        "\nSpirit account, 2026-01-01 to 2026-06-30\n"
        in pages[told[f"Spirit account, {SPIRIT.period}"] - 1]
    )
    for title in ("Cleaning and instruments", "Complaints and recalls", "All entries as written"):
        assert f"\n{title}\n" in pages[told[title] - 1]
    assert "\nBatch record\n" in pages[1]


def test_every_entry_stands_in_it_struck_or_not() -> None:
    paper = printed(packet_paper, view(30))
    assert "".join(texts_of(paper)).count("Late.") == 31
    one = replace(view(2), records=(RECORD,))
    check_golden("ink/packet.txt", ink_of(printed(packet_paper, one)))


def test_every_mark_of_contents_and_entries_stands_where_it_stood() -> None:
    register()
    long = "As written, in many words that go on in a further line. " * 3
    plain = replace(ENTRY, words=long, notes=("Late.", "Corrected."), struck=False)
    told = laid(
        _entries("Entries", [ENTRY, plain]),
        *_contents(view(1), Heading("Packet", "E1"), [("One", []), ("Two", [])], [2, 13]),
    )
    check_golden("laid/packet.txt", told)


def test_the_parts_of_a_packet_are_its_records_and_five_more_with_their_own_rows() -> None:
    register()
    apart = replace(
        view(3), upkeep=(ENTRY, ENTRY), people=(("AF", "Ada Fenn (invented)", "maker"),) * 4
    )
    parts = _parts(apart)
    assert [(title, len(sections), len(sections[-1].rows)) for title, sections in parts] == [
        ("Batch record E26-014-7, Lemon soda essence, 1:33", 18, 0),
        ("Batch record E26-014-7, Lemon soda essence, 1:33", 18, 0),
        ("Spirit account, 2026-01-01 to 2026-06-30", 3, 0),
        ("Cleaning and instruments", 1, 2),
        ("Complaints and recalls", 1, 1),
        ("All entries as written", 1, 3),
        ("People", 1, 4),
    ]
    assert [sections[-1].head.title for _, sections in parts[3:]] == [
        title for title, _ in parts[3:]
    ]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
