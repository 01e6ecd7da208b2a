"""What a proof says, in words and for machines.

Guarantees: a proof is told without its book and without a database. Refuses: to say that a proof
shows more than it does.
"""

from ledger.domain.entries.plain import read_entry
from ledger.domain.evidence.proofs import Proof
from ledger.domain.evidence.seals import Seal
from reports.kit.format import clock, plural
from reports.words.entries.sentence import sentence, title

LIMITS = (
    "It does not show that the lot has no other entries, nor that what was written is true.",
    "A seal from elsewhere shows that this one is not made up: give it with --seal.",
)


ASK = "Do not rely on it; ask for the proof again, made from a book that verifies."


def proved_lines(proof: Proof, out: object) -> list[str]:
    """Return what is said once a proof was written."""
    return [
        f"The {plural(len(proof.entries), 'entry', 'entries')} about {proof.lot} and their proofs "
        f"are in {out}.",
        *proof.seal.lines,
        f"Anybody can check it without this book: pottle prove --check {out}",
    ]


def checked_lines(proof: Proof, faults: tuple[str, ...], given: Seal | None) -> list[str]:
    """Return what checking a proof found."""
    if faults:
        return [
            f"{proof.lot}: {plural(len(faults), 'thing does', 'things do')} not fit:",
            *(f"- {what}" for what in faults),
            ASK,
        ]
    against = "of the seal given" if given else "of the seal in it"
    return [
        f"{proof.lot}: {plural(len(proof.entries), 'entry', 'entries')}, all in the book "
        f"{against}:",
        *proof.seal.lines,
        *map(_line, _bodies(proof)),
        *LIMITS[: 1 if given else 2],
    ]


def _bodies(proof: Proof) -> list[str]:
    return [one.body for one in proof.entries]


def _line(body: str) -> str:
    entry = read_entry(body)
    number = (
        f"{entry.seq}"
        if entry.draft.corrects is None
        else f"{entry.seq} for {entry.draft.corrects}"
    )
    return f"{number}  {clock(entry.draft.happened)}  {title(entry)}: {sentence(entry)}"
