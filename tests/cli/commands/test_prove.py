"""Seals and proofs at the prompt, as a maker and as somebody without her book meets them."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.shell import Answer, Shell
from tests.domain.evidence.rfc6962 import check_file
from tests.keeper import copy_book
from tests.reports.pdf.readback import images_of, symbols_of, texts_of

ROOT = Path(__file__).parents[3]
ESSENCE = "OE-001-5"


def seal_text(shell: Shell) -> str:
    return shell.run("seal").out


def test_a_seal_is_three_lines_in_words_in_a_file_and_for_machines(shell: Shell) -> None:
    answer = shell.run("seal", "--out", "seal.txt")
    house, entries, root = answer.lines
    assert (house, entries) == ("House Wren & Co", "Entries 38")
    assert Path("seal.txt").read_text(encoding="utf-8") == answer.out
    assert shell.run("seal", "--json").json == {
        "house": "Wren & Co",
        "entries": 38,
        "root": root.removeprefix("Root "),
        "lines": [house, entries, root],
        "path": None,
    }
    again = shell.run("seal", "--out", "seal.txt")
    assert (again.exit_code, again.out) == (5, "")
    assert again.complaints[0] == "There is a file seal.txt already; it was left as it is."


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
    (text,) = {found for found in symbols_of(page) if found.startswith("House ")}
    assert text == seal_text(shell).strip()
    shell.run("note", "-", "More.")
    answer = shell.run("verify", "--seal", text)
    assert (answer.exit_code, answer.lines[2][:13]) == (0, "The seal fits")
    assert shell.run("verify", "--seal", texts_of(Path("paper.pdf").read_bytes())[0]).exit_code == 0


def test_two_seals_at_once_are_refused(shell: Shell) -> None:
    answer = shell.run("verify", "--seal", "a", "--since", "b")
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "Both --seal and --since were given.",
            "  Give --seal to read the whole book, or --since to read what came after the seal.",
        ],
    )


@pytest.mark.parametrize(
    ("given", "complaint"),
    [
        ("none.txt", "There is no file none.txt with a seal, and the text is none itself."),
        ("x" * 5000, f"There is no file {'x' * 5000} with a seal, and the text is none itself."),
        ("\x00", "There is no file U+0000 with a seal, and the text is none itself."),
        ("bad.txt", "The file bad.txt is no text in UTF-8."),
        ("big.txt", "The file big.txt is larger than 1000000 bytes."),
        (
            "House Wren & Co\nEntries 38\nRoot 12",
            "The seal's root has 2 characters of 0-9 and a-f, not 64.",
        ),
    ],
    ids=["no file", "long", "no path", "no text", "large", "damaged"],
)
def test_a_seal_that_cannot_be_read_is_refused(shell: Shell, given: str, complaint: str) -> None:
    Path("bad.txt").write_bytes(b"\xff\xfe")
    Path("big.txt").write_bytes(b"x" * 1_000_001)
    answer = shell.run("verify", "--seal", given)
    assert (answer.exit_code, answer.complaints[0]) == (2, complaint)


def without_the_book(*args: str) -> Answer:
    """Run the command in a process that cannot load the store or SQLAlchemy."""
    code = (
        "import sys\n"
        "for name in ('sqlalchemy', 'alembic', 'ledger.store', 'ledger.service', 'sqlite3'):\n"
        "    sys.modules[name] = None\n"
        "from cli.main import run\n"
        "run()\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *args],
        env={**os.environ, "PYTHONPATH": str(ROOT), "POTTLE_LEDGER": "/nowhere/pottle.db"},
        capture_output=True,
        text=True,
        check=False,
    )
    return Answer(done.returncode, done.stdout, done.stderr)


def test_a_proof_is_checked_without_the_book_and_its_database(shell: Shell) -> None:
    text = seal_text(shell)
    made = shell.run("prove", "1-5", "--out", "proof.json")
    assert made.lines == [
        f"The 11 entries about {ESSENCE} and their proofs are in proof.json.",
        *text.splitlines(),
        "Anybody can check it without this book: pottle prove --check proof.json",
    ]
    assert check_file(Path("proof.json").read_text(encoding="utf-8")) == []
    answer = without_the_book("prove", "--check", "proof.json", "--seal", text)
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[0] == f"{ESSENCE}: 11 entries, all in the book of the seal given:"
    assert answer.lines[1:4] == text.splitlines()
    assert len(answer.lines) == 4 + 11 + 1
    assert "started: " in answer.lines[4]
    own = without_the_book("prove", "--check", "proof.json")
    assert own.lines[-1] == (
        "A seal from elsewhere shows that this one is not made up: give it with --seal."
    )


def test_a_proof_that_was_changed_is_a_finding(shell: Shell) -> None:
    shell.run("prove", ESSENCE, "--out", "proof.json")
    path = Path("proof.json")
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("30mL", "31mL", 1), encoding="utf-8")
    answer = without_the_book("prove", "--check", "proof.json")
    assert (answer.exit_code, answer.err) == (1, "")
    assert answer.lines[0] == f"{ESSENCE}: 1 thing does not fit:"
    assert answer.lines[1].endswith("is not in the book of the seal as it is told here.")
    assert answer.lines[2] == (
        "Do not rely on it; ask for the proof again, made from a book that verifies."
    )
    plain = without_the_book("prove", "--check", "proof.json", "--json")
    assert (plain.exit_code, plain.json["ok"]) == (1, False)


def test_a_proof_against_an_older_seal_is_made_for_whoever_holds_it(shell: Shell) -> None:
    older = seal_text(shell)
    shell.run("note", ESSENCE, "Later.")
    shell.run("prove", ESSENCE, "--out", "new.json")
    shell.run("prove", ESSENCE, "--out", "old.json", "--seal", older)
    assert without_the_book("prove", "--check", "old.json", "--seal", older).exit_code == 0
    other = without_the_book("prove", "--check", "new.json", "--seal", older)
    assert other.exit_code == 1
    assert other.lines[1] == (
        "- The proof is made against a seal of 39 entries, and the one given is of 38: ask for a "
        "proof against that seal (pottle prove LOT --seal ...)."
    )


@pytest.mark.parametrize(
    "args",
    [("prove",), ("prove", ESSENCE), ("prove", "--out", "x.json")],
    ids=["nothing", "no file", "no lot"],
)
def test_a_proof_needs_a_lot_and_a_file(shell: Shell, args: tuple[str, ...]) -> None:
    answer = shell.run(*args)
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "A proof needs a lot and a file to write to.",
            "  pottle prove LOT --out FILE writes one; pottle prove --check FILE checks one.",
        ],
    )


def test_a_missing_proof_is_said(shell: Shell) -> None:
    answer = shell.run("prove", "--check", "none.json")
    assert (answer.exit_code, answer.complaints) == (
        5,
        [
            "The file none.json could not be read: No such file or directory.",
            "  Check its name and rights.",
        ],
    )
