"""Rows of a table as strips: cells side by side, long words on further lines."""

from types import ModuleType

import pytest

from reports.pdf.glass import spirit
from reports.pdf.kit import rows as reports_pdf_kit_rows
from reports.pdf.kit import styles
from reports.pdf.kit import styles as reports_pdf_kit_styles
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import (
    Column,
    Piece,
    again_strip,
    column_strip,
    lefts_of,
    paragraphs,
    row_strips,
    table,
    title_strip,
)
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import GUTTER, LEADING, NOTE, PAD, RULE, VALUE
from reports.pdf.lots import packet, record_head, record_tables
from reports.pdf.recall import pack
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import NARROW, laid

COLUMNS = (Column("lot", 100), Column("amount", INNER + GUTTER - 100, "right"))


@pytest.fixture(autouse=True)
def _fonts() -> None:
    register()


def words_of(section: Section) -> list[str]:
    strips = (section.head, *section.rows)
    return [mark.text for strip in strips for mark in strip.marks if isinstance(mark, Words)]


def test_a_row_has_its_cells_side_by_side_and_a_rule_below() -> None:
    (strip,) = row_strips(COLUMNS, [(Piece("OE-001-5"),), (Piece("418 mL"),)], RULE)
    code, amount, rule = strip.marks
    assert isinstance(code, Words)
    assert isinstance(amount, Words)
    assert isinstance(rule, Rule)
    assert (code.x, amount.x, amount.align) == (SIDE, SIDE + INNER, "right")
    assert rule.y == strip.height == 2 * PAD + LEADING
    assert lefts_of(COLUMNS) == [SIDE, SIDE + 100]


@pytest.mark.parametrize("module", [packet, record_head, record_tables, spirit, pack])
def test_the_columns_of_every_table_are_as_wide_together_as_the_page(module: ModuleType) -> None:
    """One too wide would let words run into the margin; the spirit account alone is narrow."""
    tables = {
        name: told
        for name, told in vars(module).items()
        if name.endswith("_COLUMNS") and name != "ACCOUNT_COLUMNS"
    }
    assert tables
    for name, columns in tables.items():
        assert sum(column.width for column in columns) == pytest.approx(INNER + GUTTER), name


def test_the_highest_cell_decides_how_high_a_row_is() -> None:
    (strip,) = row_strips(COLUMNS, [(Piece("OE-001-5"), Piece("and on")), (Piece("1"),)], 0)
    assert strip.height == 2 * PAD + 2 * LEADING


def test_a_table_without_rows_says_so_and_one_with_rows_has_its_heads() -> None:
    assert words_of(table("Inputs", COLUMNS, [])) == ["Inputs", "None recorded."]
    told = words_of(table("Inputs", COLUMNS, [[(Piece("OE-001-5"),), (Piece("1"),)]]))
    assert told == ["Inputs", "lot", "amount", "OE-001-5", "1"]


def test_every_mark_of_rows_heads_and_paragraphs_stands_where_it_stood() -> None:
    """Rows of one line, of several, and higher than a page, with a rule and without."""
    long = "Words that go on in a further line since they are many. " * 3
    endless = "word " * 4000
    cells = [(Piece("OE-001-5", VALUE), Piece(long, NOTE)), (Piece("418 mL", struck=True),)]
    told = laid(
        table("Rows", COLUMNS, [cells, [(), (Piece(""),)], [(Piece("a"),), (Piece(long),)]]),
        table("None", COLUMNS, []),
        table("Narrow", COLUMNS, [[(Piece(NARROW[:200]),), (Piece(NARROW[:200]),)]]),
        paragraphs([long, "Short.", NARROW], NOTE),
        paragraphs([]),
        Section(title_strip("Title"), again_strip("Title"), (column_strip(COLUMNS),)),
        Section(title_strip(""), title_strip(""), tuple(row_strips(COLUMNS, cells, RULE))),
    )
    strips = list(row_strips(COLUMNS, [(Piece(endless),), (Piece("1"),)], RULE))
    heights = [f"{strip.height:.2f} with {len(strip.marks)} marks" for strip in strips]
    ends = [isinstance(strip.marks[-1], Rule) for strip in strips]
    assert ends == [False] * (len(strips) - 1) + [True]
    check_golden("laid/rows.txt", told + "\n".join(heights) + "\n")


def test_the_faces_and_measures_of_the_family_are_as_kept() -> None:
    told = [f"{name}: {value}" for name, value in vars(styles).items() if name.isupper()]
    check_golden("laid/styles.txt", "\n".join(told) + "\n")


@pytest.mark.parametrize("module", [reports_pdf_kit_rows, reports_pdf_kit_styles])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)
