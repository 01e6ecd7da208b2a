"""The frame of a paper: the house's clock, the sheet of its country, what it is called."""

from datetime import UTC, datetime

from msgspec.structs import replace

from ledger.domain.entries import House
from ledger.domain.evidence.seals import Seal
from reports.kit import frame as module
from reports.kit.frame import Heading, frame_of
from tests.domain.builders import make
from tests.kept.said import check_constants, check_said

SEAL = Seal("Fennimore & Sloe", 12, "0a" * 32)
WRITTEN = datetime(2026, 7, 1, 22, 30, tzinfo=UTC)


def test_times_are_on_the_clock_of_the_house_and_the_sheet_is_its_countrys() -> None:
    house = make(House, name="Fennimore & Sloe", country="US", time_zone="America/New_York")
    frame = frame_of(house, SEAL, WRITTEN)
    assert frame.stood == "As the book stood 2026-07-01 18:30, all times America/New_York"
    assert (frame.size, frame.seal) == ("Letter", SEAL.lines)


def test_a_book_without_a_house_has_a_paper_too() -> None:
    frame = frame_of(None, SEAL)
    assert (frame.house_name, frame.size, frame.stood) == ("", "A4", "all times UTC")


def test_a_paper_is_titled_by_its_kind_and_what_it_is_about() -> None:
    assert Heading("Trace", "OIL-1", "Orange oil").title == "Trace OIL-1"
    assert Heading("Trace", "OIL-1") == Heading("Trace", "OIL-1", "", "", "", "")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_of_a_paper_without_a_clock_no_times_are_spoken_of() -> None:
    assert replace(frame_of(None, SEAL), zone="").stood == ""
