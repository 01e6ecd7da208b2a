"""Changes that keep a document one, so that what is tried comes past its first letter.

Guarantees: the same bytes, chance and blind change give the same document. Refuses: nothing; what
is no document of its kind is changed blindly.
"""

import json
from collections.abc import Callable
from random import Random
from typing import Any

from ledger.domain.evidence.merkle import Frontier, leaf_hash
from ledger.store.copies.lines import DETAILS_BEGIN, FORMAT
from tests.domain.evidence.rfc6962 import leaf, root_by_path

Blind = Callable[[bytes], bytes]
"""Changes bytes without knowing what they are."""
Mutator = Callable[[bytes, Random, Blind], bytes]
"""Changes a document by chance."""
ODD: tuple[Any, ...] = (
    *(0, -1, 1, 2**53 - 1, 2**53, 2**63, -(2**63), 10**400, 0.5, 1e400, None, True, [], {}, ""),
    *("\u202e", "\x1b[31m", "\ud800", "x" * 3000, "٣", "0001-01-01", "9999-12-31T23:59:59Z"),
)
"""Values that readers stumble over."""
TOKENS = (
    *(b'"', b"'", b'"""', b",", b"\n", b"\r", b"\0", b"=", b"[", b"]", b"[[", b"{", b"}", b"#"),
    *(b"inf", b"nan", b"0x" + b"f" * 5000, b"9" * 5000, b"[" * 2000, b"a." * 2000, b"true", b"-0"),
    *("\u202e".encode(), b"\x1b", b"\xff", "\ufeff".encode(), b"0001-01-01", b"9999-12-31 23:59"),
)
"""Pieces of text that readers stumble over."""


def blindly(chance: Random) -> Blind:
    """Return a blind change for where no fuzzer lends its own."""

    def change(data: bytes) -> bytes:
        place = chance.randint(0, len(data))
        put = chance.choice((chance.randbytes(chance.randint(0, 3)), chance.choice(TOKENS)))
        return data[:place] + put + data[place + chance.randint(0, 4) :]

    return change


def canonical(value: object) -> bytes:
    """Write any value as canonical JSON would be, with half characters as they are."""
    text = json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return text.encode("utf-8", "surrogatepass")


def holders(value: Any) -> list[tuple[Any, Any]]:
    """Return every list and object within a value with each of its places."""
    found: list[tuple[Any, Any]] = []
    for key in value if isinstance(value, dict) else range(len(value)):
        found.append((value, key))
        if isinstance(value[key], dict | list):
            found += holders(value[key])
    return found


def change_value(value: Any, chance: Random, blind: Blind) -> None:
    """Change one thing within a list or an object."""
    places = holders(value)
    if not places:
        return
    (holder, key), (other, from_) = chance.choice(places), chance.choice(places)
    old = holder[key]
    match chance.randrange(5):
        case 0 if isinstance(holder, dict):
            del holder[key]
        case 1:
            holder[key] = chance.choice(ODD)
        case 2 if not isinstance(other[from_], dict | list):
            holder[key] = other[from_]
        case 3 if isinstance(old, int):
            holder[key] = old + chance.choice((-1, 1, old, -old))
        case _ if isinstance(old, str):
            holder[key] = blind(old.encode("utf-8", "surrogatepass")).decode("utf-8", "replace")


def json_value(data: bytes, chance: Random, blind: Blind) -> bytes:
    """Change something within a JSON value and write it canonically."""
    try:
        value = json.loads(data)
        change_value(value, chance, blind)
        return canonical(value)
    except (ValueError, TypeError, RecursionError, OverflowError):
        return blind(data)


def book_lines(data: bytes, chance: Random, blind: Blind) -> bytes:
    """Change an entry, or the order of entries, of a book in lines; make the first line fit."""
    head, *rest = data.removesuffix(b"\n").split(b"\n")
    if not rest or not chance.randrange(20):
        return blind(data)
    place, other = chance.randrange(len(rest)), chance.randrange(len(rest))
    match chance.randrange(10):
        case 0:
            rest[place], rest[other] = rest[other], rest[place]
        case 1:
            rest = rest[: place + 1]
        case 2:
            rest.insert(place, rest[other])
        case _:
            rest[place] = json_value(rest[place], chance, blind)
    return b"\n".join([_head(head, rest, chance, blind), *rest]) + b"\n"


def _head(head: bytes, rest: list[bytes], chance: Random, blind: Blind) -> bytes:
    if not chance.randrange(10):
        return json_value(head, chance, blind)
    frontier = Frontier()
    texts = [line for line in rest if not line.startswith(DETAILS_BEGIN.encode())]
    for line in texts:
        frontier.add(leaf_hash(line))
    house = "Quayside Essences"
    root = frontier.root().hex()
    plain = {"format": FORMAT, "house": house, "entries": len(texts), "root": root}
    return canonical(plain)


def proof(data: bytes, chance: Random, blind: Blind) -> bytes:
    """Change an entry of a proof and reckon the root to which its path now leads."""
    try:
        value = json.loads(data)
        one = chance.choice(value["proved"])
        if not chance.randrange(3):
            value["proved"] = [one]
        match chance.randrange(6):
            case 0:
                change_value(value, chance, blind)
            case 1:
                value["proved"] = sorted(value["proved"], key=lambda _: chance.random())
            case _:
                changed = json_value(one["body"].encode(), chance, blind)
                one["body"] = changed.decode("utf-8", "surrogatepass")
                path = [bytes.fromhex(part) for part in one["path"]]
                size = int(value["entries"])
                root = root_by_path(one["seq"] - 1, size, leaf(changed), path)
                value["root"] = root.hex() if root else value["root"]
        return canonical(value)
    except (ValueError, TypeError, LookupError, AttributeError, RecursionError, OverflowError):
        return blind(data)


def text_lines(data: bytes, chance: Random, blind: Blind) -> bytes:
    """Move, lose or repeat a line of a text, put in a token, or change the end of a line."""
    rest = data.split(b"\n")
    place, other = chance.randrange(len(rest)), chance.randrange(len(rest))
    match chance.randrange(6):
        case 0:
            rest.insert(place, rest[other])
        case 1:
            del rest[place]
        case 2:
            at = chance.randint(0, len(rest[place]))
            rest[place] = rest[place][:at] + chance.choice(TOKENS) + rest[place][at:]
        case 3:
            name, sign, value = rest[place].rpartition(b"=")
            rest[place] = name + sign + blind(value)
        case 4:
            name, sign, _ = rest[place].partition(b"=")
            rest[place] = name + sign + rest[other].rpartition(b"=")[2]
        case _:
            return blind(data)
    return b"\n".join(rest)
