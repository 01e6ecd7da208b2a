"""What stands in the way of a lot's release as things stand, before anybody asks for one.

Guarantees: judged by the very rules of a release.
"""

from ledger.domain.entries import Draft, Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.rules import Finding, Severity, findings
from ledger.service.desk.act import desk_on
from ledger.service.desk.book import Book, How
from ledger.service.desk.scene import build_scene


def in_the_way(book: Book, code: str) -> tuple[Finding, ...]:
    """Return what stands in the way of a release of a lot now, by its whole code."""
    with book.reading() as connection:
        desk = desk_on(connection, book.clock(), How())
        draft = Draft(Judge(Verdict.RELEASE), code, desk.happened, desk.by)
        all_findings = findings(draft, build_scene(connection, draft, desk.now))
        return tuple(finding for finding in all_findings if finding.severity is Severity.GATE)
