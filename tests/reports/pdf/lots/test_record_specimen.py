"""The record of a packed lot ends with a specimen of its label, which no bottle can get."""

from msgspec.structs import replace

from reports.pdf.kit.fonts import register
from reports.pdf.lots import record_specimen as module
from reports.pdf.lots.record import batch_record
from reports.pdf.lots.record_specimen import specimen
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import LABEL, RECORD
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import images_of, printed, symbols_of, text_of


def test_the_label_stands_on_the_record_with_specimen_across() -> None:
    view = replace(RECORD, specimen=replace(LABEL, across="SPECIMEN"))
    paper = printed(batch_record, view)
    text = text_of(paper)
    assert "Specimen label" in text
    assert text.count("SPECIMEN") == 1
    assert f"Lot {LABEL.lot}" in text
    found = [symbol for image in images_of(paper) for symbol in symbols_of(image)]
    assert LABEL.lot in found
    check_golden("ink/record_specimen.txt", ink_of(paper))


def test_a_specimen_is_as_much_higher_as_its_words_need() -> None:
    long = replace(LABEL, text="Shake well, and keep it cool. " * 30, across="SPECIMEN")
    text = text_of(printed(batch_record, replace(RECORD, specimen=long)))
    assert " ".join(text.split()).count("Shake well") == 30


def test_a_record_without_a_label_has_none() -> None:
    assert "Specimen" not in text_of(printed(batch_record, RECORD))


def test_every_mark_of_a_specimen_stands_where_it_stood() -> None:
    """At the usual size, a step higher, and many steps higher."""
    register()
    labels = [replace(LABEL, text="Shake well, and keep it cool. " * n) for n in (1, 12, 60)]
    check_golden("laid/record_specimen.txt", laid(*map(specimen, labels)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
