"""What a verification found, for machines."""

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit
from reports.json.kit.answer import Answer
from reports.json.kit.finding import Finding
from reports.json.kit.seal import SealTold, seal_told


class VerifyAnswer(Answer, frozen=True):
    """What a verification found."""

    ok: bool
    """Whether all fits."""
    entries: int
    """How many entries the book has."""
    root: str
    """Root of the tree over what is stored, 64 hexadecimal digits."""
    forgotten: int
    """How many entries tell of somebody who was forgotten since."""
    findings: tuple[Finding, ...]
    """What does not fit: first of the book as a whole, then by entry."""
    seal: SealTold | None
    """The seal it was compared with; null for none."""
    read_after: int | None
    """Number of the last entry that was passed over, 0: none; null without a seal."""


def verify_answer(audit: Audit, older: Seal | None = None) -> VerifyAnswer:
    """Return what a verification found, against a seal or without."""
    return VerifyAnswer(
        ok=not audit.faults,
        entries=audit.entries,
        root=audit.root.hex(),
        forgotten=audit.forgotten,
        findings=tuple(Finding(fault.seq, fault.what) for fault in audit.faults),
        seal=seal_told(older) if older else None,
        read_after=audit.after if older else None,
    )
