"""What a server finds by one question for others: the words that ask for it, and that keep it.

Guarantees: a value, or rows, is kept in a setting for as long as the transaction lasts; a question
that asks for cells of such rows is asked for each of them by one statement. Refuses: to ask; it
only writes the words.
"""

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

from ledger.store.engine.turn import Found, Heard, Question, Rows

_NAME = re.compile(r"(?<![:\w]):(\w+)")


def asking(heard: Heard) -> Question:
    """Return a question in words that find for themselves what it asks for, and keep its answer."""
    statement, cells, is_binary, _ = heard.asked
    inlined = {name: sql for name, cell in cells.items() if (sql := _inlined(cell))}
    if inlined:
        statement = _with(statement, tuple(inlined.items()))
        cells = {name: cell for name, cell in cells.items() if name not in inlined}
    if heard.found:
        statement = _kept(statement, heard.found)
    elif keys := heard.asked.keys:
        statement = _of_each(statement, keys)
    return Question(statement, cells, is_binary)


def _kept(statement: str, found: Found | Rows) -> str:
    """Return SQL that keeps what a statement finds, for others."""
    kept = "set_config('pottle.found{}', CAST({} AS TEXT), true)"
    if isinstance(found, Rows):
        keeps = kept.format(found.number, "jsonb_agg(told)")
        return f"SELECT length({keeps}) FROM ({statement}) AS told({', '.join(found.names)})"
    one = f"FROM ({statement}) AS told(one)"
    if found.rows is None:
        return f"SELECT one, {kept.format(found.number, 'one')} {one}"
    # Beside what is in each row already.
    cell = f"jsonb_build_object('{found.column}', (SELECT one {one} LIMIT 1))"
    keeps = kept.format(found.rows.number, f"jsonb_agg(to_jsonb(each) || {cell})")
    return f"SELECT length({keeps}) FROM {found.rows.told}"


def _of_each(statement: str, keys: Sequence[Found]) -> str:
    """Return SQL that asks a question for each of the rows that were found, with other cells.

    Each row of an answer comes with the number of the question, the keys and its own number.
    """
    columns = ", ".join(key.column for key in keys)
    rows = "".join(key.rows.told for key in keys[:1] if key.rows)
    each = (
        f"SELECT row_number() OVER () AS question, {columns} "
        f"FROM (SELECT DISTINCT {columns} FROM {rows}) AS once"
    )
    told = f"SELECT row_number() OVER () AS in_order, said.* FROM ({statement}) AS said"
    named = ", ".join(key.told for key in keys)
    return (
        f"SELECT each.question, {named}, told.* FROM ({each}) AS each "
        f"LEFT JOIN LATERAL ({told}) AS told ON TRUE ORDER BY each.question, told.in_order"
    )


@lru_cache(maxsize=512)  # the same acts find the same things
def _with(statement: str, inlined: tuple[tuple[str, str], ...]) -> str:
    """Return a statement with SQL in the place of names."""
    said = dict(inlined)
    return _NAME.sub(lambda name: said.get(name[1], name[0]), statement)


def _inlined(cell: object) -> str:
    """Return SQL for what is to be found, and nothing for a value."""
    if isinstance(cell, Found | Rows):
        return cell.told
    if isinstance(cell, list) and any(isinstance(one, Found) for one in cell):
        told = (one.told for one in cell if isinstance(one, Found))  # among them there is no value
        return f"ARRAY[{', '.join(told)}]"
    return ""


def valued(cell: object, values: Mapping[Found, object]) -> object:
    """Return a cell with the values of what was found."""
    if isinstance(cell, Found):
        return values.get(cell)
    if isinstance(cell, list):
        return [valued(one, values) for one in cell]
    return cell
