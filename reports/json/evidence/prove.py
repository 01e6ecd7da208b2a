"""A proof, for machines."""

from typing import Any

from ledger.domain.evidence.proofs import Proof


def proof_plain(proof: Proof, faults: tuple[str, ...] = ()) -> dict[str, Any]:
    """Return a proof, and what did not fit in it."""
    return {
        "ok": not faults,
        "lot": proof.lot,
        "entries": [one.seq for one in proof.entries],
        "seal": list(proof.seal.lines),
        "findings": list(faults),
    }
