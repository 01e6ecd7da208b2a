"""Reading a CSV file in the dialect in which a spreadsheet wrote it.

Guarantees: what parts the cells and how the letters are kept is recognised and said; a row that
goes over several lines has the number of its first. Refuses: bytes that are no text, quotes that
are never closed, rows wider than their heading, two columns of one name, and more rows than one
evening can look through.

References:
    RFC 4180 (2005): quotes, line ends and commas; other partings are what spreadsheets write
    where the comma is a decimal one (common practice, no source).
"""

import csv
from collections.abc import Iterator, Sequence
from io import StringIO
from itertools import islice

from ledger.domain.tables.grid import Found, Line, Table

PARTINGS = {";": "semicolons", ",": "commas", "\t": "tabs", "|": "upright strokes"}
"""What may part the cells of a row, in words."""
MOST_ROWS = 20_000
"""The most rows of one table that are taken at once."""
_LOOKED_AT = 50
_ABOVE = 100
"""How many rows a heading may have above it, or blank ones between, before too many are told."""
_TOLD = "sep="
Rows = list[tuple[int, list[str]]]


def read_text(content: bytes) -> tuple[str, str] | None:
    r"""Return the text of a file and how its letters are kept, or None where it is no text.

    >>> read_text("Öl;ml".encode("cp1252")), read_text(b"\xef\xbb\xbfoil")
    (('Öl;ml', 'Windows letters (cp1252)'), ('oil', 'UTF-8 with a mark'))
    """
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _decoded(content, "utf-16", "UTF-16")
    if b"\0" in content:
        return None
    if content.startswith(b"\xef\xbb\xbf"):
        return _decoded(content, "utf-8-sig", "UTF-8 with a mark")
    # Text in UTF-8 with letters beyond ASCII is hardly ever text in anything else.
    return _decoded(content, "utf-8", "UTF-8") or _decoded(
        content, "cp1252", "Windows letters (cp1252)"
    )


def _decoded(content: bytes, encoding: str, words: str) -> tuple[str, str] | None:
    try:
        return content.decode(encoding), words
    except UnicodeDecodeError:
        return None


def read_table(file: str, name: str, content: bytes) -> tuple[Table | None, list[Found]]:
    """Return the table of a CSV file, or None, and all that is wrong with it as a table."""
    told = read_text(content)
    if told is None:
        what = "It is no text: it holds bytes that no spreadsheet writes into a CSV file."
        return None, [Found(file, None, None, what, "Save it again as CSV in UTF-8.")]
    text, letters = told
    parting, text = _parting(text)
    try:
        # Of a file that is too long no more is read than tells so.
        rows = list(islice(_rows(text, parting), MOST_ROWS + _ABOVE))
    except csv.Error as error:
        what = f"It cannot be read as CSV: {error}."
        return None, [Found(file, None, None, what, "Close each quote, or save it again as CSV.")]
    return table_of(file, name, rows, (f"parted by {PARTINGS[parting]}", letters))


def table_of(
    file: str, name: str, rows: Rows, said: tuple[str, ...]
) -> tuple[Table | None, list[Found]]:
    """Return the table of rows with their lines, the first with two cells being its heading."""
    rows = [(number, cells) for number, cells in rows if any(cells)]
    at = next((place for place, (_, cells) in enumerate(rows) if sum(map(bool, cells)) > 1), 0)
    if not rows:
        return None, [Found(file, None, None, "It is empty.", "Give a heading and rows below it.")]
    if len(rows) - at - 1 > MOST_ROWS:
        what = f"It has more than {MOST_ROWS} rows, the most that are taken at once."
        return None, [Found(file, None, None, what, "Part it into several files.")]
    number, cells = rows[at]
    head = tuple(_shorn(cells))
    found = list(_wrong_heads(file, number, head))
    lines = []
    for line, row in rows[at + 1 :]:
        filled = _shorn(row)
        if len(filled) > len(head):
            what = f"It has {len(filled)} cells, but the heading has {len(head)}."
            todo = "Put text that holds what parts the cells in double quotes."
            found.append(Found(file, line, None, what, todo))
        else:
            lines.append(Line(line, (*filled, *("" for _ in range(len(head) - len(filled))))))
    return Table(file, name, head, tuple(lines), said), found


def _wrong_heads(file: str, line: int, head: Sequence[str]) -> Iterator[Found]:
    for name in sorted({name for name in head if name and head.count(name) > 1}):
        what = f'The heading has the column "{name}" more than once.'
        yield Found(file, line, name, what, "Keep one of them, or give the other another name.")


def _shorn(cells: Sequence[str]) -> list[str]:
    """Return cells without the empty ones at the end, which spreadsheets add at will."""
    last = max((place for place, cell in enumerate(cells, 1) if cell), default=0)
    return list(cells[:last])


def _parting(text: str) -> tuple[str, str]:
    """Return what parts the cells, and the text without a first line that only says so."""
    first, _, rest = text.partition("\n")
    if first.lower().startswith(_TOLD) and first.strip()[len(_TOLD) :] in PARTINGS:
        return first.strip()[len(_TOLD) :], rest
    return max(PARTINGS, key=lambda sign: _fitness(text, sign)), text


def _fitness(text: str, parting: str) -> tuple[int, int]:
    """Return how many of the first rows are as wide as the widest of them, if that is not 1."""
    widths = []
    try:
        for _, cells in _rows(text, parting):
            widths.append(len(cells))
            if len(widths) == _LOOKED_AT:
                break
    except csv.Error:
        pass
    widest = max(widths, default=1)
    return (0, 0) if widest == 1 else (widths.count(widest), widest)


def _rows(text: str, parting: str) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(StringIO(text, newline=""), delimiter=parting, strict=True)
    before = 0
    for cells in reader:
        yield before + 1, [" ".join(cell.split()) for cell in cells]
        before = reader.line_num
