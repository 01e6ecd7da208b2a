"""A map that the headings of tables propose, for the maker to read and put right.

Guarantees: what is proposed can be read as a map; columns that nothing was made of are named in
it. Refuses: to be believed: headings are words, and the same word means one thing here and another
there.
"""

import re
from collections.abc import Sequence

from ledger.domain.tables.days import DayOrder, plain_day
from ledger.domain.tables.grid import Table
from ledger.errors import InputError
from ledger.service.copies.intake.heading_words import short_name
from ledger.service.copies.intake.table_proposal import TableProposal


def proposed_map(tables: Sequence[Table]) -> str:
    """Return a map in TOML that the headings of tables propose."""
    order = _order(tables)
    said = [f'dates = "{order}"'] if order else ['# dates = "dmy", "mdy" or "ymd": say which']
    parts = sorted(map(TableProposal, tables), key=lambda part: part.place)
    lines = [_ABOUT, *said, "[words]", '# "their word" = "the word of the book"']
    if names := [name for part in parts for name in part.materials]:
        lines += ["[words.material]", *(f'"{name}" = "{short_name(name)}"' for name in names)]
    if grades := {cell: grade for part in parts for cell, grade in part.grades.items()}:
        lines += ["[words.grade]", *(f'"{cell}" = "{grade}"' for cell, grade in grades.items())]
    for part in parts:
        part.has_deliveries = any(other.place == 0 for other in parts)
        part.bought = [name for other in parts if other.place == 0 for name in other.materials]
    return "\n".join([*lines, *(line for part in parts for line in part.lines())]) + "\n"


_ABOUT = """# Proposed by the headings; read it line by line. {Column} stands for the cell of a row.
# An act is left out of a row where all the columns that it names itself are empty."""


def _order(tables: Sequence[Table]) -> DayOrder | None:
    """Return the only order in which every day in the first rows can be read."""
    cells = [cell for table in tables for line in table.lines[:200] for cell in line.cells]
    days = [cell for cell in cells if re.fullmatch(r"\d{1,2}[./-]\d{1,2}[./-]\d{2,4}", cell)]
    fits = [order for order in DayOrder if days and all(_is_day(day, order) for day in days)]
    # Nobody parts a year of two digits that stands first by points or strokes.
    plain = [order for order in fits if order is not DayOrder.YMD or "-" in "".join(days)]
    return plain[0] if len(plain) == 1 else None


def _is_day(text: str, order: DayOrder) -> bool:
    try:
        plain_day(text, order)
    except InputError:
        return False
    return True
