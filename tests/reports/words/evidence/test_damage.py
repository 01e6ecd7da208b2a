"""What is said of a damaged book: the first entry that does not fit, or what does not."""

from ledger.store.audit.book import Audit, Fault
from reports.words.evidence import damage as module
from reports.words.evidence.damage import WHAT_TO_DO, damage_of, damaged_entry
from tests.kept.said import check_constants, check_said


def test_an_entry_that_is_left_out_is_named_with_what_to_do() -> None:
    assert damaged_entry(7) == (
        "Entry 7 is damaged and is left out here.",
        "Keep this book as it is and run pottle verify; pottle restore brings back the last copy.",
    )


def test_the_first_entry_that_does_not_fit_is_named() -> None:
    form, entry = Fault(None, "The book has lost its table note."), Fault(7, "It differs.")
    assert damage_of(Audit(9, b"", ())) == []
    assert damage_of(Audit(9, b"", (form, entry))) == [("Entry 7 is damaged.", WHAT_TO_DO)]
    assert damage_of(Audit(9, b"", (form,))) == [
        ("The book is damaged: The book has lost its table note.", WHAT_TO_DO)
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
