"""A CSV file is read in the dialect in which it was written, and the dialect is said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.tables.dialect import MOST_ROWS, read_table

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


def test_what_is_no_table_is_told() -> None:
    whats = {
        b"": "It is empty.",
        b"a\0b": "It is no text: it holds bytes that no spreadsheet writes into a CSV file.",
        b'a,b\n"c,d\n': "It cannot be read as CSV: unexpected end of data.",
        b"a,b\n1,2,3\n": "It has 3 cells, but the heading has 2.",
        b"a,a\n1,2\n": 'The heading has the column "a" more than once.',
        b"a,b\n" + b"1,2\n" * (MOST_ROWS + 1): (
            f"It has more than {MOST_ROWS} rows, the most that are taken at once."
        ),
    }
    for content, what in whats.items():
        _, found = read_table("a.csv", "a", content)
        assert [each.what for each in found] == [what]


@given(st.binary(max_size=200))
def test_any_bytes_are_a_table_or_are_told_why_not(content: bytes) -> None:
    table, found = read_table("a.csv", "a", content)
    assert table is not None or found
    widths = {len(line.cells) for line in table.lines} if table else set()
    assert widths <= {len(table.head) if table else 0}


def test_as_many_rows_as_are_taken_are_taken() -> None:
    table, found = read_table("a.csv", "a", b"a,b\n" + b"1,2\n" * MOST_ROWS)
    assert table is not None
    assert (len(table.lines), found) == (MOST_ROWS, [])
