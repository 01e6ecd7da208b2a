"""A proof: one lot's entries, each with the path by which it hangs in the tree of a seal.

Guarantees: a proof is checked with its own text, a seal and SHA-256 alone; neither the book nor its
database is needed. Refuses: to show that the lot has no other entries, or that what was written is
true; a proof says what the book says and nothing more.

References:
    RFC 6962, section 2.1.1 (the paths); RFC 8785 (the text of the proof and of every entry).
"""

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from ledger.domain.entries import Entry
from ledger.domain.entries.canonical import canonical_text, read_canonical
from ledger.domain.entries.plain import UNREADABLE, entry_text, read_entry
from ledger.domain.evidence.merkle import leaf_hash, verify_inclusion
from ledger.domain.evidence.seals import Seal, read_seal, same_house
from ledger.errors import InputError, LedgerError

FORMAT = "pottle proof 1"
"""What stands in a proof as its `format`."""
_ASK = "Ask for the proof again: pottle prove LOT --out FILE"


class Proved(Struct, frozen=True):
    """One entry of a proof."""

    seq: int
    """Its number."""
    body: str
    """Its canonical text."""
    path: tuple[bytes, ...]
    """The hashes beside its way to the root, from the leaf upwards."""


class Proof(Struct, frozen=True):
    """One lot's entries as they stand in the book of a seal."""

    lot: str
    """The lot's code."""
    seal: Seal
    """The seal against which they are proved."""
    entries: tuple[Proved, ...]
    """The entries about the lot, in number order."""


def proof_text(proof: Proof) -> str:
    """Return a proof as canonical JSON, one line without an end."""
    return canonical_text(
        {
            "format": FORMAT,
            "house": proof.seal.house,
            "entries": proof.seal.entries,
            "root": proof.seal.root,
            "lot": proof.lot,
            "proved": [
                {
                    "seq": proved.seq,
                    "body": proved.body,
                    "path": [part.hex() for part in proved.path],
                }
                for proved in proof.entries
            ],
        }
    )


def read_proof(text: str) -> Proof:
    """Read a proof; white space around it does not matter.

    Raises:
        InputError: It is no proof, or is not as it was written.
    """
    try:
        plain: Any = read_canonical(text.strip())
        if plain["format"] != FORMAT:
            what = f'The file is of the form "{plain["format"]}", not "{FORMAT}".'
            raise InputError(what, _ASK)
        proof = _proof(plain)
        if proof_text(proof) != text.strip():
            raise ValueError("A hash or the house is written in another way.")
        return proof
    except InputError:
        raise
    except LedgerError as error:
        raise InputError(
            f"The file is not a proof as it was written. {error.what}", _ASK
        ) from error
    except UNREADABLE as error:
        raise InputError("The file is not a proof: a part is missing or damaged.", _ASK) from error


def _proof(plain: dict[str, Any]) -> Proof:
    if set(plain) != {"format", "house", "entries", "root", "lot", "proved"}:
        raise ValueError("The parts of a proof are not there, or more than they.")
    texts = (plain["house"], plain["root"], plain["lot"])
    if not all(isinstance(text, str) for text in texts) or type(plain["entries"]) is not int:
        raise TypeError("A part of the proof is of the wrong type.")
    lines = Seal(plain["house"], plain["entries"], plain["root"]).lines
    return Proof(plain["lot"], read_seal("\n".join(lines)), tuple(map(_proved, plain["proved"])))


def _proved(plain: dict[str, Any]) -> Proved:
    seq, body = plain["seq"], plain["body"]
    # By its very type, for true counts as a whole number too.
    if type(seq) is not int or not isinstance(body, str):
        raise TypeError("A part of the proof is of the wrong type.")
    return Proved(seq, body, tuple(map(bytes.fromhex, plain["path"])))


def proof_faults(proof: Proof, seal: Seal | None = None) -> Iterator[str]:
    """Yield what does not fit in a proof, a sentence each; nothing when all does.

    Args:
        proof: The proof.
        seal: A seal from elsewhere that the proof must be made against; None to believe its own.
    """
    if seal is not None:
        yield from _seal_faults(proof.seal, seal)
    numbers = [proved.seq for proved in proof.entries]
    if numbers != sorted(set(numbers)):
        yield "The entries do not stand in the order of their numbers, each once."
    if not numbers:
        yield f"The proof holds no entry about {proof.lot}."
    opened = {proved.seq for proved in proof.entries if _opens(proved, proof.lot)}
    for proved in proof.entries:
        yield from _entry_faults(proof, proved, opened)


def _entry(proved: Proved) -> Entry | None:
    """Return the entry that a text tells, or None when no book would write the text."""
    try:
        entry = read_entry(proved.body)
        entry.draft.happened.local()  # no clock shows some instants and offsets
        return entry if entry_text(entry) == proved.body else None
    except UNREADABLE:
        return None


def _opens(proved: Proved, lot: str) -> bool:
    entry = _entry(proved)
    opens = entry.draft.opens if entry else None
    return opens is not None and opens.code == lot


def _seal_faults(own: Seal, given: Seal) -> Iterator[str]:
    if own.entries != given.entries:
        yield (
            f"The proof is made against a seal of {own.entries} entries, and the one given is of "
            f"{given.entries}: ask for a proof against that seal (pottle prove LOT --seal ...)."
        )
    elif own.root != given.root:
        yield f"The proof's root is {own.root}, and that of the seal given is {given.root}."
    if not same_house(own.house, given.house):
        yield f"The proof is of the house {own.house}, and the seal given of {given.house}."


def _entry_faults(proof: Proof, proved: Proved, opened: set[int]) -> Iterator[str]:
    leaf = leaf_hash(proved.body.encode())
    size, root = proof.seal.entries, bytes.fromhex(proof.seal.root)
    if not verify_inclusion(proved.seq - 1, size, leaf, proved.path, root):
        yield f"Entry {proved.seq} is not in the book of the seal as it is told here."
    entry = _entry(proved)
    if entry is None:
        yield f"The text of entry {proved.seq} is not what a book writes."
        return
    if entry.seq != proved.seq:
        yield f"The text of entry {proved.seq} is that of entry {entry.seq}."
    if entry.draft.lot != proof.lot and entry.stands_for not in opened:
        yield f"Entry {proved.seq} is not about {proof.lot}."
