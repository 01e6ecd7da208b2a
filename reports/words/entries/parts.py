"""What the words of several kinds of entry are made of.

Guarantees: what was not recorded leaves no trace in the words.
"""

from collections.abc import Iterable

from reports.kit.format import celsius

Parts = Iterable[str | None]
"""Pieces of a sentence; None where nothing was recorded."""


def at(temp_mdegc: int | None) -> str | None:
    """Return a temperature with its word, or None.

    >>> at(18500)
    'at 18.5 °C'
    """
    return None if temp_mdegc is None else f"at {celsius(temp_mdegc)}"


def joined(parts: Parts) -> str:
    """Return the parts of a sentence in one line; only the last keeps a full stop it has.

    >>> joined(("Pretend Bar Ltd.", None, "nobody answered"))
    'Pretend Bar Ltd, nobody answered'
    """
    told = [part for part in parts if part]
    return ", ".join((*(part.removesuffix(".") for part in told[:-1]), *told[-1:]))


def before(word: str, value: object) -> str | None:
    """Return a value with the word before it, or None when there is no value.

    >>> before("from", "Ficto Oils"), before("from", None)
    ('from Ficto Oils', None)
    """
    return f"{word} {value}" if value else None
