"""The sheet of a planned trial: who looks sees no level, however many jars there are."""

from msgspec.structs import replace

from ledger.domain.entries.trials import Evening
from reports.pdf.causes import trial as module
from reports.pdf.causes.trial import _blanks, _evening, trial_sheet
from reports.pdf.kit.fonts import register
from reports.words.causes.trial_sheet import trial_sheet_view
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.planned import PLAN
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import printed, text_of, texts_of
from tests.reports.words.causes.plans import NAMES, THREE, planned


def test_the_sheet_reads_as_the_kept_one() -> None:
    view = trial_sheet_view(planned(THREE), NAMES, FRAME)
    check_golden("trial_sheet.txt", text_of(printed(trial_sheet, view)))
    check_golden("ink/trial_sheet.txt", ink_of(printed(trial_sheet, view)))


def test_the_marks_of_forty_eight_jars_stand_on_pages_without_a_level() -> None:
    many = replace(PLAN, evenings=tuple(Evening(8) for _ in range(6)))
    view = trial_sheet_view(planned(many), NAMES, FRAME)
    pages = texts_of(printed(trial_sheet, view))
    looking = [page for page in pages if "without knowing" in page or "After 1 d" in page]
    assert len(looking) == 2
    assert all(any(mark in page for page in looking) for mark in view.marks)
    assert list(view.marks) == sorted(view.marks)
    assert not any("SOO-" in page for page in looking)


def test_every_row_to_write_in_is_laid_out_as_it_was() -> None:
    """With few jars, with many, and with so many that a row is as low as it may be."""
    register()
    view = trial_sheet_view(planned(THREE), NAMES, FRAME)
    told = [_evening(view, evening) for evening in view.evenings]
    for count in (1, 15, 20, 24, 60):
        marks = tuple(f"J{number}" for number in range(count))
        blanks = _blanks(replace(view, marks=marks))
        told.append(replace(blanks, rows=blanks.rows[:1]))
    check_golden("laid/trial.txt", laid(*told))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
