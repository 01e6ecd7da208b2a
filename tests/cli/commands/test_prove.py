"""`pottle prove`: proofs as a maker and as somebody without her book meets them."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from cli.screens.evidence import prove as module
from tests.cli.asked import check_asked
from tests.cli.cases import seal_text
from tests.cli.shell import Answer, Shell
from tests.cli.shown import check_shown
from tests.domain.evidence.rfc6962 import check_file
from tests.kept.said import check_constants

ROOT = Path(__file__).parents[3]


ESSENCE = "OE-001-5"


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
    made = shell.run("prove", "001-5", "--out", "proof.json")
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


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("prove")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("prove", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
