from pathlib import Path

import pytest

from tests.kept import golden


@pytest.fixture(autouse=True)
def _kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(golden, "GOLDEN", tmp_path)
    monkeypatch.delenv("POTTLE_GOLDEN", raising=False)


def test_the_same_text_passes(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes("15 °C\n".encode())
    golden.check_golden("a.txt", "15 °C\n")


@pytest.mark.parametrize(
    "text", ["15 °C", "15 °C\r\n", "16 °C\n", ""], ids=["no end", "other end", "word", "nothing"]
)
def test_any_difference_fails_and_leaves_the_kept_text(tmp_path: Path, text: str) -> None:
    (tmp_path / "a.txt").write_bytes("15 °C\n".encode())
    with pytest.raises(AssertionError):
        golden.check_golden("a.txt", text)
    assert (tmp_path / "a.txt").read_bytes() == "15 °C\n".encode()


def test_the_failure_shows_the_lines_that_differ(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(b"one\ntwo\n")
    with pytest.raises(AssertionError) as raised:
        golden.check_golden("a.txt", "one\nthree\n")
    assert str(raised.value) == (
        "golden/a.txt differs from what is printed now:\n"
        "--- kept\n+++ now\n@@ -1,2 +1,2 @@\n one\n-two\n+three\n"
    )


def test_a_text_never_kept_fails() -> None:
    with pytest.raises(AssertionError):
        golden.check_golden("new.txt", "one\n")


def test_it_is_written_only_when_asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("POTTLE_GOLDEN", "write")
    golden.check_golden("new.txt", "one\n")
    assert (tmp_path / "new.txt").read_bytes() == b"one\n"
