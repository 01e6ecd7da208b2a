"""`pottle verify`: the whole book, against a seal from elsewhere, and what came since."""

from pathlib import Path

import pytest

from cli.screens.evidence import verify as module
from ledger.domain.evidence.seals import in_symbol
from tests.cli.asked import check_asked
from tests.cli.cases import seal_text
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.keeper import copy_book
from tests.kept.said import check_constants
from tests.reports.pdf.readback import images_of, symbols_of, texts_of


def test_a_book_of_one_entry_is_verified_in_the_singular(bare: Shell) -> None:
    bare.run("seal", "--out", "seal.txt")
    first = "1 entry, all as it was written; tables, tree and guards fit."
    assert bare.run("verify").lines[0] == first
    assert bare.run("verify", "--seal", "seal.txt").lines[0] == first
    assert bare.run("verify", "--since", "seal.txt").lines[0] == (
        "1 entry, none of them since the seal; the guards fit."
    )
    bare.run("person", "add", "AB", "Ada Brook")
    assert bare.run("verify", "--seal", "seal.txt").lines[2] == (
        "The seal fits: its 1 entry is the beginning of this book, and 1 came after."
    )


def test_an_older_seal_is_the_beginning_of_the_book(shell: Shell) -> None:
    text = seal_text(shell)
    shell.run("seal", "--out", "seal.txt")
    shell.run("note", "-", "More.")
    new = seal_text(shell).splitlines()[2]
    for given in ("seal.txt", text, text.upper().replace("\n", " ")):
        assert shell.run("verify", "--seal", given).lines == [
            "39 entries, all as they were written; tables, tree and guards fit.",
            new,
            "The seal fits: its 38 entries are the beginning of this book, and 1 came after.",
        ]
    assert shell.run("verify", "--since", "seal.txt").lines == [
        "39 entries; all after entry 38 are as they were written, and the ones before were not "
        "read again.",
        new,
        "The seal fits: its 38 entries are the beginning of this book, and 1 came after.",
    ]
    assert shell.run("verify", "--since", seal_text(shell)).lines == [
        "39 entries, none of them since the seal; the guards fit.",
        new,
        "The seal is of this book as it is now.",
    ]


def test_what_came_after_the_last_verification_here_is_read_alone(
    shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    assert shell.run("verify", "--since-last").lines[:2] == [
        "No verification of this book is remembered at this device, so all of it was read.",
        "38 entries, all as they were written; tables, tree and guards fit.",
    ]
    shell.run("note", "-", "More.")
    found = shell.run("verify", "--since-last")
    assert found.lines[0] == (
        "39 entries; all after entry 38 are as they were written, and the ones before were not "
        "read again."
    )
    assert shell.run("verify", "--since-last", "--json").json["read_after"] == 39
    both = shell.run("verify", "--since-last", "--since", "seal.txt")
    assert (both.exit_code, both.complaints) == (
        2,
        [
            "--since and --since-last were both given.",
            "  Give --seal to read the whole book, --since to read what came after that seal, or "
            "--since-last to read what came after the last verification here.",
        ],
    )


def test_a_memory_that_does_not_fit_the_book_vouches_for_nothing(
    shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    shell.run("verify")
    file = tmp_path / "state" / "pottle" / "device.json"
    text = file.read_text(encoding="utf-8")
    root = shell.run("seal", "--json").json["root"]
    file.write_text(text.replace(root, "0" * 64), encoding="utf-8")
    found = shell.run("verify", "--since-last", "--json")
    assert (found.exit_code, found.json["read_after"]) == (1, 0)
    file.write_text(text.replace(f'"{root}"', "7"), encoding="utf-8")
    assert shell.run("verify", "--since-last").exit_code == 0


def test_an_older_copy_put_in_the_place_of_the_book_is_found(shell: Shell, tmp_path: Path) -> None:
    kept = copy_book(shell.book, tmp_path / "kept.db")
    shell.run("note", "-", "More.")
    text = seal_text(shell)
    answer = Shell(kept).run("verify", "--seal", text)
    assert answer.exit_code == 1
    assert answer.lines == [
        "38 entries; 1 thing does not fit:",
        "- The seal is of 39 entries and the book has 38: this is an older copy, and entry 39 is "
        "not in it.",
        "Keep this book and the paper as they are, read the seal again, and restore a copy that "
        "fits.",
    ]
    assert Shell(kept).run("verify").exit_code == 0


@pytest.mark.parametrize("paper", ["record {essence}", "label {packed}"])
def test_the_symbol_on_a_paper_says_the_seal_that_verify_takes(shell: Shell, paper: str) -> None:
    assert shell.line(f"{paper} --out paper.pdf").exit_code == 0
    (page, *_) = images_of(Path("paper.pdf").read_bytes())
    (text,) = {found for found in symbols_of(page) if found.startswith("HOUSE ")}
    assert text == in_symbol(seal_text(shell).strip().splitlines())
    shell.run("note", "-", "More.")
    answer = shell.run("verify", "--seal", text)
    assert (answer.exit_code, answer.lines[2][:13]) == (0, "The seal fits")
    assert shell.run("verify", "--seal", texts_of(Path("paper.pdf").read_bytes())[0]).exit_code == 0


def test_two_seals_at_once_are_refused(shell: Shell) -> None:
    answer = shell.run("verify", "--seal", "a", "--since", "b")
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "--seal and --since were both given.",
            "  Give --seal to read the whole book, --since to read what came after that seal, or "
            "--since-last to read what came after the last verification here.",
        ],
    )


def test_a_book_in_a_folder_that_is_kept_alike_on_several_machines_is_remarked_on(
    shell: Shell, tmp_path: Path
) -> None:
    folder = tmp_path / "My Cloud"
    folder.mkdir()
    shell.book.rename(folder / "pottle.db")
    answer = Shell(folder / "pottle.db").run("verify")
    assert answer.exit_code == 0
    assert answer.err == (
        "Note: The book lies in My Cloud, which by its name is kept alike on several machines: "
        "written on two at once, or taken up half way, it is damaged. Keep it elsewhere, and put "
        "copies there: pottle backup DIR\n"
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("verify")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("verify", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
