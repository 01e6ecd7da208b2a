"""What is erased and what stays is told in whole sentences, before and after."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Draft, Entry, When
from ledger.domain.entries.evidence import Forget, Named
from ledger.service.desk.book import Recorded
from ledger.service.recall.forget import Forgettable, Forgotten
from reports.words.recall import forget as module
from reports.words.recall.forget import COPIES, LAW, after_lines, before_lines
from tests.kept.said import check_constants, check_said
from tests.reports.words.examples import NOON

WAS = Forgettable("Quay Bar", "P3", is_party=True, erased=(5, 9), kept=(3,), in_words=(12,))
FORGET = Forget("P3", entries=(Named(5, is_kept=False),))
DONE = Forgotten(
    Recorded(Entry(41, Draft(FORGET, None, When(NOON, 0), "AB"), NOON, 41)), WAS, is_clean=True
)


def test_what_will_become_of_the_book_is_told() -> None:
    assert before_lines(WAS) == [
        "Quay Bar is P3 in the book.",
        "Erased for good: all that stands beside entries 5 and 9 of who that is.",
        "Kept for good, but shown as P3 from then on: the name in the text of entry 3.",
        "Kept for good and shown as it is, among other words: entry 12.",
        COPIES,
        LAW,
    ]


def test_where_nothing_can_be_erased_that_is_told() -> None:
    lines = before_lines(replace(WAS, erased=(), in_words=()))
    assert lines[0] == "Nothing can be erased: no entry has who that is beside its text."
    assert lines[1].endswith("the name in the text of entry 3.")


@pytest.mark.parametrize(
    ("many", "end"), [(12, "11 and 12."), (13, "11, 12 and 1 more."), (30, "11, 12 and 18 more.")]
)
def test_twelve_entries_are_told_and_one_more_as_one_more(many: int, end: str) -> None:
    (_, _, line, *_) = before_lines(replace(WAS, kept=tuple(range(1, many + 1))))
    assert line.endswith(f"entries 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, {end}")


def test_what_was_done_is_told_with_what_is_left() -> None:
    recorded = "Recorded 41, forgotten: party P3, details erased of entry 5."
    following = "Next: pottle verify"
    assert after_lines(DONE, "book.db") == [
        recorded,
        "What was erased is nowhere in the book's file any more.",
        following,
    ]
    assert after_lines(replace(DONE, is_clean=False), "book.db") == [
        recorded,
        "Somebody else works in the book, so its file was not cleaned of what was erased. When "
        "nobody does, run: pottle forget P3",
        following,
    ]
    assert after_lines(replace(DONE, is_clean=False), "postgresql://host/book") == [
        recorded,
        "A server keeps erased rows until it cleans up (VACUUM), and in its logs and copies: ask "
        "its keeper.",
        following,
    ]


def test_what_was_done_before_is_told_as_such() -> None:
    again = replace(DONE, done=replace(DONE.done, is_new=False))
    assert after_lines(again, "book.db")[0] == "P3 was forgotten by entry 41."
    nothing = replace(DONE, was=replace(WAS, erased=()))
    assert after_lines(nothing, "book.db")[1] == (
        "No byte was erased: what is hashed stays as it is."
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
