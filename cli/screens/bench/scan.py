"""Scans: a code as a scanner types it, as GS1 writes it, or as a foreign keyboard garbled it.

Guarantees: what is no scan stays as it was written; a garbled code is taken for a lot only where
the book has that very lot. Refuses: to guess between two.
"""

import re
from collections.abc import Callable, Iterator
from typing import Any

from ledger.errors import InputError

LOT = "10"
"""The application identifier of a batch or lot (GS1 General Specifications, 3.4.1)."""
_PLAIN = re.compile(r"[\w.\-/@#½¼¾]+", re.ASCII)
_CODE = re.compile(r"[A-Z0-9-]{4,20}", re.IGNORECASE | re.ASCII)
_FRENCH = str.maketrans("&é\"'(-è_ç à)aqzwAQZW,?".replace(" ", ""), "1234567890-qawzQAWZmM")
_BELGIAN = str.maketrans("&é\"'(§è!çà)aqzwAQZW,?", "1234567890-qawzQAWZmM")
_CZECH = str.maketrans("+ěščřžýáíé=zyZY", "1234567890-yzYZ")
LAYOUTS = {
    "German": str.maketrans("ßzyZY", "-yzYZ"),
    "Swiss": str.maketrans("'zyZY", "-yzYZ"),
    "French": _FRENCH,
    "Belgian": _BELGIAN,
    "Italian, Spanish, Portuguese": str.maketrans("'", "-"),
    "Danish, Finnish, Norwegian, Swedish": str.maketrans("+", "-"),
    "Czech": _CZECH,
    "Turkish": str.maketrans("*", "-"),
}
"""What a scanner set to a US keyboard types where the machine is set to another, letter by letter.

Checked against the symbol tables of xkeyboard-config 2.35 (de, ch, fr, be, it, es, pt, dk, fi, no,
se, cz, tr)."""


def lot_scanned(text: str) -> str | None:
    """Return the lot of a GS1 scan, a bracketed string or a Digital Link; None: it is none.

    Raises:
        InputError: It is one, and has no lot or cannot be read.

    >>> lot_scanned("]Q3010950600013435210ABC123"), lot_scanned("(10)OE-001-5")
    ('ABC123', 'OE-001-5')
    >>> lot_scanned("https://id.gs1.org/01/09506000134352/10/OE-001-5"), lot_scanned("oil 15")
    ('OE-001-5', None)
    """
    text = text.strip()
    if not text.startswith(("]", "(01)", "(10)", "http://", "https://")):
        return None
    try:
        told = dict(_elements(text))
    except ValueError as error:
        raise InputError(
            f"The scan {text} cannot be read as a GS1 code.", "Scan it again, or type the lot."
        ) from error
    if LOT not in told:
        raise InputError(
            f"The scan {text} says nothing of a lot.", "Scan the code of the lot, or type it."
        )
    return told[LOT]


def _elements(text: str) -> Iterator[tuple[str, str]]:
    """Yield the application identifiers of a scan with their values.

    Raises:
        ValueError: It is no such scan.
    """
    import biip  # for scans alone
    from biip.gs1_messages import GS1Message

    try:
        if text.startswith("("):
            holder: Any = GS1Message.parse_hri(text)
        else:
            read = biip.parse(text)
            holder = read.gs1_digital_link_uri or read.gs1_message
    except biip.BiipException as error:
        raise ValueError(text) from error
    if holder is None:
        raise ValueError(text)
    yield from ((item.ai.ai, item.value) for item in holder.element_strings)


def unfolded(word: str) -> tuple[str, ...]:
    """Return the codes that a garbled word may have been, each once; none for a plain word.

    >>> unfolded("BOSß009ßC"), unfolded("OE)àà&)("), unfolded("oil")
    (('BOS-009-C',), ('OE-001-5',), ())
    """
    if _PLAIN.fullmatch(word):
        return ()
    meant = (word.translate(table) for table in LAYOUTS.values())
    return tuple(dict.fromkeys(code for code in meant if _CODE.fullmatch(code)))


def scanned(text: str, is_lot: Callable[[str], bool]) -> str:
    """Return a line with what was scanned at its head as the code of a lot.

    Args:
        text: The line.
        is_lot: Whether the book has a lot of that whole code.

    Raises:
        InputError: It is a GS1 scan without a lot.
    """
    if lot := lot_scanned(text):
        return lot
    head, blank, rest = text.strip().partition(" ")
    lots = [code for code in unfolded(head) if is_lot(code)]
    return f"{lots[0]}{blank}{rest}" if len(lots) == 1 else text
