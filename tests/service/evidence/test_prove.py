"""A lot is proved from the book, on both engines, and a second reader of the RFC agrees."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from ledger.domain.evidence.proofs import proof_faults, proof_text
from ledger.errors import FindingError, RefusedError
from ledger.service.evidence.prove import prove
from ledger.service.evidence.seal import seal
from tests.domain.evidence.rfc6962 import check_file
from tests.keeper import Keeper
from tests.service.hostile import run, text_put


def test_every_lot_is_proved_and_a_second_reader_agrees(full: Keeper) -> None:
    for code in full.lot_codes():
        proof = prove(full.book, code)
        assert proof.seal == seal(full.book)
        assert list(proof_faults(proof, proof.seal)) == []
        assert check_file(proof_text(proof)) == []
        told_of = {
            entry.seq
            for entry in full.entries()
            if code in (entry.draft.lot, entry.draft.opens and entry.draft.opens.code)
        }
        assert {one.seq for one in proof.entries} == told_of


def test_a_struck_and_a_corrected_entry_are_proved_with_the_others(full: Keeper) -> None:
    lot = full.opens("receive", material="spirit", amount="1L")
    first = full.do("note", text="Wrong.", lot=lot).seq
    full.do("correct", entry=str(first), changes="text=Right.", because="misheard")
    full.do("strike", entry=str(first + 1), because="not this lot")
    proof = prove(full.book, lot)
    assert [one.seq for one in proof.entries] == [first - 1, first, first + 1, first + 2]


def test_a_lot_is_proved_against_an_older_seal(full: Keeper) -> None:
    lot = full.opens("receive", material="spirit", amount="1L")
    older = seal(full.book)
    full.do("note", text="Later.", lot=lot)
    proof = prove(full.book, lot, older=older)
    assert (proof.seal, [one.seq for one in proof.entries]) == (older, [older.entries])
    assert list(proof_faults(proof, older)) == []


def test_a_lot_opened_after_the_seal_is_not_in_it(full: Keeper) -> None:
    older = seal(full.book)
    lot = full.opens("receive", material="spirit", amount="1L")
    with pytest.raises(RefusedError) as raised:
        prove(full.book, lot, older=older)
    assert raised.value.problems == (
        (
            f"{lot} was opened after the seal of {older.entries} entries.",
            "Leave --seal out to prove it against the book as it is now.",
        ),
    )


def test_nothing_is_proved_against_a_seal_of_another_book(full: Keeper) -> None:
    older = replace(seal(full.book), house="Wren", root="ab" * 32)
    with pytest.raises(FindingError) as raised:
        prove(full.book, full.lot_codes()[0], older=older)
    assert raised.value.problems == (
        (
            "The seal is of the house Wren, and this is the book of Quayside Essences.",
            "Nothing was written. Read the seal again, and run pottle verify.",
        ),
    )


def test_nothing_is_proved_from_a_book_that_was_changed(sqlite_walked: Keeper) -> None:
    lot = sqlite_walked.opens("receive", material="spirit", amount="1L")
    seq = sqlite_walked.do("note", text="As it was.", lot=lot).seq
    body = dict(sqlite_walked.bodies())[seq].replace("As it was.", "Otherwise.").encode()
    run(Path(sqlite_walked.book.where), text_put(seq, body))
    with pytest.raises(FindingError) as raised:
        prove(sqlite_walked.book, lot)
    assert raised.value.problems == (
        (
            f"Entry {seq} is not in the book of the seal as it is told here.",
            "Nothing was written. Run pottle verify to see what else does not fit.",
        ),
    )
