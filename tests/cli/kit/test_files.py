"""Files that commands write: one that is there stays unless asked."""

import os
from pathlib import Path

import pytest

from cli.kit import files as module
from cli.kit.files import OTHER_NAME, check_place, make_folder, once_recorded, paper_at, write
from ledger.errors import StorageError
from ledger.whole_files import _mask
from reports.kit.boxed import note_boxed
from tests.kept.said import check_constants


def problems_of(out: Path, *, force: bool = False) -> tuple[tuple[str, str], ...]:
    with pytest.raises(StorageError) as raised:
        check_place(out, force=force)
    return raised.value.problems


def test_a_file_that_is_there_stays_unless_asked(tmp_path: Path) -> None:
    there = tmp_path / "there.pdf"
    there.touch()
    assert problems_of(there) == (
        (f"There is a file {there} already; it was left as it is.", OTHER_NAME),
    )
    check_place(there, force=True)
    check_place(tmp_path / "new.pdf", force=False)


def test_a_link_that_leads_nowhere_is_a_file_too(tmp_path: Path) -> None:
    link = tmp_path / "link.pdf"
    link.symlink_to(tmp_path / "gone.pdf")
    assert problems_of(link)[0][0] == f"There is a file {link} already; it was left as it is."


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_or_a_device_keeps_its_name_whatever_is_forced(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.pdf"
    os.mkfifo(pipe)
    assert problems_of(pipe, force=True) == (
        (
            f"{pipe} is no file but a device or a pipe; it was left as it is.",
            "Give the name of a file.",
        ),
    )
    assert pipe.is_fifo()


def test_a_folder_that_is_not_there_and_a_name_that_is_none_are_told(tmp_path: Path) -> None:
    assert problems_of(tmp_path / "none" / "a.pdf", force=True) == (
        (f"There is no folder {tmp_path / 'none'}.", "Make it first, or give another place."),
    )
    long = tmp_path / ("x" * 300)
    assert problems_of(long) == (
        (f"No file can be named {long}: File name too long.", "Give a shorter name."),
    )


def test_what_cannot_be_written_is_told(tmp_path: Path) -> None:
    write(tmp_path / "a.pdf", b"%PDF-", force=False)
    assert (tmp_path / "a.pdf").read_bytes() == b"%PDF-"
    with pytest.raises(StorageError) as raised:
        write(tmp_path, b"%PDF-", force=True)
    assert raised.value.problems == (
        (
            f"The file {tmp_path} could not be written: Is a directory.",
            "Choose a place that you may write in.",
        ),
    )
    assert [path.name for path in tmp_path.iterdir()] == ["a.pdf"]


def test_a_folder_is_made_once_with_those_above_it_where_asked_and_private_where_asked(
    tmp_path: Path,
) -> None:
    make_folder(tmp_path / "shared")
    make_folder(tmp_path / "own", is_private=True)
    make_folder(tmp_path / "a" / "b", parents=True)
    make_folder(tmp_path / "a" / "b")
    rights = [(tmp_path / name).stat().st_mode & 0o077 for name in ("own", "shared")]
    assert rights == [0, 0o077 & ~_mask()]


def test_a_folder_that_cannot_be_made_is_told_with_what_to_do(tmp_path: Path) -> None:
    (tmp_path / "there").touch()
    for folder, why in (("there", "File exists"), ("none/a", "No such file or directory")):
        with pytest.raises(StorageError) as raised:
            make_folder(tmp_path / folder, instead="Give another place.")
        assert raised.value.problems == (
            (f"The folder {tmp_path / folder} could not be made: {why}.", "Give another place."),
        )


@pytest.mark.parametrize("name", ["book.db", "book.db-wal", "book.jsonl"])
def test_no_book_is_written_over_whatever_is_forced(name: str, tmp_path: Path) -> None:
    (tmp_path / "book.db").write_bytes(b"SQLite format 3\0...")
    (tmp_path / "book.db-wal").write_bytes(b"frames")
    (tmp_path / "book.jsonl").write_text('{"entries":1,"format":"pottle book 1"}\n')
    assert problems_of(tmp_path / name, force=True) == (
        (
            f"{tmp_path / name} is a book, or a copy of one; it was left as it is.",
            "Give another name. No book is ever written over, with --force neither.",
        ),
    )


def draw_beside(out: Path) -> None:
    with paper_at(out, force=False) as paper:
        paper.put(b"%PDF-")
        out.write_text("Mine.")


def draw_and_fail(out: Path) -> None:
    with (
        once_recorded("Entry 41 is recorded.", "pottle label again"),
        paper_at(out, force=False) as paper,
    ):
        paper.put(b"half")
        raise OSError(28, "No space left on device")


def test_what_fails_after_a_recording_says_what_was_recorded(tmp_path: Path) -> None:
    with pytest.raises(StorageError) as raised:
        draw_and_fail(tmp_path / "a.pdf")
    assert raised.value.problems == (
        (
            "Entry 41 is recorded. Its paper could not be made: The file "
            f"{tmp_path / 'a.pdf'} could not be written: No space left on device.",
            "pottle label again",
        ),
    )
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_comes_there_while_a_paper_is_drawn_stays_as_it_is(tmp_path: Path) -> None:
    out = tmp_path / "a.pdf"
    with pytest.raises(StorageError) as raised:
        draw_beside(out)
    assert raised.value.problems == (
        (f"There is a file {out} already; it was left as it is.", OTHER_NAME),
    )
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("a.pdf", "Mine.")]


def test_boxed_characters_are_told_beside_the_answer(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with paper_at(tmp_path / "a.pdf", force=False) as paper:
        note_boxed("☃")
        paper.put(b"%PDF-")
    assert capsys.readouterr().err == (
        "Note: No font here has a shape for “☃” (U+2603 SNOWMAN); its number stands in a box on "
        "the paper.\n"
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
