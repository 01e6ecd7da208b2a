"""What must add up in a row of a table, said in a map and found where it does not."""

import pytest

from ledger.domain.tables.grid import Found, Line, Table
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.row_balance import Balance, off_balance, read_balance

TABLE = Table("may.csv", "may", ("raus", "verkauft", "zurück"), ())
TOLD = Balance("raus", ("verkauft", "zurück", "verkostet"))


def found(*cells: str) -> list[Found]:
    line = Line(2, cells)
    return list(off_balance(TABLE, line, TOLD, lambda name: TABLE.cell(line, name), ","))


def test_what_adds_up_is_not_told_and_a_column_that_is_not_there_is_nothing() -> None:
    assert found("12", "8", "4") == []
    assert found("1,5", "1,25", "0,25") == []
    assert found("12", "", "") == []


def test_a_difference_is_told_with_its_line() -> None:
    assert found("1,5", "1,2", "") == [
        Found(
            "may.csv",
            2,
            "raus",
            "verkauft 1.2 come to 0.3 less than raus, 1.5.",
            "Count again, or write the rest under verkauft, zurück or verkostet.",
        )
    ]


@pytest.mark.parametrize("text", ["1e999999999", "1/0", "9" * 5000, "zwei", "١٢", "inf"])
def test_what_is_no_plain_number_is_told_at_once(text: str) -> None:
    (told,) = found("12", text, "")
    assert (told.column, told.todo) == ("verkauft", "Write the number alone.")
    assert told.what.endswith(" is no number, and the row must add up.")


def test_a_map_says_it_in_one_way_and_what_else_is_wrong_with_it_too() -> None:
    text = """
[table.may]
sum = "{out} is {sold}"
optional = "lost"
at = "{date}"
acts = [ { do = "note", text = "{words}" } ]
"""
    with pytest.raises(InputError) as raised:
        read_map("stall.toml", text)
    assert raised.value.problems == (
        (
            "The map stall.toml: The table may has a sum that cannot be read.",
            'Write it as: sum = "{out} = {sold} + {back}"',
        ),
        (
            "The map stall.toml: The table may has an optional that is no list of columns.",
            'Write it as: optional = ["tasted", "lost"]',
        ),
    )


def test_too_much_is_told_as_more_and_every_cell_that_is_no_number_in_its_column() -> None:
    (told,) = found("12", "8", "4,25")
    assert told.what == "verkauft 8 and zurück 4.25 come to 0.25 more than raus, 12."
    told_each = found("zwölf", "acht", "4")
    assert [(each.column, each.what) for each in told_each] == [
        ("raus", '"zwölf" is no number, and the row must add up.'),
        ("verkauft", '"acht" is no number, and the row must add up.'),
    ]
    assert [each.what for each in found("100", "10", "")] == [
        "verkauft 10 come to 90 less than raus, 100."
    ]


def test_a_row_of_which_the_whole_or_every_part_is_empty_is_not_done_yet() -> None:
    assert found("", "8", "4") == []
    assert found("", "", "") == []
    assert found("-1", "", "-1") == []


@pytest.mark.parametrize(
    ("text", "balance"),
    [
        ("{out} = {sold} + {back}", Balance("out", ("sold", "back"))),
        ("  { out }  =  { sold }  +  { back } + {lost} ", Balance("out", ("sold", "back", "lost"))),
        ("{out} = {sold}", None),
        ("{out} is {sold} + {back}", None),
        ("{out} = {sold} + {back} - {lost}", None),
        ("out = sold + back", None),
    ],
)
def test_a_sum_is_a_column_and_two_others_at_the_least(text: str, balance: Balance | None) -> None:
    assert read_balance(text) == balance
