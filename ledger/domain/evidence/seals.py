"""The seal: what a book looked like at one moment, in three short lines.

Guarantees: what `Seal.lines` writes, `read_seal` reads, and so it does after a printer, a mail or a
typist has wrapped it, run its lines together or written it in capitals. Refuses: a text in which
house, number of entries or root is missing or damaged.
"""

import re
import unicodedata
from collections.abc import Sequence

from msgspec import Struct

from ledger.errors import InputError

ROOT_DIGITS = 64
"""Hexadecimal digits of a root."""
SYMBOL_CHARS = frozenset("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:")
"""What a QR symbol holds in alphanumeric mode."""
MOST_IN_SYMBOL = 114
"""Such characters that a symbol of 33 by 33 modules holds at its low level."""
LEAST_CUT = 15
"""Characters of a house's name that a symbol never cuts below."""
MOST_ENTRIES = 2**53 - 1
"""The largest number of entries that a seal can name."""
_HOUSE_AT_A_LINE = re.compile(r"^[^\S\n]*house", re.I | re.M)
_HOUSE_ANYWHERE = re.compile(r"house", re.I)
# Bounded, and looking ahead, so that a long text full of these words is read in one pass.
_ENTRIES = re.compile(r"entries(?=\s*(?P<entries>\S{1,60}?)\s*(?P<root>root))", re.I)
_HEX = re.compile(r"[0-9a-f]+")
_COPY = (
    "Copy the three lines again as they stand on the paper: House ..., Entries ..., Root and 64 "
    "characters of 0-9 and a-f."
)


class Seal(Struct, frozen=True):
    """What a book looked like at one moment."""

    house: str
    """The maker's name."""
    entries: int
    """How many entries it had."""
    root: str
    """Root of its tree, 64 hexadecimal digits."""

    @property
    def lines(self) -> tuple[str, str, str]:
        """The three lines as they are printed.

        >>> Seal("Wren Cordials", 12, "ab" * 32).lines[1]
        'Entries 12'
        """
        return (f"House {self.house}", f"Entries {self.entries}", f"Root {self.root}")


def read_seal(text: str) -> Seal:
    """Read a seal from a text that may have words before and after it.

    Args:
        text: The three lines; white space within them, line breaks and capitals do not matter.

    Raises:
        InputError: A part is missing or damaged.

    Example:
        >>> read_seal("HOUSE Wren & Co ENTRIES 12 ROOT " + "AB" * 32).entries
        12
    """
    *_, last = (None, *_ENTRIES.finditer(text))
    house = _house(text[: last.start()]) if last else ""
    if last is None or not house:
        raise InputError(
            f"{_shown(text)} is not a seal: it needs a house, a number of entries and a root.",
            _COPY,
        )
    return Seal(house, _entries(last["entries"]), _root(text[last.end("root") :]))


def _house(text: str) -> str:
    """Return what follows the first word house, at the head of a line if there is one, or ""."""
    for pattern in (_HOUSE_AT_A_LINE, _HOUSE_ANYWHERE):
        for match in pattern.finditer(text):
            if name := " ".join(text[match.end() :].split()):
                return name
    return ""


def in_symbol(lines: Sequence[str]) -> str:
    """Return the lines of a seal as its QR symbol says them: capitals and figures in one line.

    Such letters make larger modules (ISO/IEC 18004, alphanumeric mode). The name of the house
    loses its accents and what else the mode lacks, and is cut where the symbol would grow; the
    rest stands whole, and `read_seal` reads it.

    >>> in_symbol(Seal("Café Wren", 12, "ab" * 32).lines)[:35]
    'HOUSE CAFE WREN ENTRIES 12 ROOT ABA'
    """
    house, *others = (_plain(line) for line in lines)
    room = MOST_IN_SYMBOL - sum(len(line) + 1 for line in others)
    return " ".join([house[:room].strip(), *others])


def same_house(one: str, other: str) -> bool:
    """Return whether two names are the same but for white space and capitals.

    A name as the symbol of a seal says it is that of the house it was made of.

    >>> same_house("Wren Cordials", "WREN  CORDIALS"), same_house("Wren", "Robin")
    (True, False)
    >>> same_house("CAFE WREN", "Café Wren"), same_house("Cafe Wren", "Café Wren")
    (True, False)
    """
    return _bare(one) == _bare(other) or _is_symbol_of(one, other) or _is_symbol_of(other, one)


def _is_symbol_of(name: str, other: str) -> bool:
    whole = _plain(other)
    return name == whole or (len(name) >= LEAST_CUT and whole.startswith(name))


def _plain(text: str) -> str:
    """Return the capitals, figures and marks of a text that a symbol has; "-" for none."""
    letters = unicodedata.normalize("NFKD", text).upper()
    kept = "".join(char for char in letters if char in SYMBOL_CHARS)
    return " ".join(kept.split()) or "-"


def _bare(name: str) -> str:
    return "".join(name.casefold().split())


def _entries(text: str) -> int:
    if not (text.isascii() and text.isdecimal() and len(text) <= len(str(MOST_ENTRIES))):
        raise InputError(f"The seal's number of entries is written as {_shown(text)}.", _COPY)
    if not 1 <= int(text) <= MOST_ENTRIES:
        raise InputError(f"No book has {int(text)} entries, as the seal says.", _COPY)
    return int(text)


def _root(text: str) -> str:
    digits = ""
    for word in text.lower().split():
        if len(digits) >= ROOT_DIGITS or not _HEX.fullmatch(word):
            break
        digits += word
    if len(digits) != ROOT_DIGITS:
        raise InputError(
            f"The seal's root has {len(digits)} characters of 0-9 and a-f, not {ROOT_DIGITS}.",
            _COPY,
        )
    return digits


def _shown(text: str) -> str:
    plain = " ".join(text.split())
    escaped = ascii(plain if len(plain) <= 60 else f"{plain[:60]} ...")
    return f'"{escaped[1:-1]}"'
