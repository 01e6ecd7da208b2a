"""Progress is shown on a terminal only, and only when the work takes long."""

import io
import time
from collections.abc import Callable
from pathlib import Path
from types import ModuleType, SimpleNamespace
from unittest.mock import Mock

import pytest

from cli.kit import progress as module
from cli.kit.progress import progress, waiting
from cli.screens.copies import copied, demo, rehearsal, take_in
from tests.cli.shell import Shell
from tests.kept.said import check_constants


class Terminal(io.StringIO):
    """A stream that is a terminal, and shows what it was told to show."""

    shown = ""

    def isatty(self) -> bool:
        return True

    def flush(self) -> None:
        self.shown = self.getvalue()


def shown(
    monkeypatch: pytest.MonkeyPatch,
    out: io.StringIO,
    patience_s: float = -1,
    steps: tuple[int, ...] = (5, 10),
) -> str:
    monkeypatch.setattr("sys.stderr", out)
    monkeypatch.setattr("cli.kit.progress.PATIENCE_S", patience_s)
    with progress("Reading") as tick:
        for done in steps:
            tick(done, steps[-1])
            assert not isinstance(out, Terminal) or out.shown == out.getvalue()
    return out.shown if isinstance(out, Terminal) else out.getvalue()


def test_a_terminal_shows_how_far_it_is_and_clears_the_line(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    told = shown(monkeypatch, Terminal())
    assert told == "\rReading: 5 of 10\rReading: 10 of 10\r\x1b[K"


def test_it_is_told_after_a_while_ten_times_a_second_and_at_the_end(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Ticks at 1.0 s, which is no longer than the patience, and at 1.1, 1.15, 1.25 and 1.3 s."""
    times = iter([0.0, 1.0, 1.1, 1.15, 1.25, 1.3])
    monkeypatch.setattr("cli.kit.progress.time", SimpleNamespace(monotonic=lambda: next(times)))
    told = shown(monkeypatch, Terminal(), patience_s=1.0, steps=(1, 2, 3, 4, 5))
    assert told == "\rReading: 2 of 5\rReading: 4 of 5\rReading: 5 of 5\r\x1b[K"


def test_a_pipe_and_short_work_show_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    assert shown(monkeypatch, io.StringIO()) == ""
    assert shown(monkeypatch, Terminal(), patience_s=60) == ""


def test_quiet_work_shows_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stderr", out)
    with progress("Reading", quiet=True) as tick:
        tick(10, 10)
    assert out.getvalue() == ""


def test_long_work_of_which_nothing_is_known_says_that_it_goes_on(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stderr", out)
    monkeypatch.setattr("cli.kit.progress.LONG_S", 0.01)
    with waiting():
        until = time.monotonic() + 5
        while not out.shown and time.monotonic() < until:
            time.sleep(0.01)
    assert out.shown == "\rWorking; Ctrl-C breaks it off.\r\x1b[K"


def test_short_work_and_work_that_tells_how_far_it_is_say_nothing_besides(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    out = Terminal()
    monkeypatch.setattr("sys.stderr", out)
    with waiting():
        pass
    monkeypatch.setattr("cli.kit.progress.LONG_S", 0.0)
    with progress("Reading"), waiting():
        time.sleep(0.05)
    assert out.getvalue() == ""


LONG = {
    "trace {oil}": "Tracing",
    "verify": "Verifying",
    "backup . --json": "",
    "backup .": "Backing up",
    "export book.jsonl": "Exporting",
    "restore book.jsonl --to restored.db": "Restoring",
    "import --book book.jsonl --ledger imported.db": "Importing",
    "recall {oil} --because haze": "Recalling",
}
"""Long work with its word."""


def test_long_work_says_what_it_does_and_nothing_where_machines_read(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("cli.kit.progress.PATIENCE_S", -1)
    monkeypatch.setattr("typer.testing._NamedTextIOWrapper.isatty", lambda _: True)
    for command, word in LONG.items():
        answer = shell.line(command)
        assert answer.exit_code == 0, (command, answer.err)
        told = {part.partition(":")[0] for part in answer.err.split("\r") if " of " in part}
        assert told == ({word} if word else set()), command


class BegunError(Exception):
    """Long work was begun, with its word."""


def begun(what: str, *, quiet: bool) -> None:
    raise BegunError(what, quiet)


@pytest.mark.parametrize("quiet", [True, False])
@pytest.mark.parametrize(
    ("module", "work", "word"),
    [
        (copied, lambda call: copied.bring_up(call, Path()), "Upgrading"),
        (rehearsal, lambda call: rehearsal.show_rehearsal(call, Path()), "Rehearsing"),
        (take_in, lambda call: tables_taken(call), "Importing"),
        (demo, lambda call: demo.play_into(call, Mock(), Path()), "Playing the season"),
        (demo, lambda call: looked_into(quiet=call.json), "Verifying"),
    ],
)
def test_work_that_a_test_does_not_wait_for_says_what_it_does_unless_a_machine_reads(
    module: ModuleType,
    work: Callable[[Mock], None],
    word: str,
    quiet: bool,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(module, "progress", begun)
    for name in {"traced", "init", "start_time", "_place_of_plan"} & vars(module).keys():
        monkeypatch.setattr(module, name, Mock())
    with pytest.raises(BegunError) as raised:
        work(Mock(json=quiet))
    assert raised.value.args == (word, quiet)


def tables_taken(call: Mock) -> None:
    take_in.take_tables(call, Path(), None, None, None, is_rehearsal=False)


def looked_into(*, quiet: bool) -> None:
    demo._looked_into(Mock(), "OS-1", Mock(), "crowns", quiet=quiet)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
