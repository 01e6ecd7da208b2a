"""Every list can be written for a spreadsheet: UTF-8 with a mark, one unit a column."""

import csv
from io import StringIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from cli.kit import sheets as module
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.kept.said import check_constants

LISTS = {
    "stock": "lot what material product on_hand_ml on_hand_g on_hand_each is_reckoned status "
    "best_before look supplier supplier_lot",
    "stock --value --of orange-oil": "lot what material product on_hand_ml on_hand_g on_hand_each "
    "is_reckoned value_eur status best_before look supplier supplier_lot",
    "stock --low 10L": "material name on_hand_ml on_hand_g on_hand_each",
    "stock --spirit": "what lot pure_alcohol_l_at_20c",
    "journal --last 0": "entry happened precision recorded by lot kind what reason origin sheet "
    "corrects corrected_by",
    "due": "when waits_for lot what to_do",
    "complaints": "complaint day lot what from symptom opened stored mixed words is_open became",
    "list sales": "day customer how lot what bottle_ml out_ml out_g out_each back_ml back_g "
    "back_each document entry",
    "list receipts": "day lot material amount_ml amount_g amount_each supplier supplier_lot "
    "cost_eur duty_eur best_before certificate document by entry",
    "list cleanings": "when vessel how last_held by entry",
}
"""Each list with the heads of its columns."""


@pytest.mark.parametrize("command", LISTS)
def test_a_list_is_written_with_its_heads_and_as_many_rows_as_it_says(
    command: str, shell: Shell
) -> None:
    answer = shell.line(f"{command} --csv list.csv")
    content = Path("list.csv").read_bytes()
    assert content.startswith(b"\xef\xbb\xbf")
    heads, *rows = csv.reader(StringIO(content.decode("utf-8-sig"), newline=""))
    assert heads == LISTS[command].split()
    noun = "row" if len(rows) == 1 else "rows"
    assert answer.lines == [f"{len(rows)} {noun} under a heading: list.csv"]
    assert all(len(row) == len(heads) for row in rows)


def test_a_list_for_machines_is_written_too_and_said_as_ever(shell: Shell) -> None:
    plain = shell.run("stock", "--json")
    assert shell.run("stock", "--json", "--csv", "stock.xlsx").out == plain.out
    page = load_workbook("stock.xlsx").active
    oil = [cell.value for cell in page[2]]
    assert (oil[0], oil[4]) == ("SOO-001-3", 470)


def test_a_file_that_is_there_stays(shell: Shell) -> None:
    Path("stock.csv").write_text("mine", encoding="utf-8")
    problem = (
        "There is a file stock.csv already; it was left as it is.",
        "Give another name with --csv, or --force to write over it.",
    )
    check_refused(("stock --csv stock.csv", 5, problem), shell)
    assert shell.run("stock", "--csv", "stock.csv", "--force").exit_code == 0


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
