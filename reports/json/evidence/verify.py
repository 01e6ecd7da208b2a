"""What a verification found, for machines."""

from typing import Any

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit


def audit_plain(audit: Audit, older: Seal | None = None) -> dict[str, Any]:
    """Return what a verification found, against a seal or without."""
    return {
        "ok": not audit.faults,
        "entries": audit.entries,
        "root": audit.root.hex(),
        "findings": [{"entry": fault.seq, "what": fault.what} for fault in audit.faults],
        **({"seal": list(older.lines), "read_after": audit.after} if older else {}),
    }
