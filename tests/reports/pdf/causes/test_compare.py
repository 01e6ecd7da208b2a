"""A trial on paper reads as on the screen, with a dot for every batch."""

from msgspec.structs import replace

from reports.kit.boxed import noting_boxed
from reports.pdf.causes import compare as module
from reports.pdf.causes.compare import _factor, comparison_paper
from reports.pdf.causes.plots import DOT, plot_section
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule
from reports.views import causes as causes_views
from reports.views.causes import (
    BatchRow,
    ComparisonView,
    FactorView,
    LevelRow,
    PlotRow,
    PlotView,
)
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.causes.test_scatter import SCATTER
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import metadata_of, printed, text_of, texts_of

PLOT = PlotView("NTU by rest", "0.8", "3.4", (PlotRow("24h", (1.0, 1.0)), PlotRow("96h", (0.0,))))
VIEW = ComparisonView(
    frame=FRAME,
    group="orange rest",
    lines=("Trial orange rest: 3 batches, none of them a control.", "No batch has a repeat."),
    ages=("at once", "7 d"),
    factors=(
        FactorView(
            "rest",
            (
                LevelRow("24h", "2", ("clear–hazy", "hazy"), "3.1", "89"),
                LevelRow("96h", "1", ("bright", "bright"), "0.8", "86.5"),
            ),
            "96h against 24h (means of 1 and 2): 2 grades clearer.",
        ),
        FactorView("dose", (), "dose and oil changed together, so no effect is shown for it."),
    ),
    plots=(PLOT,),
    batches=(
        BatchRow("OE-003-G", "rest=96h", "bright", "0.8", "86.5", True),
        BatchRow("OE-001-K", "rest=24h", "hazy", "3.4", "89", False),
    ),
    front="Of 3 with a look and a yield, none is both clearer and has less loss than: OE-003-G.",
    outcome=(),
)


def test_the_paper_reads_as_the_kept_one() -> None:
    check_golden("comparison.txt", text_of(printed(comparison_paper, VIEW)))
    check_golden("ink/comparison.txt", ink_of(printed(comparison_paper, VIEW)))


def test_the_same_view_gives_the_same_bytes() -> None:
    assert printed(comparison_paper, VIEW) == printed(comparison_paper, VIEW)


def test_every_batch_has_its_dot_and_none_hides_another() -> None:
    (strip,) = plot_section(PLOT).rows
    dots = [mark for mark in strip.marks if isinstance(mark, Rule) and mark.thickness == DOT]
    assert len(dots) == 3
    assert len({(dot.x, dot.y) for dot in dots}) == 3


def test_the_metadata_name_the_trial() -> None:
    assert metadata_of(printed(comparison_paper, VIEW))["Title"] == "Trial orange rest"


def test_a_long_trial_goes_on_over_pages_with_its_heads() -> None:
    many = tuple(replace(VIEW.batches[0], lot=f"OE-{n:03}-X") for n in range(90))
    pages = texts_of(printed(comparison_paper, replace(VIEW, batches=many)))
    assert len(pages) > 1
    assert "Batches (continued)" in pages[-1]
    assert all(f"Page {n} of {len(pages)}" in page for n, page in enumerate(pages, start=1))


def test_what_the_font_cannot_show_is_boxed_and_noted() -> None:
    with noting_boxed() as boxed:
        printed(comparison_paper, replace(VIEW, group="試験"))
    assert boxed == {"試", "験"}


def test_every_part_of_a_comparison_stands_where_it_stood() -> None:
    """With a scatter and what came of it; a factor without ages, with many, and without rows."""
    register()
    whole = replace(VIEW, scatter=SCATTER, outcome=("Kept: 96h.",))
    check_golden("ink/comparison_whole.txt", ink_of(printed(comparison_paper, whole)))
    rest, dose = VIEW.factors
    bare = replace(rest, rows=tuple(replace(row, looks=()) for row in rest.rows))
    told = laid(_factor(rest, VIEW.ages), _factor(bare, ()), _factor(dose, VIEW.ages))
    check_golden("laid/comparison.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_what_is_not_told_on_it_is_the_kept_nothing() -> None:
    check_constants(causes_views)
