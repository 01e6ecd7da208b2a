"""What a map says of one word of an entry: fixed text with cells of the row in it.

Guarantees: `{Oil mL} mL` names its columns and nothing else; what none of its cells fills is left
out. Refuses: braces that are not closed.
"""

import re
from collections.abc import Callable

from ledger.errors import InputError

_COLUMN = re.compile(r"\{([^{}]+)\}")


def columns_of(template: str) -> tuple[str, ...]:
    """Return the columns that a template names.

    Raises:
        InputError: A brace has no other.

    >>> columns_of("{Bottles} x {Size mL} mL"), columns_of("essence")
    (('Bottles', 'Size mL'), ())
    >>> columns_of("{Oil mL")
    Traceback (most recent call last):
    ledger.errors.InputError: "{Oil mL" has a brace without its other. Write a column as {Oil mL}.
    """
    if "{" in _COLUMN.sub("", template) or "}" in _COLUMN.sub("", template):
        raise InputError(
            f'"{template}" has a brace without its other.', "Write a column as {Oil mL}."
        )
    return tuple(name.strip() for name in _COLUMN.findall(template))


def filled(template: str, cell: Callable[[str], str]) -> str | None:
    """Return a template with the cells of a row in it, or None where all of these are empty.

    >>> filled("{n} x {mL} mL", {"n": "12", "mL": "250"}.__getitem__)
    '12 x 250 mL'
    >>> filled("{n} mL", {"n": ""}.__getitem__) is None, filled("clear", {}.__getitem__)
    (True, 'clear')
    """
    names = columns_of(template)
    if names and not any(cell(name) for name in names):
        return None
    return " ".join(_COLUMN.sub(lambda told: cell(told[1].strip()), template).split())
