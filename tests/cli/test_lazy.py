"""Help is quick and complete: nothing is loaded for it, nothing is listed without words."""

import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import typer.main
from typer._click import Context
from typer.testing import CliRunner

from cli.front import COMMANDS
from cli.main import app
from tests.cli.shell import BY, Shell

ROOT = Path(__file__).parents[2]
HEAVY = (
    "sqlalchemy",
    "msgspec",
    "alembic",
    "reportlab",
    "rich",
    "segno",
    "ledger.store",
    "ledger.domain",
)
LISTING = """
import sys
sys.argv = ["pottle", *sys.argv[1:]]
from cli.main import app
from tests.cli.shell import BY, Shell
from tests.cli.shell import BY, Shell
try:
    app()
finally:
    print(*sorted(sys.modules), sep="\\n", file=sys.stderr)
"""


def loaded_by(*args: str) -> set[str]:
    done = subprocess.run(
        [sys.executable, "-c", LISTING, *args],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    return set(done.stderr.split())


@pytest.mark.parametrize("args", [["--help"], ["add", "--help"], ["material", "--help"]])
def test_help_loads_neither_the_store_nor_the_papers(args: list[str]) -> None:
    loaded = loaded_by(*args)
    assert "cli.main" in loaded
    assert not {name for name in HEAVY if name in loaded}


def test_a_command_that_reads_loads_the_store_and_not_the_papers(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "cli.program", "stock"],
        cwd=ROOT,
        env={"POTTLE_LEDGER": str(tmp_path / "none.db")},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 5
    assert "ledger.store" in done.stderr
    assert not {name for name in ("sqlalchemy", "reportlab") if name in done.stderr}


@pytest.mark.parametrize(
    ("options", "answers"),
    [((), set()), (("--json",), {"reports.json.desk.recorded", "reports.json.kit.answer"})],
    ids=["in words", "as JSON"],
)
def test_a_command_at_the_bench_loads_no_answer_but_its_own(
    shell: Shell, options: tuple[str, ...], answers: set[str]
) -> None:
    done = subprocess.run(
        [sys.executable, "-c", LISTING, "note", "-", "Swept.", *options],
        cwd=ROOT,
        env={"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": BY},
        capture_output=True,
        text=True,
        check=True,
    )
    loaded = set(done.stderr.split())
    told = {name for name in loaded if name.startswith("reports.json.")}
    assert {name for name in told if name.count(".") == 3} == answers
    assert "sqlalchemy" not in loaded


COMMON = (
    ("start", "--product", "Swept", "--kind", "essence", "--target", "500mL", "--code", "SW-1"),
    ("lot", "SW-1"),
    ("trace", "SW-1"),
    ("stock",),
    ("due",),
    ("journal",),
    ("formula", "list"),
)


def test_common_commands_do_not_load_what_only_servers_and_new_books_need(shell: Shell) -> None:
    code = (
        "import sys, contextlib\n"
        "from cli.main import app\n"
        "for words in " + repr(COMMON) + ":\n"
        "    sys.argv = ['pottle', *words]\n"
        "    with contextlib.suppress(SystemExit):\n"
        "        app()\n"
        "    assert 'ledger.service.desk.book' in sys.modules\n"
        "    assert 'sqlalchemy' not in sys.modules, words\n"
    )
    subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        env={"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": BY},
        capture_output=True,
        check=True,
    )


def verbs() -> list[tuple[str, ...]]:
    group: Any = typer.main.get_command(app)
    found: list[tuple[str, ...]] = []
    for name in group.list_commands(Context(group)):
        command = group.get_command(Context(group), name)
        below = getattr(command, "commands", None)
        found += [(name, verb) for verb in below] if below else [(name,)]
    return found


@pytest.mark.parametrize("verb", verbs(), ids=" ".join)
def test_every_verb_has_words_of_help_for_itself_and_all_it_takes(verb: tuple[str, ...]) -> None:
    done = CliRunner().invoke(app, [*verb, "--help"], prog_name="pottle")
    assert done.exit_code == 0
    assert done.stdout.startswith(f"Usage: pottle {' '.join(verb)} ")
    command: Any = typer.main.get_command(app)
    for name in verb:
        command = command.get_command(Context(command), name)
    assert command.help.endswith(".")
    assert [taken.name for taken in command.params if not taken.help] == []
    assert max(map(len, done.stdout.splitlines())) <= 80


def test_the_help_lists_every_verb_with_its_whole_sentence() -> None:
    listed = CliRunner().invoke(app, ["--help"], prog_name="pottle").stdout
    for verb in verbs():
        assert f"\n  {verb[0]} " in listed
    assert "..." not in listed.partition("Learning it:")[2]


def test_every_line_of_the_help_is_the_command_s_own() -> None:
    group: Any = typer.main.get_command(app)
    own = {name: group.get_command(Context(group), name).help for name in COMMANDS}
    assert {name: line for name, (_, line) in COMMANDS.items()} == own
