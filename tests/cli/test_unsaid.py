"""A command that was broken off, or whose answer finds no place, says what is recorded."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.shell import Shell

PROGRAM = "from cli.program import run; run()"
SAYS_BEGUN = PROGRAM.replace("run()", "print(end='begun', flush=True); run()")
WAITS_S = (0.02, 0.1, 0.2, 0.35)
"""How long a command runs before it is broken off, most of them before its work begins."""


def start(shell: Shell, *words: str, out: int, says_begun: bool = False) -> subprocess.Popen[str]:
    """Start a command as a process of its own."""
    root = Path(__file__).parents[2]
    environment = {"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB", "PYTHONPATH": str(root)}
    return subprocess.Popen(
        [sys.executable, "-c", SAYS_BEGUN if says_begun else PROGRAM, *words],
        stdout=out,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | environment,
    )


def full() -> int:
    """Open a device that is always full."""
    if not Path("/dev/full").exists():
        pytest.skip("this system has no device that is always full")
    return os.open("/dev/full", os.O_WRONLY)


def closed_pipe() -> int:
    """Open a pipe of which nobody reads."""
    end, begin = os.pipe()
    os.close(end)
    return begin


@pytest.mark.parametrize(
    ("out", "why"), [(full, "No space left on device"), (closed_pipe, "Broken pipe")]
)
def test_what_was_recorded_is_said_where_the_answer_cannot_be(
    shell: Shell, out: Callable[[], int], why: str
) -> None:
    number = shell.entries() + 1
    running = start(shell, "note", "-", "Once.", out=out())
    _, told = running.communicate()
    assert told.splitlines() == [
        f"Recorded {number}.",
        f"  pottle journal --entry {number} shows it.",
        f"The answer could not be written: {why}.",
    ]
    # No failure: who sees one enters it again.
    assert (running.returncode, shell.entries()) == (0, number)


def test_an_answer_to_a_question_that_finds_no_place_is_a_failure(shell: Shell) -> None:
    running = start(shell, "journal", out=full())
    _, told = running.communicate()
    assert told.splitlines() == [
        "The answer could not be written: No space left on device.",
        "  Choose a place with room for it.",
    ]
    assert running.returncode == 5


def test_a_command_broken_off_at_any_moment_shows_no_traceback(shell: Shell) -> None:
    cancelled = "Cancelled; nothing more was recorded."
    for wait in WAITS_S:
        running = start(shell, "verify", out=subprocess.PIPE, says_begun=True)
        assert running.stdout is not None
        # Python's own start, before a line of ours runs, cannot be told what to do.
        assert running.stdout.read(5) == "begun"
        time.sleep(wait)
        running.send_signal(signal.SIGINT)
        _, told = running.communicate()
        assert running.returncode in (0, 130, -signal.SIGINT), wait
        assert not told or told.splitlines()[0] == cancelled, wait


def test_a_fault_after_the_recording_says_what_stands(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    def no_sum(*_words: object) -> None:
        raise ZeroDivisionError("no sum")

    monkeypatch.setattr("cli.kit.answer.answer", no_sum)
    number = shell.entries() + 1
    answer = shell.run("note", "-", "Once.")
    assert answer.exit_code == 70
    assert answer.complaints == [
        f"Recorded {number}.",
        f"  pottle journal --entry {number} shows it.",
        "Something went wrong inside pottle: ZeroDivisionError: no sum.",
        "  pottle journal shows what the book has. POTTLE_DEBUG=1 shows where it went wrong.",
    ]
