"""Every page of the guide is played, and prints to the last character what it says it prints.

The blocks of a page are run in order in a folder in which those of the first hour were run before:
of ``console`` every command, compared with the output below it; of ``sh`` every line, which must
end well; ``toml NAME`` is saved under its name. Blocks of other languages are only shown. With the
environment variable ``POTTLE_GOLDEN=write`` the pages get the output of today instead.
"""

import os
import re
import shlex
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, tzinfo
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import typer
from typer._click import Context
from typer.testing import CliRunner

from cli.front import COMMANDS
from cli.kit.call import Call
from cli.main import app
from cli.screens.copies import demo
from cli.screens.guide.guide import TOPICS
from ledger.service.desk.book import wall_clock
from ledger.service.masters.formula_file import HEAD, KEEPING, LINE, STEPS
from tests.claims import man_page
from tests.claims.guide_reference import reference
from tests.cli.shell import BY
from tests.demonstration import AFTER_SEASON, demonstration

GUIDE = Path(__file__).parents[2] / "cli" / "guide"
FIRST = "first-hour"
WRITES = os.environ.get("POTTLE_GOLDEN") == "write"
NOW = datetime(2026 if WRITES else 2027, 5, 4, 9, 0, tzinfo=UTC)
"""When pages are played: a year later than they are written, so that they say the same on any day
until the oil in them expires."""
FENCE = re.compile(r"^```(\S*) ?(\S*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
SPAN_COMMAND = re.compile(r"`pottle ([a-z]+)\b")
SPAN_TOPIC = re.compile(r"`pottle guide ([a-z-]+)`")
PROMPT = "$ "


@dataclass(slots=True)
class Terminal:
    """A terminal 80 columns wide whose answers go into a pipe; its commands run in this process."""

    patch: pytest.MonkeyPatch
    code: int = 0
    """How the last command ended."""

    def type(self, line: str) -> str:
        """Run a line as a shell does, and return all that it prints."""
        first, *rest = shlex.split(line)
        if first == "pottle":
            given = Path(rest.pop()).read_text(encoding="utf-8") if "<" in rest else None
            words = [word for word in rest if word != "<"]
            done = CliRunner().invoke(app, words, input=given, prog_name="pottle")
            self.code = done.exit_code
            return done.output
        if first == "export":
            self.patch.setenv(*rest[0].split("=", 1))
            return ""
        if line == "echo $?":
            return f"{self.code}\n"
        other = subprocess.run(["sh", "-c", line], capture_output=True, text=True, check=False)
        self.code = other.returncode
        return other.stdout + other.stderr


def played(page: str, terminal: Terminal) -> str:
    """Run all blocks of a page; return it with what is printed now in place of what it says."""
    return FENCE.sub(lambda block: _block(terminal, *block.groups()), page)


def _block(terminal: Terminal, language: str, name: str, text: str) -> str:
    if language == "console":
        text = "".join(_answered(terminal, text))
    elif language == "sh":
        for line in text.splitlines():
            said = terminal.type(line)
            assert terminal.code == 0, (line, said)
    elif name:
        Path(name).write_text(text, encoding="utf-8")
    head = f"{language} {name}" if name else language
    return f"```{head}\n{text}```"


def _answered(terminal: Terminal, text: str) -> Iterator[str]:
    for line in text.splitlines():
        if line.startswith(PROMPT):
            yield f"{line}\n{terminal.type(line.removeprefix(PROMPT))}"


def check_page(path: Path, now: str) -> None:
    """See that a page says what is printed now, or let it say so."""
    if WRITES:
        path.write_text(now, encoding="utf-8")
    else:
        assert path.read_text(encoding="utf-8") == now


class StandingClock(datetime):
    """A clock that stands still."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> datetime:  # type: ignore[override]
        return NOW.astimezone(tz)


def new_terminal(patch: pytest.MonkeyPatch, folder: Path) -> Terminal:
    """Sit down in a folder, with nothing set that Pottle looks at."""
    for name in [name for name in os.environ if name.startswith("POTTLE_")]:
        patch.delenv(name)
    patch.setenv("COLUMNS", "80")
    patch.setitem(wall_clock.__globals__, "datetime", StandingClock)
    patch.chdir(folder)
    return Terminal(patch)


@pytest.fixture(scope="module")
def first_hour(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """Return a folder in which the first hour was played, and its page as it would be now."""
    folder = tmp_path_factory.mktemp(FIRST)
    with pytest.MonkeyPatch.context() as patch:
        return folder, played(page_of(FIRST), new_terminal(patch, folder))


@pytest.fixture
def terminal(
    first_hour: tuple[Path, str],
    tmp_path: Path,
    tmp_path_factory: pytest.TempPathFactory,
    monkeypatch: pytest.MonkeyPatch,
) -> Terminal:
    """Sit down where the first hour was played, as who played it; the demonstration was played."""

    def demonstrate(_call: Call, folder: Path, today: str | None) -> None:
        assert today == f"{AFTER_SEASON.date()}"
        monkeypatch.setattr(demo, "demonstrate", really)
        demonstration(tmp_path_factory, folder)

    really = demo.demonstrate
    monkeypatch.setattr(demo, "demonstrate", demonstrate)
    shutil.copytree(first_hour[0], tmp_path, dirs_exist_ok=True)
    found = new_terminal(monkeypatch, tmp_path)
    found.type(f"export POTTLE_BY={BY}")
    return found


def test_the_first_hour_says_what_is_really_printed(first_hour: tuple[Path, str]) -> None:
    check_page(GUIDE / f"{FIRST}.md", first_hour[1])


@pytest.mark.parametrize("topic", [topic for topic in TOPICS if topic != FIRST])
def test_a_page_says_what_is_really_printed(topic: str, terminal: Terminal) -> None:
    check_page(GUIDE / f"{topic}.md", played(page_of(topic), terminal))


def test_a_wrong_answer_in_a_page_is_found(terminal: Terminal) -> None:
    page = "```console\n$ pottle stock --of water\nNothing.\n```\n"
    now = played(page, terminal)
    assert now.startswith("```console\n$ pottle stock --of water\nlot ")
    assert "Nothing." not in now


def page_of(topic: str) -> str:
    return (GUIDE / f"{topic}.md").read_text(encoding="utf-8")


def test_there_is_a_page_for_every_topic_and_no_other() -> None:
    assert {path.stem for path in GUIDE.iterdir()} == set(TOPICS)


@pytest.mark.parametrize("topic", TOPICS)
def test_a_page_is_formed_as_all_are(topic: str) -> None:
    page = page_of(topic)
    title, blank, lead = page.splitlines()[:3]
    assert (title[:2], blank, lead[:1]) == ("# ", "", lead[:1].upper())
    languages = {language for language, _, _ in FENCE.findall(page)}
    assert languages <= {"console", "sh", "toml", "text", "sql"}
    assert page.count("\n```") == 2 * len(FENCE.findall(page))


@pytest.mark.parametrize("topic", TOPICS)
def test_every_command_and_option_that_a_page_names_is_one_of_ours(topic: str) -> None:
    prose = FENCE.sub("", page_of(topic))
    wrong = set(SPAN_COMMAND.findall(prose)) - set(COMMANDS)
    assert not wrong
    assert set(SPAN_TOPIC.findall(prose)) <= set(TOPICS)
    spans = "".join(re.findall(r"`[^`]*`", prose))
    assert set(re.findall(r"--[a-z][a-z-]*", spans)) <= all_options()


@cache
def all_options() -> frozenset[str]:
    """Return every option that any command takes."""
    groups: list[Any] = [typer.main.get_command(app)]
    found = {"--help"}
    while groups:
        command = groups.pop()
        found |= {word for param in command.params for word in param.opts}
        names = command.list_commands(Context(command)) if hasattr(command, "commands") else ()
        groups += [command.get_command(Context(command), name) for name in names]
    return frozenset(found)


def test_every_word_of_a_formula_is_explained() -> None:
    words = page_of("formulas").partition("## Every word of the file")[2]
    told = re.findall(r"^- ((?:`[a-z-]+`(?:, )?)+):", words, re.MULTILINE)
    explained = {key for line in told for key in re.findall(r"`([a-z-]+)`", line)}
    own = {key for keys in STEPS.values() for key in keys}
    assert explained == {*HEAD, *LINE, *KEEPING, "verb", "words", *own} - {
        "line",
        "step",
        "keeping",
    }
    assert set(
        re.findall(r"`([a-z]+)`", words.partition("- `verb`: ")[2].partition("- ")[0])
    ) == set(STEPS)


def test_the_man_page_is_what_the_commands_say_of_themselves() -> None:
    """`python -m tests.renew` writes it anew."""
    assert man_page.PAGE.read_text(encoding="utf-8") == man_page.page()


def test_the_page_of_all_commands_is_what_the_commands_say_of_themselves() -> None:
    """`python -m tests.renew` writes it anew."""
    assert reference() == page_of("commands")
