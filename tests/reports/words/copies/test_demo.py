"""The words around the demonstration."""

from datetime import date

from ledger.service.causes.suspects import Suspicion
from ledger.service.evidence.verify import Audit, Fault
from reports.words.causes.suspects import suspicion_lines
from reports.words.copies import demo as module
from reports.words.copies.demo import book_line, lead_lines
from tests.kept.filled import filled
from tests.kept.said import check_said


def test_a_book_that_does_not_fit_is_not_said_to_be_verified() -> None:
    sound = Audit(12, b"", ())
    assert (
        book_line("demo/pottle.db", sound)
        == "The book is at demo/pottle.db (12 entries, verified)."
    )
    faulty = Audit(12, b"", (Fault(3, "Entry 3 does not fit."),))
    assert book_line("demo/pottle.db", faulty) == (
        "The book is at demo/pottle.db (12 entries, it does not verify)."
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "lead_lines")


def test_a_lead_is_told_as_what_the_book_said_on_its_day() -> None:
    causes = filled(Suspicion, on="2026-03-04")
    assert lead_lines(date(2026, 7, 1), causes, "pottle trial plan chill") == [
        "",
        "On 2026-07-01, when bottles had come back, its book said:",
        "",
        *suspicion_lines(causes),
        "So a trial was planned, as the book proposed: pottle trial plan chill",
    ]
