"""The recipes of DEVELOPERS.md are followed to the letter, and what they make works."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.claims.recipe_steps import Step, changed, follow, recipe

ROOT = Path(__file__).parents[2]
TEXT = (ROOT / "DEVELOPERS.md").read_text("utf-8")
KIND = recipe(TEXT, "Add a kind of entry")
COMMAND = recipe(TEXT, "Add a command with screen, JSON and paper")
RULE = recipe(TEXT, "Add a rule")
SENTENCES = "tests/reports/words/entries/test_sentence.py"
"""Holds every kind of entry to its title and its words."""
TRIED = ("-q", "-p", "no:cacheprovider", "-n", "0")
"""How tests are run in a copy, by one process."""
HOUSE = ("cli", "ledger", "reports", "tests", "sample_data", "pyproject.toml", "DEVELOPERS.md")


def files(steps: tuple[Step, ...], *, tests: bool) -> set[str]:
    """Return the files of a recipe, those of tests or those of the source."""
    return {step.file for step in steps if step.file.startswith("tests/") is tests}


@pytest.mark.parametrize(
    ("steps", "source", "tests"),
    [(KIND, 8 - 2, 4 - 1), (COMMAND, 7, 1), (RULE, 1, 1)],
    ids=["kind", "command", "rule"],
)
def test_a_recipe_touches_few_files(steps: tuple[Step, ...], source: int, tests: int) -> None:
    """Of a kind's eight files of source and four of tests, one command writes two and one."""
    assert 0 < len(files(steps, tests=False)) <= source
    assert 0 < len(files(steps, tests=True)) <= tests


@pytest.mark.parametrize(
    ("source", "diff"),
    [("a\n", " b\n+c\n"), ("a\nb\na\n", " a\n+c\n")],
    ids=["not there", "there twice"],
)
def test_a_step_that_does_not_fit_is_refused(source: str, diff: str) -> None:
    with pytest.raises(ValueError, match="These lines stand there not once:"):
        changed(source, diff)


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the house in which all three recipes were followed."""
    copy = tmp_path_factory.mktemp("house")
    for name in HOUSE:
        place = ROOT / name
        if place.is_dir():
            shutil.copytree(place, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copyfile(place, copy / name)
    for steps in (KIND, COMMAND, RULE):
        follow(steps, copy)
    run(
        copy, "-c", "from tests.renew import renew_book, renew_version; renew_book(renew_version())"
    )
    # The golden texts of what is tried below, which the command renews with all others.
    run(copy, "-m", "pytest", *TRIED, SENTENCES, golden="write")
    return copy


def run(house: Path, *words: str, golden: str = "") -> str:
    """Run Python in the copy and return what it says."""
    env = {**os.environ, "PYTHONPATH": str(house), "POTTLE_GOLDEN": golden}
    done = subprocess.run(
        [sys.executable, *words], cwd=house, env=env, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_what_the_recipes_make_passes_the_tests_that_they_bring(house: Path) -> None:
    """With them run those that hold every kind, every command and every migration to account."""
    brought = sorted({step.file for step in (*KIND, *COMMAND, *RULE) if "/test_" in step.file})
    held = (SENTENCES, "tests/cli/test_front.py")
    form = ("tests/store/form", "-k", "not form or not (postgres or server)")
    assert " failed" not in run(house, "-m", "pytest", *TRIED, *brought, *held, *form)
