"""The one text of an entry: the bytes that are hashed.

Guarantees: equal entries give equal bytes, on every machine and in every release; the text is
canonical JSON as RFC 8785 defines it, and is read back only if it is byte for byte that text.
Refuses: fractions (amounts are whole numbers of a smallest unit), null (what is absent is left
out), names outside ASCII, whole numbers beyond ±(2**53 - 1), half characters (lone surrogates),
nesting deeper than `MAX_DEPTH`, and every other type, subclasses such as enumerations included.

References:
    RFC 8785, JSON Canonicalization Scheme (JCS): sections 3.2.2 (strings, literals, numbers) and
    3.2.3 (order of names). Names in ASCII sort alike by code point and by UTF-16 unit.
"""

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from itertools import zip_longest
from typing import Any

import msgspec

from ledger.errors import RefusedError

MAX_INTEGER = 2**53 - 1
"""The largest whole number, either side of nought, that every reader of JSON reads exactly."""

MAX_DEPTH = 16
"""How many lists and objects may stand inside one another below the entry itself."""

# Names in their order, no blanks, and of text only what must be is escaped, as in the RFC.
_encode = msgspec.json.Encoder(order="sorted").encode

_AGAIN = "Correct what is named here and enter it again; nothing was recorded."
_COPY = "Read the entry from a copy of the book that has not been altered."


def canonical_text(value: Mapping[str, object]) -> str:
    """Write an entry as canonical JSON (RFC 8785).

    Args:
        value: Names to text, whole numbers, true or false, lists or tuples, or dicts of the same.

    Raises:
        RefusedError: The entry holds something that has no place in the book; every such thing
            is named, with where it stands.

    Example:
        >>> canonical_text({"lot": "E-014", "amount": 30000, "late": False, "note": "crème"})
        '{"amount":30000,"late":false,"lot":"E-014","note":"crème"}'
    """
    entry = value if type(value) is dict else _as_dict(value)
    if _names_are_ascii(entry) and _values_are_plain(entry.values(), MAX_DEPTH):
        with suppress(UnicodeEncodeError):  # half a character, which is told of below
            return _encode(entry).decode()
    wrong = "; ".join(_problems(entry, "", MAX_DEPTH + 1))
    raise RefusedError(f"The entry cannot be written in the book: {wrong}.", _AGAIN)


def read_canonical(text: str) -> dict[str, object]:
    """Read an entry back from its canonical text; lists come back as lists, never as tuples.

    Raises:
        RefusedError: The text is not JSON, is not an object, gives a name twice, holds what
            `canonical_text` refuses, or differs in any character from its canonical form.

    Example:
        >>> read_canonical('{"amount":30000,"lot":"E-014"}')
        {'amount': 30000, 'lot': 'E-014'}
    """
    parsed = _parse(text)
    try:
        value = _as_dict(parsed)
        written = canonical_text(value)
    except RefusedError as error:
        raise RefusedError(error.what, _COPY) from error
    if written == text:
        return value
    # A name given twice was read as one, so such a text always arrives here.
    if names := _repeated_names(text):
        listed = ", ".join(f"`{_shown(name)}`" for name in names)
        raise RefusedError(
            f"The text gives {listed} more than once, but each name may be given once only.", _COPY
        )
    raise RefusedError(_difference(text, written), _COPY)


def _as_dict(value: object) -> dict[str, object]:
    if isinstance(value, Mapping):
        return dict(value)
    raise RefusedError(
        f"An entry is written as names with values, but a {type(value).__name__} was given.", _AGAIN
    )


def _names_are_ascii(value: Mapping[Any, object]) -> bool:
    try:
        return "".join(value).isascii()
    except TypeError:  # a name that is not text
        return False


def _values_are_plain(values: Iterable[Any], depth: int) -> bool:
    """Tell fast whether all is well; `_problems` tells slowly what is not."""
    for item in values:
        kind = type(item)
        if kind is str or kind is bool:
            continue
        if kind is int:
            if -MAX_INTEGER <= item <= MAX_INTEGER:
                continue
            return False
        if depth and kind is dict:
            if _names_are_ascii(item) and _values_are_plain(item.values(), depth - 1):
                continue
            return False
        if depth and (kind is list or kind is tuple) and _values_are_plain(item, depth - 1):
            continue
        return False
    return True


def _has_half_character(text: str) -> bool:
    try:
        text.encode()
    except UnicodeEncodeError:
        return True
    return False


def _problems(value: object, where: str, depth: int) -> Iterator[str]:
    """Yield, for a value and all within it, what is wrong and what was expected instead."""
    if isinstance(value, dict | list | tuple) and type(value) in (dict, list, tuple):
        if not depth:
            yield f"`{where}` stands inside more than {MAX_DEPTH} lists or objects"
        elif isinstance(value, dict):
            for name, item in value.items():
                if not (isinstance(name, str) and name.isascii()):
                    yield f"the name {name!a} was given, but names are text in ASCII"
                yield from _problems(item, f"{where}.{_shown(name)}".lstrip("."), depth - 1)
        else:
            for index, item in enumerate(value):
                yield from _problems(item, f"{where}[{index}]", depth - 1)
    elif fault := _fault(value):
        yield f"`{where}` {fault}"


def _fault(value: object) -> str:
    """Say what is wrong with a single value; nothing if all is well."""
    if value is None:
        return "is null, but what is absent is left out"
    if isinstance(value, float):
        return f"is {value!r}, but a whole number of a smallest unit was expected"
    if isinstance(value, int) and type(value) in (int, bool):
        bits = value.bit_length()
        return "" if bits <= 53 else f"needs {bits} bits, but no number above {MAX_INTEGER} is kept"
    if isinstance(value, str) and type(value) is str:
        return "holds half a character (a lone surrogate)" if _has_half_character(value) else ""
    return (
        f"is of type {type(value).__name__}, but text, a whole number, true or false, a list or "
        "an object was expected"
    )


def _shown(name: object) -> str:
    """A name as a message can print it, whatever characters it holds."""
    return ascii(str(name))[1:-1]


def _parse(text: str) -> object:
    try:
        return json.loads(text)
    except json.JSONDecodeError as error:
        what = f"The text is not JSON: {error.msg} at character {error.pos + 1}."
        raise RefusedError(what, _COPY) from error
    except (RecursionError, ValueError) as error:
        what = "The text holds a number too long, or lists nested too deeply, for any entry."
        raise RefusedError(what, _COPY) from error


def _repeated_names(text: str) -> list[str]:
    repeated: dict[str, None] = {}

    def note(pairs: list[tuple[str, object]]) -> None:
        counts = Counter(name for name, _ in pairs)
        repeated.update((name, None) for name, count in counts.items() if count > 1)

    json.loads(text, object_pairs_hook=note)
    return list(repeated)


def _difference(text: str, written: str) -> str:
    """Say where a text first leaves its canonical form; the two must differ."""
    pairs = enumerate(zip_longest(text, written, fillvalue=""), start=1)
    place, (got, wanted) = next(pair for pair in pairs if pair[1][0] != pair[1][1])
    return (
        f"The text is not in its canonical form: at character {place}, "
        f"{ascii(wanted) if wanted else 'the end'} was expected, "
        f"but {ascii(got) if got else 'the end'} was got."
    )
