"""A slip in a command's call of its verb is seen before anything runs, by the type checker."""

import subprocess
import sys
from pathlib import Path

import pytest

from cli.kit import record as looked_at
from tests.kept.said import check_constants

ROOT = Path(__file__).parents[3]
COMMAND = """\
from cli.kit.call import Call
from cli.kit.record import record
from ledger.service.bench.add import add


def body(call: Call) -> None:
    record(call, add, lot="X", source="Y", amount="1mL")
"""
SLIPS = {
    "word": (
        "source=",
        "sauce=",
        '7: error: Unexpected keyword argument "sauce" for "record"  [call-arg]',
    ),
    "verb": (
        "import add",
        "import ad as add",
        '3: error: Module "ledger.service.bench.add" has no attribute "ad"; maybe "add"?  '
        "[attr-defined]",
    ),
    "module": (
        "bench.add",
        "bench.ad",
        '3: error: Skipping analyzing "ledger.service.bench.ad": module is installed, but missing '
        "library stubs or py.typed marker  [import-untyped]",
    ),
}
"""What is put in the place of what, and what the checker says of it."""


@pytest.fixture(scope="module")
def errors(tmp_path_factory: pytest.TempPathFactory) -> set[str]:
    """What the checker says of the command as it is right, and of it with each slip.

    All in one run, with the house's own settings, which are strict, and so with its own cache.
    """
    folder = tmp_path_factory.mktemp("commands")
    texts = {name: COMMAND.replace(right, slip) for name, (right, slip, _) in SLIPS.items()}
    for name, text in {"right": COMMAND, **texts}.items():
        (folder / f"{name}_command.py").write_text(text, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "mypy", *map(str, folder.iterdir())],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (1, ""), done.stdout
    told = [line.partition(":") for line in done.stdout.splitlines() if ": error: " in line]
    return {f"{Path(where).name}:{what}" for where, _, what in told}


@pytest.mark.parametrize("name", SLIPS)
def test_a_misspelt_word_verb_or_module_is_an_error_where_it_stands(
    name: str, errors: set[str]
) -> None:
    assert f"{name}_command.py:{SLIPS[name][2]}" in errors


def test_a_call_without_a_slip_is_none(errors: set[str]) -> None:
    assert len(errors) == len(SLIPS)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(looked_at)
