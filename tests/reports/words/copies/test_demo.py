"""The words around the demonstration."""

from ledger.service.evidence.verify import Audit, Fault
from reports.words.copies import demo as module
from reports.words.copies.demo import book_line
from tests.said import check_said


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
