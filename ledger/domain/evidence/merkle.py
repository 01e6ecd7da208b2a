"""The Merkle tree over the entries: one root for the whole book, and short proofs.

Guarantees: the tree of RFC 6962 with SHA-256, whose root depends on every bit of every leaf and on
their order; proofs that a leaf is in a tree and that an older tree is the beginning of a newer
one. Refuses: to prove what is not in the tree; a check of anything malformed is simply false.

Throughout, a *leaf* is the 32-byte hash that `leaf_hash` makes of an entry's bytes, and a *node* is
named by its level and index: level 0 holds the leaves, and node ``(level, index)`` stands over the
leaves ``index * 2**level`` up to the next such multiple. A node is *complete* once all its
``2**level`` leaves are there; from then on it never changes, so it can be kept. A `NodeReader` is
only ever asked for complete nodes.

References:
    RFC 6962, section 2.1 (the tree, its proofs); RFC 9162, sections 2.1.3.2 and 2.1.4.2 (how
    proofs are verified).
"""

from collections.abc import Callable, Sequence
from hashlib import sha256

from ledger.errors import RefusedError

NodeReader = Callable[[int, int], bytes]
"""Gives the hash of the complete node at (level, index); level 0 is the leaves."""

HASH_SIZE = 32
"""Bytes in a leaf, a node and a root."""

EMPTY_ROOT = sha256(b"").digest()
"""The root of a tree without leaves."""


def leaf_hash(data: bytes) -> bytes:
    """Hash an entry's bytes into a leaf; the prefix keeps leaves apart from nodes."""
    return sha256(b"\x00" + data).digest()


def node_hash(left: bytes, right: bytes) -> bytes:
    """Hash two neighbours into the node above them."""
    return sha256(b"\x01" + left + right).digest()


def root(leaves: Sequence[bytes]) -> bytes:
    """Compute the root of a tree from all its leaves.

    Example:
        >>> root([]) == EMPTY_ROOT
        True
        >>> one, two = leaf_hash(b"one"), leaf_hash(b"two")
        >>> root([one]) == one, root([one, two]) == node_hash(one, two)
        (True, True)
    """
    level = list(leaves)
    while len(level) > 1:
        odd = level[-1:] if len(level) % 2 else []
        level = [*map(node_hash, level[::2], level[1::2]), *odd]
    return level[0] if level else EMPTY_ROOT


def new_nodes(size: int, leaf: bytes, node: NodeReader) -> list[tuple[int, int, bytes]]:
    """List the interior nodes that a new leaf completes.

    Args:
        size: How many leaves there were before; the new leaf has this number, counted from 0.
        leaf: The new leaf.
        node: Reads complete nodes of the tree before.

    Returns:
        (level, index, hash) from level 1 upwards; none if the leaf is a left child.
    """
    nodes = []
    level, index, right = 0, size, leaf
    while index % 2:
        right = node_hash(node(level, index - 1), right)
        level, index = level + 1, index // 2
        nodes.append((level, index, right))
    return nodes


def root_of_nodes(size: int, node: NodeReader) -> bytes:
    """Compute the root of a tree of `size` leaves, reading at most one node a level."""
    return _root_of_range(0, size, node) if size else EMPTY_ROOT


def inclusion_path(index: int, size: int, node: NodeReader) -> list[bytes]:
    """Prove that a leaf is in a tree: PATH of RFC 6962, section 2.1.1.

    Args:
        index: The number of the leaf, counted from 0.
        size: The number of leaves in the tree.
        node: Reads complete nodes of the tree, or of any later one.

    Raises:
        RefusedError: The tree has no such leaf.
    """
    if not 0 <= index < size:
        raise RefusedError(
            f"Leaf {index} cannot be proved to be in a tree of {size} leaves, counted from 0.",
            "Ask for a leaf that is in the tree.",
        )
    path = []
    start, stop = 0, size
    while stop - start > 1:
        middle = _middle(start, stop)
        if index < middle:
            path.append(_root_of_range(middle, stop, node))
            stop = middle
        else:
            path.append(_root_of_range(start, middle, node))
            start = middle
    return path[::-1]


def consistency_path(old_size: int, size: int, node: NodeReader) -> list[bytes]:
    """Prove that an older tree is the beginning of a newer one: PROOF of RFC 6962, section 2.1.2.

    Args:
        old_size: The number of leaves in the older tree, at least 1.
        size: The number of leaves in the newer tree, at least `old_size`.
        node: Reads complete nodes of the newer tree, or of any later one.

    Raises:
        RefusedError: The older tree is empty, or larger than the newer one.
    """
    if not 0 < old_size <= size:
        raise RefusedError(
            f"A tree of {old_size} leaves cannot be proved to be the beginning of one of {size}.",
            "Compare with an older tree that has at least one leaf and no more than the newer.",
        )
    path = []
    start, stop = 0, size
    while stop != old_size:
        middle = _middle(start, stop)
        if old_size <= middle:
            path.append(_root_of_range(middle, stop, node))
            stop = middle
        else:
            path.append(_root_of_range(start, middle, node))
            start = middle
    if start:  # else what is left is the whole older tree, whose root the verifier has
        path.append(_root_of_range(start, stop, node))
    return path[::-1]


def verify_inclusion(
    index: int, size: int, leaf: bytes, path: Sequence[bytes], root: bytes
) -> bool:
    """Check a proof that `leaf` has the number `index` in the tree of `size` leaves and this root.

    References:
        RFC 9162, section 2.1.3.2.
    """
    if not 0 <= index < size or not _are_hashes(leaf, root, *path):
        return False
    place, last, reckoned = index, size - 1, leaf
    for beside in path:
        if not last:
            return False
        if place % 2 or place == last:
            reckoned = node_hash(beside, reckoned)
            place, last = _climb(place, last)
        else:
            reckoned = node_hash(reckoned, beside)
        place, last = place // 2, last // 2
    return not last and reckoned == root


def verify_consistency(
    old_size: int, size: int, old_root: bytes, root: bytes, path: Sequence[bytes]
) -> bool:
    """Check a proof that the tree of `old_size` leaves is the beginning of that of `size`.

    An empty older tree is the beginning of any, so it proves nothing and the check is false.

    References:
        RFC 9162, section 2.1.4.2.
    """
    if old_size == size > 0:
        return not path and old_root == root
    if not 0 < old_size < size or not path or not _are_hashes(old_root, root, *path):
        return False
    # An old tree of a power of 2 is a node of the new one, and its root is left out of the path.
    first, *rest = path if old_size & (old_size - 1) else [old_root, *path]
    place, last = old_size - 1, size - 1
    while place % 2:
        place, last = place // 2, last // 2
    old_reckoned = reckoned = first
    for beside in rest:
        if not last:
            return False
        if place % 2 or place == last:
            old_reckoned, reckoned = node_hash(beside, old_reckoned), node_hash(beside, reckoned)
            place, last = _climb(place, last)
        else:
            reckoned = node_hash(reckoned, beside)
        place, last = place // 2, last // 2
    return not last and old_reckoned == old_root and reckoned == root


class Frontier:
    """The right edge of a growing tree: enough to append and to give the root at every size.

    It keeps one hash for each set bit of its size, so a book of any length is verified or
    imported in one pass.

    Example:
        >>> frontier = Frontier()
        >>> frontier.add(leaf_hash(b"one"))
        []
        >>> [(level, index) for level, index, _ in frontier.add(leaf_hash(b"two"))]
        [(1, 0)]
        >>> frontier.root() == root([leaf_hash(b"one"), leaf_hash(b"two")])
        True
    """

    __slots__ = ("_peaks", "size")

    def __init__(self) -> None:
        """Begin an empty tree."""
        self.size = 0
        self._peaks: list[bytes] = []

    @classmethod
    def of_nodes(cls, size: int, node: NodeReader) -> "Frontier":
        """Take up a tree of `size` leaves where it stands, reading at most one node a level."""
        frontier = cls()
        frontier.size = size
        frontier._peaks = _peaks(0, size, node)[::-1]
        return frontier

    def add(self, leaf: bytes) -> list[tuple[int, int, bytes]]:
        """Append a leaf; returns the interior nodes it completes, as `new_nodes` does."""
        nodes = []
        level, index, right = 0, self.size, leaf
        while index & 1:
            right = sha256(b"\x01" + self._peaks.pop() + right).digest()
            level, index = level + 1, index >> 1
            nodes.append((level, index, right))
        self._peaks.append(right)
        self.size += 1
        return nodes

    def extend(self, leaves: Sequence[bytes]) -> list[tuple[int, int, list[bytes]]]:
        """Append many leaves at once; returns the interior nodes they complete, level by level.

        Returns:
            For each level its number, the index of the first node completed, and the nodes.
        """
        completed, peaks = [], []
        level, index, nodes = 0, self.size, list(leaves)
        self.size += len(leaves)
        while nodes:
            if index & 1:
                # The first stands at the right of a pair, whose left node is the last peak.
                nodes = [self._peaks.pop(), *nodes]
            if len(nodes) & 1:
                # The last has no neighbour yet, and waits as a peak.
                peaks.append(nodes[-1])
            level, index = level + 1, index >> 1
            pairs = zip(nodes[::2], nodes[1::2], strict=False)
            nodes = [sha256(b"\x01" + left + right).digest() for left, right in pairs]
            if nodes:
                completed.append((level, index, nodes))
        self._peaks += reversed(peaks)
        return completed

    def root(self) -> bytes:
        """The root over all leaves added so far."""
        return _fold(self._peaks[::-1]) if self._peaks else EMPTY_ROOT


def _middle(start: int, stop: int) -> int:
    """Split leaves as the RFC does: on the left the largest power of 2 below their number."""
    return start + (1 << ((stop - start - 1).bit_length() - 1))


def _peaks(start: int, stop: int, node: NodeReader) -> list[bytes]:
    """Read the largest complete nodes that cover leaves start to stop, the smallest first.

    `start` must be a multiple of a power of 2 that is no less than the number of leaves.
    """
    width = stop - start
    levels = (level for level in range(width.bit_length()) if width >> level & 1)
    return [node(level, (stop >> level) - 1) for level in levels]


def _fold(peaks: Sequence[bytes]) -> bytes:
    """Join peaks, the smallest first, into the root over them."""
    joined = peaks[0]
    for left in peaks[1:]:
        joined = node_hash(left, joined)
    return joined


def _root_of_range(start: int, stop: int, node: NodeReader) -> bytes:
    return _fold(_peaks(start, stop, node))


def _climb(place: int, last: int) -> tuple[int, int]:
    """Pass over the levels on which a node at the right edge has no neighbour."""
    while place and not place % 2:
        place, last = place // 2, last // 2
    return place, last


def _are_hashes(*values: bytes) -> bool:
    return all(len(value) == HASH_SIZE for value in values)
