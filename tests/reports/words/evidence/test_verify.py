"""What a verification found, in words."""

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit, Fault
from reports.words.evidence.verify import MOST_SHOWN, NEEDS_A_SEAL, audit_lines

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


def test_of_very_many_faults_the_first_are_told() -> None:
    faults = tuple(Fault(number, f"Entry {number} differs.") for number in range(1, 31))
    lines = audit_lines(Audit(faults=faults, entries=40, root=ROOT))
    assert lines[0] == "40 entries; 30 things do not fit:"
    assert [line for line in lines if line.startswith("- Entry")] == [
        f"- Entry {number} differs." for number in range(1, MOST_SHOWN + 1)
    ]
