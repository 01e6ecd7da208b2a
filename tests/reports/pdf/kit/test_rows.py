"""Rows of a table as strips: cells side by side, long words on further lines."""

from types import ModuleType

import pytest

from reports.pdf.glass import spirit
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule, Words
from reports.pdf.kit.page import INNER, SIDE
from reports.pdf.kit.rows import Column, Piece, lefts_of, row_strips, table
from reports.pdf.kit.strips import Section
from reports.pdf.kit.styles import GUTTER, LEADING, PAD, RULE
from reports.pdf.lots import packet, record_head, record_tables
from reports.pdf.recall import pack

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
