"""The tree and its proofs against the recursive definitions of RFC 6962."""

from hashlib import sha256

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.domain.evidence import merkle
from ledger.domain.evidence.merkle import EMPTY_ROOT, Frontier, NodeReader, leaf_hash
from ledger.errors import RefusedError

DATA = [b"entry %d" % number for number in range(70)]
LEAVES = [leaf_hash(data) for data in DATA]
TREES = st.lists(st.binary(max_size=8), min_size=1, max_size=70)
LAW = settings(deadline=None)


# RFC 6962, section 2.1, word for word: D[n] is the list of data, k the largest power of 2 < n.


def split(n: int) -> int:
    k = 1
    while 2 * k < n:
        k *= 2
    return k


def mth(d: list[bytes]) -> bytes:
    if not d:
        return sha256().digest()
    if len(d) == 1:
        return sha256(bytes([0x00]) + d[0]).digest()
    k = split(len(d))
    return sha256(bytes([0x01]) + mth(d[:k]) + mth(d[k:])).digest()


def audit_path(m: int, d: list[bytes]) -> list[bytes]:
    if len(d) == 1:
        return []
    k = split(len(d))
    if m < k:
        return [*audit_path(m, d[:k]), mth(d[k:])]
    return [*audit_path(m - k, d[k:]), mth(d[:k])]


def subproof(m: int, d: list[bytes], whole: bool) -> list[bytes]:
    if m == len(d):
        return [] if whole else [mth(d)]
    k = split(len(d))
    if m <= k:
        return [*subproof(m, d[:k], whole), mth(d[k:])]
    return [*subproof(m - k, d[k:], False), mth(d[:k])]


class Nodes:
    """Every complete node of a tree, and no other: asking for one that is not fails."""

    def __init__(self, data: list[bytes]) -> None:
        self.data = data
        self.reads = 0

    def __call__(self, level: int, index: int) -> bytes:
        self.reads += 1
        start, stop = index << level, (index + 1) << level
        assert level >= 0, "asked for a level below the leaves"
        assert 0 <= start < stop <= len(self.data), f"({level}, {index}) is not complete"
        return mth(self.data[start:stop])


def grown(data: list[bytes]) -> dict[tuple[int, int], bytes]:
    """The nodes that are kept when the data are appended one at a time."""
    kept: dict[tuple[int, int], bytes] = {}

    def node(level: int, index: int) -> bytes:
        return kept[level, index]

    for size, item in enumerate(data):
        kept[0, size] = leaf = leaf_hash(item)
        for level, index, value in merkle.new_nodes(size, leaf, node):
            assert (level, index) not in kept
            kept[level, index] = value
    return kept


def reader(data: list[bytes]) -> NodeReader:
    kept = grown(data)
    return lambda level, index: kept[level, index]


def test_the_empty_tree_has_the_hash_of_nothing_as_its_root() -> None:
    assert merkle.root([]) == Frontier().root() == EMPTY_ROOT == mth([])
    assert merkle.root_of_nodes(0, Nodes([])) == EMPTY_ROOT


@pytest.mark.parametrize("size", range(1, 71))
def test_every_inclusion_path_is_that_of_the_definition_and_verifies(size: int) -> None:
    data, root = DATA[:size], mth(DATA[:size])
    for index in range(size):
        path = merkle.inclusion_path(index, size, reader(data))
        assert path == audit_path(index, data)
        assert merkle.verify_inclusion(index, size, LEAVES[index], path, root)


@pytest.mark.parametrize("size", range(1, 71))
def test_every_consistency_path_is_that_of_the_definition_and_verifies(size: int) -> None:
    data, root = DATA[:size], mth(DATA[:size])
    for old_size in range(1, size + 1):
        path = merkle.consistency_path(old_size, size, reader(data))
        assert path == subproof(old_size, data, True)
        assert merkle.verify_consistency(old_size, size, mth(data[:old_size]), root, path)


def test_nodes_kept_while_appending_give_the_root_at_every_size() -> None:
    frontier, kept = Frontier(), grown(DATA)
    for size in range(71):
        expected = mth(DATA[:size])
        assert merkle.root(LEAVES[:size]) == expected
        assert merkle.root_of_nodes(size, lambda level, index: kept[level, index]) == expected
        assert frontier.root() == expected
        if size < len(LEAVES):
            frontier.add(LEAVES[size])


def test_appending_keeps_every_complete_node_once_and_no_other() -> None:
    complete = {(level, index) for level in range(7) for index in range(len(DATA) >> level)}
    assert grown(DATA) == {(level, at): Nodes(DATA)(level, at) for level, at in complete}


@LAW
@given(st.lists(st.integers(0, 20), max_size=8))
def test_leaves_appended_together_complete_the_nodes_of_leaves_appended_singly(
    counts: list[int],
) -> None:
    single, many, after = Frontier(), Frontier(), 0
    for count in counts:
        leaves = LEAVES[after : after + count]
        after += count
        expected = {(level, at): node for leaf in leaves for level, at, node in single.add(leaf)}
        found = {
            (level, first + number): node
            for level, first, nodes in many.extend(leaves)
            for number, node in enumerate(nodes)
        }
        assert found == expected
        assert (many.size, many.root()) == (single.size, single.root())


@LAW
@given(TREES, st.data())
def test_any_tree_agrees_with_the_definition(data: list[bytes], draw: st.DataObject) -> None:
    size, nodes = len(data), Nodes(data)
    index = draw.draw(st.integers(0, size - 1), label="index")
    assert merkle.root([leaf_hash(item) for item in data]) == mth(data)
    assert merkle.root_of_nodes(size, nodes) == mth(data)
    assert merkle.inclusion_path(index, size, nodes) == audit_path(index, data)
    assert merkle.consistency_path(index + 1, size, nodes) == subproof(index + 1, data, True)


@LAW
@given(TREES, st.data())
def test_an_older_tree_is_proved_from_the_nodes_of_a_later_one(
    data: list[bytes], draw: st.DataObject
) -> None:
    size = draw.draw(st.integers(1, len(data)), label="size")
    index = draw.draw(st.integers(0, size - 1), label="index")
    later = reader(data)
    assert merkle.root_of_nodes(size, later) == mth(data[:size])
    assert merkle.inclusion_path(index, size, later) == audit_path(index, data[:size])
    expected = subproof(index + 1, data[:size], True)
    assert merkle.consistency_path(index + 1, size, later) == expected


@LAW
@given(TREES, st.integers(0, 70))
def test_a_frontier_taken_up_midway_goes_on_as_one_that_saw_it_all(
    data: list[bytes], size: int
) -> None:
    size = min(size, len(data))
    frontier, kept = Frontier.of_nodes(size, Nodes(data)), reader(data)
    for number in range(size, len(data)):
        leaf = leaf_hash(data[number])
        assert frontier.add(leaf) == merkle.new_nodes(number, leaf, kept)
    assert (frontier.size, frontier.root()) == (len(data), mth(data))


@LAW
@given(TREES, st.data())
def test_any_flipped_bit_in_a_leaf_changes_the_root(data: list[bytes], draw: st.DataObject) -> None:
    leaves = [leaf_hash(item) for item in data]
    index = draw.draw(st.integers(0, len(leaves) - 1), label="leaf")
    before = merkle.root(leaves)
    leaves[index] = flipped(leaves[index], draw.draw(st.integers(0, 255), label="bit"))
    assert merkle.root(leaves) != before


def flipped(value: bytes, bit: int) -> bytes:
    return bytes(byte ^ (1 << bit % 8) * (at == bit // 8) for at, byte in enumerate(value))


@LAW
@given(st.integers(1, 70), st.data())
def test_an_inclusion_proof_holds_for_nothing_but_what_it_proves(
    size: int, draw: st.DataObject
) -> None:
    index = draw.draw(st.integers(0, size - 1), label="index")
    other = draw.draw(st.integers(-1, size + 70).filter(lambda at: at != index), label="other")
    bit = draw.draw(st.integers(0, 255), label="bit")
    leaf, root = LEAVES[index], mth(DATA[:size])
    path = audit_path(index, DATA[:size])
    verify = merkle.verify_inclusion
    assert verify(index, size, leaf, path, root)
    assert not verify(other, size, leaf, path, root)
    assert not verify(index, size, flipped(leaf, bit), path, root)
    assert not verify(index, size, leaf, path, flipped(root, bit))
    assert not verify(index, size, leaf, [*path, root], root)
    for at, part in enumerate(path):
        assert not verify(index, size, leaf, path[:at] + path[at + 1 :], root)
        assert not verify(
            index, size, leaf, [*path[:at], flipped(part, bit), *path[at + 1 :]], root
        )


@LAW
@given(st.integers(2, 70), st.data())
def test_a_consistency_proof_holds_for_nothing_but_what_it_proves(
    size: int, draw: st.DataObject
) -> None:
    old_size = draw.draw(st.integers(1, size - 1), label="old size")
    bit = draw.draw(st.integers(0, 255), label="bit")
    old_root, root = mth(DATA[:old_size]), mth(DATA[:size])
    path = subproof(old_size, DATA[:size], True)
    verify = merkle.verify_consistency
    assert verify(old_size, size, old_root, root, path)
    assert not verify(old_size, size, flipped(old_root, bit), root, path)
    assert not verify(old_size, size, old_root, flipped(root, bit), path)
    assert not verify(old_size, size, old_root, root, [*path, root])
    assert not verify(size, old_size, old_root, root, path)
    for at, part in enumerate(path):
        assert not verify(old_size, size, old_root, root, path[:at] + path[at + 1 :])
        bent = [*path[:at], flipped(part, bit), *path[at + 1 :]]
        assert not verify(old_size, size, old_root, root, bent)


@pytest.mark.parametrize("number", range(1, 6), ids=lambda number: f"entry {number} rewritten")
def test_a_rewritten_book_is_not_consistent_with_an_older_root(number: int) -> None:
    rewritten = [*DATA[:number], b"another", *DATA[number + 1 : 9]]
    path = merkle.consistency_path(6, 9, Nodes(rewritten))
    assert not merkle.verify_consistency(6, 9, mth(DATA[:6]), mth(rewritten), path)


def test_hashes_of_another_length_are_never_part_of_a_proof() -> None:
    one, two = LEAVES[:2]
    root = merkle.node_hash(one, two)
    assert merkle.node_hash(one + two[:1], two[1:]) == root
    assert not merkle.verify_inclusion(0, 2, one + two[:1], [two[1:]], root)
    assert not merkle.verify_consistency(1, 2, one + two[:1], root, [two[1:]])


def test_a_path_longer_than_the_tree_is_high_proves_nothing_even_if_its_hashes_meet() -> None:
    beside, join = LEAVES[9], merkle.node_hash
    assert not merkle.verify_inclusion(0, 1, LEAVES[0], [beside], join(beside, LEAVES[0]))
    old_root, root, path = mth(DATA[:2]), mth(DATA[:3]), subproof(2, DATA[:3], True)
    assert merkle.verify_consistency(2, 3, old_root, root, path)
    higher = join(beside, old_root), join(beside, root)
    assert not merkle.verify_consistency(2, 3, *higher, [*path, beside])
    old_root, root, path = mth(DATA[:3]), mth(DATA[:4]), subproof(3, DATA[:4], True)
    assert merkle.verify_consistency(3, 4, old_root, root, path)
    higher = join(beside, old_root), join(beside, root)
    assert not merkle.verify_consistency(3, 4, *higher, [*path, beside])


@pytest.mark.parametrize("size", [1, 2, 1023, 1024, 1025, 2**20 - 1, 10**9 + 7])
def test_roots_and_proofs_read_a_number_of_nodes_that_grows_with_the_logarithm(size: int) -> None:
    levels = size.bit_length()
    asked: list[tuple[int, int]] = []

    def node(level: int, index: int) -> bytes:
        asked.append((level, index))
        return b"%31d" % level + b"."

    for prove in (
        lambda: merkle.root_of_nodes(size, node),
        lambda: merkle.inclusion_path(size // 3, size, node),
        lambda: merkle.consistency_path(size // 3 + 1, size, node),
        lambda: merkle.new_nodes(size, LEAVES[0], node),
    ):
        asked.clear()
        prove()
        assert len(asked) <= 2 * levels
        assert all((index + 1) << level <= size for level, index in asked)


@pytest.mark.parametrize("index", [-1, 3, 4])
def test_a_leaf_that_is_not_in_the_tree_is_not_proved(index: int) -> None:
    with pytest.raises(RefusedError) as refusal:
        merkle.inclusion_path(index, 3, Nodes(DATA))
    assert str(refusal.value) == (
        f"Leaf {index} cannot be proved to be in a tree of 3 leaves, counted from 0. "
        "Ask for a leaf that is in the tree."
    )


@pytest.mark.parametrize("old_size", [-1, 0, 4])
def test_a_tree_that_is_empty_or_larger_is_not_proved_to_be_a_beginning(old_size: int) -> None:
    with pytest.raises(RefusedError) as refusal:
        merkle.consistency_path(old_size, 3, Nodes(DATA))
    assert str(refusal.value) == (
        f"A tree of {old_size} leaves cannot be proved to be the beginning of one of 3. "
        "Compare with an older tree that has at least one leaf and no more than the newer."
    )
