"""What the README tells a newcomer works as it stands, and prints what it says it prints."""

import re
from pathlib import Path

import pytest
from PIL import Image

from cli.front import COMMANDS
from tests.cli.test_guide_pages import FENCE, PROMPT, check_page, new_terminal, played

README = Path(__file__).parents[2] / "README.md"
MOST_WORDS = 700
MOST_BYTES = 150_000
"""Of a picture."""


def readme() -> str:
    return README.read_text(encoding="utf-8")


def blocks() -> list[str]:
    return [text for _, _, text in FENCE.findall(readme())]


def by_hand() -> str:
    """Return the part that a newcomer types, without the lines that set a machine up."""
    return "## A first batch" + readme().partition("## A first batch")[2]


def test_the_first_batch_by_hand_prints_what_it_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    now = played(by_hand(), new_terminal(monkeypatch, tmp_path))
    check_page(README, readme().replace(by_hand(), now))
    assert (tmp_path / "record.pdf").read_bytes().startswith(b"%PDF")


def test_the_batch_itself_takes_ten_commands() -> None:
    lines = [line.removeprefix(PROMPT) for block in blocks() for line in block.splitlines()]
    acts = [line.split()[1] for line in lines if line.startswith("pottle ")]
    assert acts.index("release") - acts.index("start") + 1 == 10


def test_each_of_the_two_first_commands_is_one_line_that_sets_itself_up() -> None:
    first, second = blocks()[:2]
    for block in (first, second):
        assert block.count("\n") == 1
        assert block.startswith("python3 -m venv .venv && .venv/bin/pip install")
    assert "pottle demo" in first
    assert "-m pytest" in second


def test_every_command_the_readme_names_is_one_of_ours() -> None:
    named = set(re.findall(r"`?pottle ([a-z]+)\b", readme()))
    assert named
    assert named <= set(COMMANDS)


def test_it_is_short() -> None:
    assert len(readme().split()) <= MOST_WORDS


def test_its_pictures_are_there_and_small() -> None:
    pictures = re.findall(r"!\[[^]]+\]\(([^)]+)\)", readme())
    assert len(pictures) == 3
    for place in pictures:
        picture = README.parent / place
        assert picture.stat().st_size < MOST_BYTES
        with Image.open(picture) as shown:
            assert min(shown.size) > 200
