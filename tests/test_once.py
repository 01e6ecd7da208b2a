"""What several tests need is made once, and anybody gets what its maker returned."""

from pathlib import Path

import pytest

from tests.once import made_once


def test_a_second_asker_has_the_folder_and_what_was_told_when_it_was_filled(
    tmp_path_factory: pytest.TempPathFactory,
) -> None:
    asked = []

    def make(folder: Path) -> dict[str, int]:
        asked.append(folder)
        (folder / "book").write_text("kept")
        return {"seq": len(asked)}

    first, second = (made_once(tmp_path_factory, "a book", make) for _ in range(2))
    assert first == second == (asked[0], {"seq": 1})
    assert len(asked) == 1
    assert (first[0] / "book").read_text() == "kept"


def test_workers_of_a_run_share_one_place(
    tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTEST_XDIST_WORKER", "gw1")
    own = tmp_path_factory.mktemp("gw1")
    monkeypatch.setattr(tmp_path_factory, "getbasetemp", lambda: own)
    assert made_once(tmp_path_factory, "shared", str)[0].parent == own.parent
