"""`pottle list`: sales by customer, deliveries and cleanings of a period."""

from pathlib import Path

import pytest

from cli.screens.lots import acts as module
from tests.cli.asked import check_asked
from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


@pytest.fixture
def sold(shell: Shell) -> Shell:
    """The book with goods back, a sample, and a vessel that was cleaned."""
    for line in (
        'send {packed} 2 --as returned --from "Bridge Street Stall" --at 2099-01-02',
        'send {packed} 1 --as sample --to "Madeup Café"',
        'clean "pan 1" --how "Hot water" --held syrup',
    ):
        shell.line(line)
    return shell


def test_sales_are_listed_with_what_each_customer_has(sold: Shell) -> None:
    answer = sold.run("list", "sales")
    assert [line.split("  ")[0] for line in answer.lines[0:1]] == ["day"]
    assert answer.lines[-3:] == [
        "Bridge Street Stall: 6 of Orange syrup, 250 mL.",
        "Madeup Café: 1 of Orange syrup, 250 mL.",
        "Next: pottle stock",
    ]
    of_one = sold.run("list", "sales", "--party", "Madeup Café", "--json").json
    assert [(row["party"], row["amount"]["amount"]) for row in of_one] == [("Madeup Café", "1")]


def test_deliveries_are_listed_with_their_cost(shell: Shell) -> None:
    (oil,) = shell.run("list", "receipts", "--party", "Harbour Oils", "--json").json
    assert (oil["cost"], oil["currency"], oil["supplier_lot"]) == ("48.00", "EUR", "C7731")
    row = shell.run("list", "receipts").lines[1].split("  ")
    assert [cell.strip() for cell in row if cell.strip()][1:] == [
        *("SOO-001-3", "orange-oil", "500 mL", "Harbour Oils", "C7731", "48.00 EUR"),
    ]


def test_cleanings_are_listed(sold: Shell) -> None:
    assert sold.run("list", "cleanings").lines[1].split()[-5:] == [
        *("1", "Hot", "water", "syrup", "AB"),
    ]


@pytest.mark.parametrize(
    "case",
    [
        (
            "list receipts --to 1999-12-31",
            "Nothing was delivered in that time.\nNext: pottle receive MATERIAL AMOUNT\n",
        ),
        (
            "list cleanings",
            'Nothing was cleaned in that time.\nNext: pottle clean VESSEL --how "HOW"\n',
        ),
    ],
)
def test_where_there_is_nothing_the_next_step_is_said(case: Answers, shell: Shell) -> None:
    check_answers(case, shell)


@pytest.mark.parametrize(
    "case",
    [
        (
            "list bottles",
            2,
            ('"bottles" is no list.', "Write one of: sales, receipts, cleanings."),
        ),
        (
            "list sales --from 2026-02-01 --to 2026-01-01",
            2,
            (
                "The period would end on 2026-01-01, before it begins on 2026-02-01.",
                "Give --from the earlier day.",
            ),
        ),
    ],
)
def test_what_is_no_list_and_no_period_is_refused(case: Refused, shell: Shell) -> None:
    check_refused(case, shell)


def test_a_list_is_written_for_a_spreadsheet(sold: Shell) -> None:
    said = sold.run("list", "sales", "--csv", "sales.csv")
    assert said.lines == ["2 rows under a heading: sales.csv"]
    lines = Path("sales.csv").read_text(encoding="utf-8-sig").splitlines()
    assert lines[0] == (
        "day,customer,how,lot,what,bottle_ml,out_ml,out_g,out_each,back_ml,back_g,back_each,"
        "document,entry"
    )
    assert lines[1].split(",")[1:9] == [
        *("Bridge Street Stall", "sale", "BOS-001-S", '"Orange syrup', ' 250 mL"', "250"),
        *("", ""),
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("list")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("list", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
