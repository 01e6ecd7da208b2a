"""A proof, for machines."""

from ledger.domain.evidence.proofs import Proof
from reports.json.kit.answer import Answer, Code
from reports.json.kit.finding import Finding
from reports.json.kit.seal import SealTold, seal_told


class ProveAnswer(Answer, frozen=True):
    """A proof of one lot's entries, written or checked."""

    ok: bool
    """Whether all of it fits."""
    code: Code
    """Code of the lot."""
    entry_numbers: tuple[int, ...]
    """Numbers of the entries that are proved."""
    seal: SealTold
    """The seal against which they are proved."""
    findings: tuple[Finding, ...]
    """What does not fit."""
    path: str | None
    """Where it was written; null when it was checked."""


def prove_answer(
    proof: Proof, faults: tuple[str, ...] = (), path: str | None = None
) -> ProveAnswer:
    """Return a proof, with what did not fit in it or where it was written."""
    return ProveAnswer(
        ok=not faults,
        code=proof.lot,
        entry_numbers=tuple(one.seq for one in proof.entries),
        seal=seal_told(proof.seal),
        findings=tuple(Finding(None, what) for what in faults),
        path=path,
    )
