"""What a verification found, in words."""

import pytest
from msgspec.structs import replace

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit, Fault
from reports.words.evidence import verify as module
from reports.words.evidence.verify import MOST_SHOWN, NEEDS_A_SEAL, audit_lines
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said

ROOT = bytes(32)
SEAL = Seal("Wren & Co", 9, "ab" * 32)


def test_a_sound_book_is_said_to_be_so_and_what_that_does_not_show() -> None:
    assert audit_lines(Audit(faults=(), entries=9, root=ROOT)) == [
        "9 entries, all as they were written; tables, tree and guards fit.",
        f"Root {ROOT.hex()}",
        NEEDS_A_SEAL,
    ]


def test_a_seal_is_said_to_fit_with_what_came_after() -> None:
    lines = audit_lines(Audit(faults=(), entries=12, root=ROOT), SEAL)
    assert lines[-1] == (
        "The seal fits: its 9 entries are the beginning of this book, and 3 came after."
    )


@pytest.mark.parametrize(("many", "more"), [(10, []), (11, [1]), (12, [2])])
def test_faults_beyond_ten_are_told_as_more(many: int, more: list[int]) -> None:
    faults = tuple(Fault(number, f"Entry {number} differs.") for number in range(1, many + 1))
    found = Audit(faults=faults, entries=40, root=ROOT)
    told = [
        f"40 entries; {many} things do not fit:",
        *(f"- Entry {number} differs." for number in range(1, 11)),
        *(f"- and {number} more; --json tells them all." for number in more),
    ]
    keep = "Keep this file as it is, and restore a copy that verifies."
    with_seal = (
        "Keep this book and the paper as they are, read the seal again, and restore a copy that "
        "fits."
    )
    assert audit_lines(found) == [*told, keep]
    assert audit_lines(found, SEAL) == [*told, with_seal]


def test_every_answer_about_a_sound_book_is_the_kept_one() -> None:
    """Of one entry and of many, read whole or after a seal, people forgotten or none."""
    told = []
    for audit in (
        Audit(faults=(), entries=1, root=ROOT, forgotten=1),
        Audit(faults=(), entries=12, root=ROOT, forgotten=2),
        Audit(faults=(), entries=12, root=ROOT, after=9),
        Audit(faults=(), entries=12, root=ROOT, after=12),
        Audit(faults=(Fault(1, "One differs."),), entries=1, root=ROOT),
    ):
        for older in (None, replace(SEAL, entries=1), replace(SEAL, entries=audit.entries)):
            told += [*audit_lines(audit, older), ""]
    check_golden("verified.txt", "\n".join(told))


def test_of_very_many_faults_the_first_are_told() -> None:
    faults = tuple(Fault(number, f"Entry {number} differs.") for number in range(1, 31))
    lines = audit_lines(Audit(faults=faults, entries=40, root=ROOT))
    assert lines[0] == "40 entries; 30 things do not fit:"
    assert [line for line in lines if line.startswith("- Entry")] == [
        f"- Entry {number} differs." for number in range(1, MOST_SHOWN + 1)
    ]
    assert lines[-2] == "- and 20 more; --json tells them all."


def test_of_a_search_that_was_broken_off_no_number_is_told_as_all() -> None:
    faults = tuple(Fault(number, f"Entry {number} differs.") for number in range(1, 51))
    head, *_, more, _ = audit_lines(Audit(faults=faults, entries=90, root=ROOT))
    assert head == "90 entries; at least 50 things do not fit:"
    assert more == "- and at least 40 more; --json tells the first 50."
    assert audit_lines(Audit(faults=faults, entries=0, root=ROOT))[0] == (
        "At least 50 things do not fit:"
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
