"""The photo of a complaint: its hash is kept, or why not is said."""

import tracemalloc
from hashlib import sha256
from pathlib import Path

from cli.screens.goods.complain import hash_of


def test_a_photo_of_any_size_is_hashed_in_little_memory(tmp_path: Path) -> None:
    size = 32 * 2**20
    with (tmp_path / "large.jpg").open("wb") as file:
        file.truncate(size)
    tracemalloc.start()
    try:
        found = hash_of(tmp_path / "large.jpg")
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert found == sha256(bytes(size)).hexdigest()
    assert most < 2 * 2**20
