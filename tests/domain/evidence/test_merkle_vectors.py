"""The tree and its proofs against published vectors, good and bad."""

import json
from base64 import b64decode
from pathlib import Path
from typing import Any

import pytest

from ledger.domain.evidence import merkle

REFERENCE = Path(__file__).parents[2] / "reference/merkle"
# transparency-dev/merkle (Apache-2.0; the LICENSE is beside the files): the leaves and roots of
# testonly/constants.go, and the proofs, good and bad, of testdata/inclusion and /consistency.
VECTORS = json.loads((REFERENCE / "vectors.json").read_text(encoding="utf-8"))
INCLUSION = json.loads((REFERENCE / "inclusion.json").read_text(encoding="utf-8"))["cases"]
CONSISTENCY = json.loads((REFERENCE / "consistency.json").read_text(encoding="utf-8"))["cases"]


def unhex(values: list[str]) -> list[bytes]:
    return [bytes.fromhex(value) for value in values]


LEAVES = [merkle.leaf_hash(data) for data in unhex(VECTORS["leaves"])]


def reader(size: int) -> merkle.NodeReader:
    """The complete nodes of the published tree of this size."""
    return lambda level, index: {
        (level, at): merkle.root(LEAVES[at << level : (at + 1) << level])
        for at in range(size >> level)
    }[level, index]


def test_the_published_leaf_hashes_come_out() -> None:
    assert unhex(VECTORS["leaf_hashes"]) == LEAVES


@pytest.mark.parametrize("size", range(9))
def test_the_published_roots_come_out(size: int) -> None:
    published = bytes.fromhex(VECTORS["roots"][str(size)])
    assert merkle.root(LEAVES[:size]) == published
    assert merkle.root_of_nodes(size, reader(size)) == published


@pytest.mark.parametrize(
    "case", VECTORS["inclusion"], ids=lambda case: f"{case['index']} of {case['size']}"
)
def test_the_tabled_inclusion_paths_come_out_and_verify(case: dict[str, Any]) -> None:
    index, size = case["index"], case["size"]
    path = merkle.inclusion_path(index, size, reader(8))
    assert path == unhex(case["proof"])
    leaf = bytes.fromhex(VECTORS["leaf_hashes"][index])
    root = bytes.fromhex(VECTORS["roots"][str(size)])
    assert merkle.verify_inclusion(index, size, leaf, path, root)


@pytest.mark.parametrize(
    "case", VECTORS["consistency"], ids=lambda case: f"{case['size1']} in {case['size2']}"
)
def test_the_tabled_consistency_paths_come_out_and_verify(case: dict[str, Any]) -> None:
    old_size, size = case["size1"], case["size2"]
    path = merkle.consistency_path(old_size, size, reader(8))
    assert path == unhex(case["proof"])
    old_root, root = unhex([VECTORS["roots"][str(old_size)], VECTORS["roots"][str(size)]])
    assert merkle.verify_consistency(old_size, size, old_root, root, path)


@pytest.mark.parametrize("case", INCLUSION.values(), ids=INCLUSION)
def test_published_inclusion_proofs_good_and_bad_are_told_apart(case: dict[str, Any]) -> None:
    path = [b64decode(part) for part in case["proof"] or []]
    leaf, root = b64decode(case["leafHash"]), b64decode(case["root"])
    holds = merkle.verify_inclusion(case["leafIdx"], case["treeSize"], leaf, path, root)
    assert holds is not case["wantErr"]


@pytest.mark.parametrize("case", CONSISTENCY.values(), ids=CONSISTENCY)
def test_published_consistency_proofs_good_and_bad_are_told_apart(case: dict[str, Any]) -> None:
    path = [b64decode(part) for part in case["proof"] or []]
    old_root, root = b64decode(case["root1"]), b64decode(case["root2"])
    holds = merkle.verify_consistency(case["size1"], case["size2"], old_root, root, path)
    assert holds is not case["wantErr"]


def test_the_published_proofs_are_of_both_kinds() -> None:
    for cases in (INCLUSION, CONSISTENCY):
        assert len(cases) == 98
        assert {case["wantErr"] for case in cases.values()} == {True, False}
