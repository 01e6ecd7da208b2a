"""Which bytes of a SQLite file mean something, and what.

Guarantees: every byte that the file format gives a meaning to, in every page that a table or an
index is kept in, is named; all other bytes are room to spare. Refuses: files with reserved space,
pointer maps or free pages, which a copied book has not.

References:
    SQLite, "Database File Format", sections 1.3 (the header), 1.5 (free pages), 1.6 (B-tree pages)
    and 1.7 (overflow pages): https://www.sqlite.org/fileformat2.html
"""

from collections.abc import Iterator
from dataclasses import dataclass

HEADER_FIELDS = (
    ("magic", 16),
    ("page size", 2),
    ("write version", 1),
    ("read version", 1),
    ("reserved space", 1),
    ("payload fractions", 3),
    ("change counter", 4),
    ("size in pages", 4),
    ("free pages", 8),
    ("schema cookie", 4),
    ("schema format", 4),
    ("cache size", 4),
    ("largest root", 4),
    ("text encoding", 4),
    ("user version", 4),
    ("vacuum mode", 4),
    ("application id", 4),
    ("expansion", 20),
    ("version valid for", 4),
    ("writer's version", 4),
)
"""Names and lengths of the fields of the first 100 bytes, in their order."""
INTERIOR_INDEX, INTERIOR_TABLE, LEAF_INDEX, LEAF_TABLE = 2, 5, 10, 13


@dataclass(frozen=True, slots=True)
class Span:
    """Some bytes that mean one thing."""

    start: int
    length: int
    what: str


def spans(data: bytes, roots: list[int]) -> list[Span]:
    """Return all that means something in a file.

    Args:
        data: The file.
        roots: Numbers of the pages on which its tables and indexes begin.
    """
    assert data[20] == 0
    assert data[36:40] == data[52:56] == bytes(4)
    found, at = [], 0
    for name, length in HEADER_FIELDS:
        found.append(Span(at, length, f"header: {name}"))
        at += length
    size = int.from_bytes(data[16:18])
    for root in [1, *roots]:
        found += _tree(data, size, root)
    return found


def _tree(data: bytes, size: int, number: int) -> Iterator[Span]:
    base = (number - 1) * size
    at = base + (100 if number == 1 else 0)
    kind, cells = data[at], int.from_bytes(data[at + 3 : at + 5])
    is_interior = kind in (INTERIOR_INDEX, INTERIOR_TABLE)
    head = 12 if is_interior else 8
    yield Span(at, head, "page header")
    yield Span(at + head, 2 * cells, "cell pointers")
    yield from _free_blocks(data, base, int.from_bytes(data[at + 1 : at + 3]))
    for place in range(at + head, at + head + 2 * cells, 2):
        cell = base + int.from_bytes(data[place : place + 2])
        if is_interior:
            yield Span(cell, 4, "child pointer")
            yield from _tree(data, size, int.from_bytes(data[cell : cell + 4]))
            cell += 4
        if kind == INTERIOR_TABLE:
            yield Span(cell, _varint(data, cell)[1], "separator")
        else:
            yield from _cell(data, size, cell, is_table=kind == LEAF_TABLE)
    if is_interior:
        yield from _tree(data, size, int.from_bytes(data[at + 8 : at + 12]))


def _free_blocks(data: bytes, base: int, block: int) -> Iterator[Span]:
    while block:
        yield Span(base + block, 4, "free block")
        block = int.from_bytes(data[base + block : base + block + 2])


def _cell(data: bytes, size: int, at: int, *, is_table: bool) -> Iterator[Span]:
    payload, width = _varint(data, at)
    yield Span(at, width, "payload length")
    at += width
    if is_table:
        width = _varint(data, at)[1]
        yield Span(at, width, "row number")
        at += width
    local = _local(payload, size, is_table=is_table)
    yield Span(at, local, "payload")
    if local < payload:
        yield Span(at + local, 4, "overflow pointer")
        yield from _overflow(data, size, at + local, payload - local)


def _overflow(data: bytes, size: int, pointer: int, left: int) -> Iterator[Span]:
    while left:
        page = (int.from_bytes(data[pointer : pointer + 4]) - 1) * size
        here = min(left, size - 4)
        yield Span(page, 4, "overflow pointer")
        yield Span(page + 4, here, "payload")
        pointer, left = page, left - here


def _local(payload: int, size: int, *, is_table: bool) -> int:
    """Return how much of a payload stands on its own page (section 1.6, X, M and K)."""
    most = size - 35 if is_table else (size - 12) * 64 // 255 - 23
    if payload <= most:
        return payload
    least = (size - 12) * 32 // 255 - 23
    kept = least + (payload - least) % (size - 4)
    return kept if kept <= most else least


def _varint(data: bytes, at: int) -> tuple[int, int]:
    value = 0
    for width in range(1, 9):
        byte = data[at + width - 1]
        value = value << 7 | byte & 0x7F
        if byte < 0x80:
            return value, width
    return value << 8 | data[at + 8], 9
