"""Writing a proof of a lot's entries, and checking one.

Guarantees: a proof is checked without the book and without its database. Refuses: to say that a
proof fits of which any part does not.
"""

from pathlib import Path

import typer

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.seals import given_seal
from cli.kit.tables import print_json, print_lines
from ledger.domain.evidence.proofs import proof_faults, proof_text, read_proof
from ledger.errors import InputError
from ledger.text_files import text_of
from reports.json.evidence.prove import prove_answer
from reports.words.evidence.prove import checked_lines, proved_lines

MOST_BYTES = 200_000_000
"""The largest file that is read as a proof."""


def write_proof(
    call: Call, lot: str | None, out: Path | None, seal: str | None, *, force: bool
) -> None:
    """Write the proof of a lot to a file."""
    from ledger.service.evidence.prove import prove

    if lot is None or out is None:
        raise InputError(
            "A proof needs a lot and a file to write to.",
            "pottle prove LOT --out FILE writes one; pottle prove --check FILE checks one.",
        )
    check_place(out, force=force)
    proof = prove(call.book(), lot, call.writer, given_seal(seal))
    write(out, f"{proof_text(proof)}\n".encode(), force=force)
    if call.json:
        print_json(prove_answer(proof, path=str(out)))
    else:
        print_lines(proved_lines(proof, out))


def check_proof(
    call: Call, file: Path, seal: str | None, lot: str | None, out: Path | None
) -> None:
    """Check a proof, and show what it proves or what does not fit."""
    if lot is not None or out is not None:
        raise InputError(
            "A proof is either written or checked, not both at once.",
            "pottle prove LOT --out FILE writes one; pottle prove --check FILE checks one.",
        )
    given = given_seal(seal)
    proof = read_proof(text_of(file, MOST_BYTES))
    faults = tuple(proof_faults(proof, given))
    if call.json:
        print_json(prove_answer(proof, faults))
    else:
        print_lines(checked_lines(proof, faults, given))
    if faults:
        raise typer.Exit(1)
