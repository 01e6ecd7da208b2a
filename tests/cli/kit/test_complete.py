"""Codes of lots complete in the shell, from the book at hand."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from cli.kit import complete as module
from cli.kit.complete import lot_codes
from tests.cli.shell import Shell
from tests.kept.said import check_constants

ROOT = Path(__file__).parents[3]


def completions(line: str, env: dict[str, str]) -> list[str]:
    """Return what a shell is offered after a line, as its script asks for it."""
    done = subprocess.run(
        [sys.executable, "-c", "from cli.main import app; app(prog_name='pottle')"],
        cwd=ROOT,
        env={
            "PATH": os.environ["PATH"],
            "_POTTLE_COMPLETE": "complete_bash",
            "COMP_WORDS": line,
            "COMP_CWORD": str(len(line.split(" ")) - 1),
            **env,
        },
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.stderr == ""
    return done.stdout.split()


@pytest.mark.parametrize(
    ("line", "codes"),
    [
        ("pottle lot O", ["OS-002-M", "OE-001-5"]),
        ("pottle add oe-001-5 s", ["sugar", "spirit", "soo-001-3"]),
        ("pottle receive c", ["cap", "carb"]),
        ("pottle start --kind washed", ["washed-essence"]),
        ("pottle look OE-001-5 c", ["clear", "cloudy"]),
        ("pottle complaints --party Br", ["Bridge", "Street", "Stall"]),
        ("pottle help filt", ["filter"]),
        ("pottle makeup OE-001-5 450mL --with N", ["NS-001-J"]),
        ("pottle trace Z", []),
    ],
)
def test_codes_that_begin_so_are_offered_the_newest_first(
    shell: Shell, line: str, codes: list[str]
) -> None:
    assert completions(line, {"POTTLE_LEDGER": str(shell.book)}) == codes


def test_the_book_named_on_the_line_is_the_one_that_is_read(shell: Shell) -> None:
    assert completions(f"pottle --ledger {shell.book} lot B", {}) == ["BOS-001-S", "BM-002-G"]


def test_the_script_for_bash_completes_in_a_bash(shell: Shell, tmp_path: Path) -> None:
    pottle = tmp_path / "pottle"
    pottle.write_text(
        f"#!{sys.executable}\nimport sys\nsys.path.insert(0, {str(ROOT)!r})\n"
        "from cli.program import run\nrun()\n"
    )
    pottle.chmod(0o700)
    script = (
        'eval "$(_POTTLE_COMPLETE=source_bash pottle)"; COMP_WORDS=(pottle add . sp); '
        'COMP_CWORD=3; _pottle_completion pottle; echo "${COMPREPLY[@]}"'
    )
    env = {"PATH": f"{tmp_path}:{os.environ['PATH']}", "POTTLE_LEDGER": str(shell.book)}
    done = subprocess.run(
        ["bash", "--norc", "-c", script], env=env, capture_output=True, text=True, check=False
    )
    assert (done.stdout, done.stderr) == ("spirit\n", "")


@pytest.mark.parametrize("shell_name", ["zsh", "fish"])
def test_zsh_and_fish_are_offered_the_same(shell: Shell, shell_name: str) -> None:
    env = {"_TYPER_COMPLETE_ARGS": "pottle add . sp", "POTTLE_LEDGER": str(shell.book)}
    asked = {**env, "_POTTLE_COMPLETE": f"complete_{shell_name}"}
    told = completions("pottle add . sp", {**asked, "_TYPER_COMPLETE_FISH_ACTION": "get-args"})
    assert "spirit" in " ".join(told)


@pytest.mark.parametrize("where", ["none.db", "file", "postgresql://localhost/book", "\0"])
def test_whatever_is_wrong_with_the_book_there_is_nothing_to_offer(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, where: str
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "file").write_text("no book at all, only a long line of words " * 20)
    assert lot_codes(where) == []
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
