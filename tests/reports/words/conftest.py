"""Books to tell of in words: one with mended entries, one by a formula."""

from pathlib import Path

import pytest

from tests.keeper import Keeper
from tests.path import Lots, make_essence, receive_all
from tests.service.orange import make_orange


@pytest.fixture
def made(sqlite_keeper: Keeper) -> tuple[Keeper, Lots, str]:
    """A book with an essence whose oil was corrected and whose look was struck."""
    keeper = sqlite_keeper
    keeper.do("material", code="orange-oil", change=True, caution="Irritates the skin.")
    lots = receive_all(keeper)
    essence = make_essence(keeper, lots)
    oil = next(entry.seq for entry in keeper.entries() if entry.kind == "add")
    look = next(entry.seq for entry in keeper.entries() if entry.kind == "look")
    keeper.do("correct", entry=str(oil), changes="amount=26g", because="misread the scale")
    keeper.do("strike", entry=str(look), because="the wrong lot")
    return keeper, lots, essence


@pytest.fixture
def orange(sqlite_keeper: Keeper, tmp_path: Path) -> tuple[Keeper, str]:
    """A finished batch with one deviation that nobody has reviewed."""
    sqlite_keeper.do("person", initials="CD", name="Cleo Dunn")
    return sqlite_keeper, make_orange(sqlite_keeper, tmp_path)
