"""What a TOML text says, and where its keys and tables stand.

Guarantees: the line of every key at the head of a line, and of every table, counted from 1; a key
inside a string or a list of several lines is none. Refuses: what is not TOML, and what the
standard library's reader stumbles over, by one error.
"""

import re
import tomllib
from collections import Counter
from typing import Any

Place = tuple[str, int, str]
"""A table's name, which of that name it is from 0, and a key; the key "" is the table itself."""

_HEAD = re.compile(r"\[\[?([^\]]+)\]\]?\s*(?:#.*)?")
_KEY = re.compile(r"\s*(?:\"([^\"]*)\"|'([^']*)'|([A-Za-z0-9_-]+))\s*[.=]")
_TOKEN = re.compile(r"\"\"\"|'''|\"(?:\\.|[^\"\\])*\"|'[^']*'|#.*|[\[\]{}]")


MOST_PARTS = 16
"""Of so many parts, with dots between, is a key at most; none that is read has more than two."""
# Looked for before the text is read: of 20,000 parts, reading takes 1.6 GB.
_PART = r"(?:[\w-]+|\"[^\"\n]*\"|'[^'\n]*')"
_LONG_KEY = re.compile(rf"(?:{_PART}[ \t]*\.[ \t]*){{{MOST_PARTS}}}{_PART}")


def toml_values(text: str) -> dict[str, Any]:
    """Return what a TOML text says.

    Raises:
        TOMLDecodeError: It is not TOML, or holds more than can be read.
    """
    if _LONG_KEY.search(text):
        raise tomllib.TOMLDecodeError(f"a key has more than {MOST_PARTS} parts")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        raise
    except (RecursionError, ValueError) as error:
        why = "a number is too long, or lists stand too deep in one another"
        raise tomllib.TOMLDecodeError(why) from error


def line_numbers(text: str) -> dict[Place, int]:
    r"""Return the line on which each table and each key stands.

    >>> line_numbers('code = "lemon"\n[[line]]\namount = "30mL"\n')[("line", 0, "amount")]
    3
    """
    places: dict[Place, int] = {("", 0, ""): 1}
    met: Counter[str] = Counter()
    table, number, quote, depth = "", 0, "", 0
    # Not splitlines, which breaks at signs that end no line of TOML.
    for line_no, line in enumerate(text.split("\n"), 1):
        if not quote and not depth:
            if head := _HEAD.fullmatch(line.strip()):
                table = head[1].strip("\"' \t")
                # Counted as they are met, for to count again at each head took hours where there
                # were many.
                number = met[table]
                met[table] += 1
                places[table, number, ""] = line_no
                continue
            if key := _KEY.match(line):
                places.setdefault((table, number, key[1] or key[2] or key[3] or ""), line_no)
        quote, depth = _after(line, quote, depth)
    return places


def _after(line: str, quote: str, depth: int) -> tuple[str, int]:
    """Return the string that is open after a line, and how many brackets are."""
    place = 0
    while place < len(line):
        if quote:
            end = line.find(quote, place)
            if end < 0:
                return quote, depth
            quote, place = "", end + len(quote)
            continue
        token = _TOKEN.search(line, place)
        if token is None:
            break
        place = token.end()
        if token[0] in ('"""', "'''"):
            quote = token[0]
        elif token[0] in ("[", "{"):
            depth += 1
        elif token[0] in ("]", "}"):
            depth -= 1
    return quote, depth
