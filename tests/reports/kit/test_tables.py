"""A table as CSV is read back as it was, and no spreadsheet runs what is in it."""

import csv
import re
import sys
from io import BytesIO, StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook

from ledger.errors import InputError
from reports.kit import tables as module
from reports.kit.tables import Sheet, csv_text, harmless, spreadsheet
from tests.kept.said import check_constants, check_said

CELLS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=12)


@given(rows=st.lists(st.tuples(CELLS, CELLS), max_size=5))
def test_what_was_written_is_read_back_but_for_quotes_before_formulas(
    rows: list[tuple[str, str]],
) -> None:
    read = list(csv.reader(StringIO(csv_text(Sheet(("one", "two"), tuple(rows))), newline="")))
    assert read[0] == ["one", "two"]
    # A quote stands before a cell, or before a part of it where other signs part cells.
    quoted = re.compile(r"(^|[;|]\s*)'")
    assert [[quoted.sub(r"\1", cell) for cell in row] for row in read[1:]] == [
        [quoted.sub(r"\1", cell) for cell in row] for row in rows
    ]
    figure = re.compile(r"-\d+(\.\d+)?", re.ASCII)
    assert not any(
        cell.lstrip().startswith(("=", "+", "-", "@")) and not figure.fullmatch(cell)
        for row in read
        for cell in row
    )


@pytest.mark.parametrize("cell", ["=1+1", "+353", "-5+1", "@SUM(A1)", " =1", "\t=1", "\r=1"])
def test_what_looks_like_a_formula_gets_a_quote_before_it(cell: str) -> None:
    assert harmless(cell) == f"'{cell}"


def test_a_workbook_without_its_library_is_refused_with_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    with pytest.raises(InputError) as raised:
        spreadsheet(Sheet(("one",), ()), "a.xlsx")
    assert raised.value.problems == (
        (
            "To write a workbook, pottle needs openpyxl.",
            "Install pottle[xlsx], or give a name that ends in .csv.",
        ),
    )


def test_a_row_of_another_width_is_refused() -> None:
    with pytest.raises(ValueError, match="a row of 1 cells under 2 heads"):
        csv_text(Sheet(("one", "two"), (("only",),)))


def test_no_part_of_a_cell_is_taken_for_a_formula_where_semicolons_part_cells() -> None:
    assert harmless("a;=1+1") == "a;'=1+1"
    assert harmless("a; \t@SUM(1)") == "a; \t'@SUM(1)"
    assert harmless(";=1+1") == ";'=1+1"
    assert harmless("a;b;c") == "a;b;c"


def test_a_spreadsheet_has_a_mark_and_a_workbook_has_numbers_and_runs_no_formula() -> None:
    table = Sheet(("lot", "on_hand_ml"), (("=1+1", "-0.5"), ("007", "12")))
    assert spreadsheet(table, "a.csv").startswith(b"\xef\xbb\xbflot,on_hand_ml\r\n")
    page = load_workbook(BytesIO(spreadsheet(table, "a.XLSX"))).active
    cells = [[(cell.value, cell.data_type) for cell in row] for row in page.iter_rows(min_row=2)]
    assert cells == [[("=1+1", "s"), (-0.5, "n")], [("007", "s"), (12, "n")]]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
