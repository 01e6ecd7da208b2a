"""A CSV file is read in the dialect in which it was written, and the dialect is said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.tables.dialect import MOST_ROWS, read_table
from ledger.domain.tables.grid import Found, Line, Table

PLAIN = "Lot{p}Öl ml\r\nO 1{p}30,5\r\n"


@pytest.mark.parametrize(
    ("parting", "words"),
    [(";", "parted by semicolons"), ("\t", "parted by tabs"), ("|", "parted by upright strokes")],
)
def test_what_parts_the_cells_is_recognised(parting: str, words: str) -> None:
    table, found = read_table("a.csv", "a", PLAIN.format(p=parting).encode())
    assert table is not None
    assert (table.head, table.lines[0].cells, found) == (("Lot", "Öl ml"), ("O 1", "30,5"), [])
    assert table.said == (words, "UTF-8")


@pytest.mark.parametrize(
    ("encoding", "words"),
    [
        ("utf-8-sig", "UTF-8 with a mark"),
        ("cp1252", "Windows letters (cp1252)"),
        ("utf-16", "UTF-16"),
    ],
)
def test_how_the_letters_are_kept_is_recognised(encoding: str, words: str) -> None:
    table, _ = read_table("a.csv", "a", PLAIN.format(p=";").encode(encoding))
    assert table is not None
    assert (table.head[1], table.said[1]) == ("Öl ml", words)


def test_letters_that_are_kept_the_other_way_round_are_read_by_their_mark() -> None:
    """Unicode, 3.10: the mark of UTF-16 with the larger byte first is FE FF."""
    table, _ = read_table("a.csv", "a", b"\xfe\xff" + PLAIN.format(p=";").encode("utf-16-be"))
    assert table is not None
    assert (table.head[1], table.said[1]) == ("Öl ml", "UTF-16")


def test_the_line_that_some_spreadsheets_put_first_is_obeyed() -> None:
    table, _ = read_table("a.csv", "a", b"sep=;\r\nlot;a,b,c\r\nO 1;1,2,3\r\n")
    assert table is not None
    assert table.head == ("lot", "a,b,c")


def test_quotes_and_lines_within_cells_are_read_as_rfc_4180_says() -> None:
    # RFC 4180, section 2, rules 5 to 7: its own examples.
    text = b'aaa,bbb\r\n"aaa","b\r\nbb"\r\n"zzz","y""y"\r\n'
    table, found = read_table("a.csv", "a", text)
    assert table is not None
    cells = [(line.number, line.cells) for line in table.lines]
    assert (cells, found) == ([(2, ("aaa", "b bb")), (4, ("zzz", 'y"y'))], [])


def test_a_title_above_the_heading_and_blank_rows_are_no_rows() -> None:
    table, _ = read_table("a.csv", "a", b"Season 2026,\r\n,\r\nlot,ml\r\n,\r\nO1,5\r\n")
    assert table is not None
    assert (table.head, [line.number for line in table.lines]) == (("lot", "ml"), [5])


MANY = b"a,b\n" + b"1,2\n" * (MOST_ROWS + 1)
QUOTES = "Put text that holds what parts the cells in double quotes."
ANOTHER = "Keep one of them, or give the other another name."


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", [(None, None, "It is empty.", "Give a heading and rows below it.")]),
        (b" ,\n,\n", [(None, None, "It is empty.", "Give a heading and rows below it.")]),
        (
            b"a\0b",
            [
                (
                    None,
                    None,
                    "It is no text: it holds bytes that no spreadsheet writes into a CSV file.",
                    "Save it again as CSV in UTF-8.",
                )
            ],
        ),
        (
            b'a,b\n"c,d\n',
            [
                (
                    None,
                    None,
                    "It cannot be read as CSV: unexpected end of data.",
                    "Close each quote, or save it again as CSV.",
                )
            ],
        ),
        (
            MANY,
            [
                (
                    None,
                    None,
                    f"It has more than {MOST_ROWS} rows, the most that are taken at once.",
                    "Part it into several files.",
                )
            ],
        ),
    ],
    ids=["nothing", "blank rows", "no text", "an open quote", "too many rows"],
)
def test_what_is_no_table_is_told_with_what_to_do(
    content: bytes, told: list[tuple[int | None, str | None, str, str]]
) -> None:
    assert read_table("a.csv", "a", content) == (None, [Found("a.csv", *each) for each in told])


def test_a_heading_on_the_first_line_is_told_as_on_that() -> None:
    _, found = read_table("a.csv", "a", b"a,a\n1,2\n")
    assert [each.line for each in found] == [1]
    table, _ = read_table("a.csv", "a", b"\n\na,b\n\n1,2\n")
    assert table is not None
    assert [line.number for line in table.lines] == [5]


def test_what_is_wrong_in_a_table_is_told_with_its_line_and_the_rest_is_taken() -> None:
    content = b"Season\nb,a,a,,b,c\n1,2\n1,2,3,4,5,6,7\n,2,,\n1,2,3,4,5,6,7,8\n"
    table, found = read_table("a.csv", "a", content)
    assert found == [
        Found("a.csv", 2, "a", 'The heading has the column "a" more than once.', ANOTHER),
        Found("a.csv", 2, "b", 'The heading has the column "b" more than once.', ANOTHER),
        Found("a.csv", 4, None, "It has 7 cells, but the heading has 6.", QUOTES),
        Found("a.csv", 6, None, "It has 8 cells, but the heading has 6.", QUOTES),
    ]
    assert table == Table(
        "a.csv",
        "a",
        ("b", "a", "a", "", "b", "c"),
        (Line(3, ("1", "2", "", "", "", "")), Line(5, ("", "2", "", "", "", ""))),
        ("parted by commas", "UTF-8"),
    )
    assert [table.cell(line, "c") for line in table.lines] == ["", ""]
    assert [table.cell(line, "a") for line in table.lines] == ["2", "2"]
    assert table.cell(table.lines[0], "Oil mL") == ""


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("a;b,c\n1;2,3\n", "parted by semicolons"),
        ("a;b\n1,5;2,5\n3,5;4,5\n", "parted by semicolons"),
        ("a,b,c;d\n1,2,3;4\n", "parted by commas"),
        ("a b\n1 2\n", "parted by semicolons"),
        ("SEP=,\na;b,c\n1;2,3\n", "parted by commas"),
        ("sep=\t\na;b\tc\n", "parted by tabs"),
        ("sep=x;y\n1;2\n", "parted by semicolons"),
        ("a|b\n" * 50 + "a,b,c\n" * 60, "parted by upright strokes"),
        ("a|b\n" * 49 + "a,b,c\n" * 60, "parted by upright strokes"),
    ],
)
def test_what_makes_most_of_the_first_rows_alike_and_then_widest_parts_them(
    text: str, words: str
) -> None:
    table, _ = read_table("a.csv", "a", text.encode())
    assert table is not None
    assert table.said[0] == words


@given(st.binary(max_size=200))
def test_any_bytes_are_a_table_or_are_told_why_not(content: bytes) -> None:
    table, found = read_table("a.csv", "a", content)
    assert table is not None or found
    widths = {len(line.cells) for line in table.lines} if table else set()
    assert widths <= {len(table.head) if table else 0}


def test_as_many_rows_as_are_taken_are_taken() -> None:
    table, found = read_table("a.csv", "a", b"Season\n\na,b\n" + b"1,2\n" * MOST_ROWS)
    assert table is not None
    assert (len(table.lines), found) == (MOST_ROWS, [])
