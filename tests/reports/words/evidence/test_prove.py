"""A proof in words: what it shows, and what it does not."""

from ledger.domain.evidence.proofs import Proof
from ledger.service.evidence.prove import prove
from reports.words.evidence import prove as module
from reports.words.evidence.prove import checked_lines, proved_lines
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_a_proof_that_was_written_says_where_and_how_it_is_checked(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    proof = prove(keeper.book, lots.packed)
    assert proved_lines(proof, "p.json") == [
        "The 4 entries about BOS-001-S and their proofs are in p.json.",
        *proof.seal.lines,
        "Anybody can check it without this book: pottle prove --check p.json",
    ]


def test_a_sound_proof_lists_its_entries_and_says_what_it_does_not_show(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    proof = prove(keeper.book, lots.packed)
    lines = checked_lines(proof, (), None)
    assert lines[0] == "BOS-001-S: 4 entries, all in the book of the seal in it:"
    assert lines[6] == "34  2026-03-04 11:10  moved: 6 sold to Bridge Street Stall"
    limits = [
        "It does not show that the lot has no other entries, nor that what was written is true.",
        "A seal from elsewhere shows that this one is not made up: give it with --seal.",
    ]
    assert lines[8:] == limits
    given = checked_lines(proof, (), proof.seal)
    assert given[0] == "BOS-001-S: 4 entries, all in the book of the seal given:"
    assert (given[1:8], given[8:]) == (lines[1:8], limits[:1])


def test_a_fault_is_told_and_the_proof_is_not_to_be_relied_on(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    proof: Proof = prove(keeper.book, lots.packed)
    assert checked_lines(proof, ("It does not fit.",), None) == [
        "BOS-001-S: 1 thing does not fit:",
        "- It does not fit.",
        "Do not rely on it; ask for the proof again, made from a book that verifies.",
    ]
    two = checked_lines(proof, ("One.", "Two."), None)
    assert two[:3] == ["BOS-001-S: 2 things do not fit:", "- One.", "- Two."]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
