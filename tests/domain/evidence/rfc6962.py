"""A second way to check proofs, written from the definitions of RFC 6962 alone.

It takes the recursive definitions of section 2.1.1 (Merkle audit paths) and 2.1.2 (Merkle
consistency proofs) and turns each into the root that a path leads to. It shares no code and no
way of reckoning with the book's own checks, which climb from the leaf as RFC 9162 describes.
"""

import json
from hashlib import sha256

DIGITS = 64
"""Hexadecimal digits of a hash of SHA-256."""


def leaf(data: bytes) -> bytes:
    """MTH({d(0)}) = SHA-256(0x00 || d(0))."""
    return sha256(b"\x00" + data).digest()


def pair(left: bytes, right: bytes) -> bytes:
    """SHA-256(0x01 || left || right)."""
    return sha256(b"\x01" + left + right).digest()


def split(n: int) -> int:
    """Return k, the largest power of two smaller than n."""
    k = 1
    while k * 2 < n:
        k *= 2
    return k


def tree_hash(data: list[bytes]) -> bytes:
    """Return MTH(D[n]), section 2.1, of one or more texts."""
    if len(data) == 1:
        return leaf(data[0])
    k = split(len(data))
    return pair(tree_hash(data[:k]), tree_hash(data[k:]))


def root_by_path(m: int, n: int, own: bytes, path: list[bytes]) -> bytes | None:
    """Return the root to which PATH(m, D[n]) leads, or None when it is of the wrong length.

    None also where 0 <= m < n does not hold, as there is no such path.
    """
    if not 0 <= m < n:
        return None
    if n == 1:
        return None if path else own
    if not path:
        return None
    k = split(n)
    *below, beside = path
    if m < k:
        left = root_by_path(m, k, own, below)
        return left and pair(left, beside)
    right = root_by_path(m - k, n - k, own, below)
    return right and pair(beside, right)


def roots_by_proof(
    m: int, n: int, old: bytes, path: list[bytes], whole: bool = True
) -> tuple[bytes, bytes] | None:
    """Return the old and the new root to which SUBPROOF(m, D[n], whole) leads, or None."""
    if m == n:
        if whole:
            return None if path else (old, old)
        return (path[0], path[0]) if len(path) == 1 else None
    if not path:
        return None
    k = split(n)
    *below, beside = path
    if m <= k:
        found = roots_by_proof(m, k, old, below, whole)
        return found and (found[0], pair(found[1], beside))
    found = roots_by_proof(m - k, n - k, old, below, False)
    return found and (pair(beside, found[0]), pair(beside, found[1]))


def check_file(text: str) -> list[int]:
    """Return the numbers of the entries of a proof's file that are not in the tree of its root."""
    proof = json.loads(text)
    root = bytes.fromhex(proof["root"])
    return [
        one["seq"]
        for one in proof["proved"]
        if any(len(part) != DIGITS for part in one["path"])
        or root_by_path(
            one["seq"] - 1,
            proof["entries"],
            leaf(one["body"].encode()),
            [bytes.fromhex(part) for part in one["path"]],
        )
        != root
    ]
