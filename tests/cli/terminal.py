"""A terminal in a test: a command run in one of a given width, and what it showed."""

import fcntl
import os
import pty
import select
import struct
import subprocess
import sys
import termios
import time
from contextlib import suppress
from pathlib import Path
from typing import Self

import pyte

from cli.kit.progress import WORKING
from tests.cli.warm import warm

ROOT = Path(__file__).parents[2]


def shown_on(columns: int, args: list[str], code: int = 0, /, **env: str) -> str:
    """Return all that a command, ending with a code, writes to a terminal so many columns wide."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    own = {"PATH": os.environ["PATH"], "TERM": "xterm-256color", "LANG": "C.UTF-8", "PAGER": ""}
    warm().begin(os.ttyname(theirs), args, own | env)
    os.close(theirs)
    told = b""
    while piece := _read(ours):
        told += piece
    os.close(ours)
    assert warm().code() == code, told
    # What a slow machine says meanwhile is no part of the answer.
    return told.decode().replace("\r\n", "\n").replace(f"\r{WORKING}\r\x1b[K", "")


class Seat:
    """A seat at a terminal of 24 lines at which a command runs, as whoever sits there sees it."""

    def __init__(self, args: list[str], columns: int = 80, /, **env: str) -> None:
        """Sit down and run a command."""
        self._ours, theirs = pty.openpty()
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
        own = {"PATH": os.environ["PATH"], "TERM": "xterm-256color", "LANG": "C.UTF-8", **env}
        self.running = subprocess.Popen(
            [sys.executable, "-m", "cli.program", *args],
            cwd=ROOT,
            env=own,
            stdin=theirs,
            stdout=theirs,
            stderr=theirs,
            start_new_session=True,
            preexec_fn=lambda: fcntl.ioctl(theirs, termios.TIOCSCTTY, 0),
        )
        os.close(theirs)
        self.raw = b""
        """All that came."""
        self._screen = pyte.Screen(columns, 24)
        self._stream = pyte.ByteStream(self._screen)

    def __enter__(self) -> Self:
        """Return the seat; who leaves it without ending the command ends it so."""
        return self

    def __exit__(self, *_: object) -> None:
        """End the command, if nothing else did."""
        if self.running.poll() is None:
            self.running.kill()
            self.close()

    @property
    def lines(self) -> list[str]:
        """What stands on the screen, without lines that are blank."""
        return [line.rstrip() for line in self._screen.display if line.strip()]

    def type(self, keys: str, until: str) -> list[str]:
        """Press keys, wait until the line of the cursor says so, and return the screen."""
        begun = len(self.raw)
        os.write(self._ours, keys.encode())
        return self.wait(until, begun)

    def wait(self, until: str, begun: int = 0) -> list[str]:
        """Wait until the line of the cursor says so, after so much that came; return the screen."""
        latest = time.monotonic() + PATIENCE_S
        # Asked once a turn: between two answers more may be drawn.
        while not self._is_at(until, begun):
            assert time.monotonic() < latest, (until, self.lines)
            self._take(0.05)
        return self.lines

    def _is_at(self, until: str, begun: int) -> bool:
        at = self._screen.display[self._screen.cursor.y].rstrip() == until.rstrip()
        # The prompt of before says the same as the one that comes, on the line above it.
        is_new = b"\n" in self.raw[begun:] or not until.rstrip().endswith((">", ":", ")"))
        # All that is drawn with the line has come once nothing more does.
        return at and is_new and not self._take(0.02)

    def _take(self, seconds: float) -> bool:
        if not select.select([self._ours], [], [], seconds)[0]:
            return False
        piece = _read(self._ours)
        self.raw += piece
        self._stream.feed(piece)
        if ASKS_WHERE in piece:
            where = f"\x1b[{self._screen.cursor.y + 1};{self._screen.cursor.x + 1}R"
            os.write(self._ours, where.encode())
        return bool(piece)

    def leave(self, keys: str) -> int:
        """Press the keys that end the command; return its exit code."""
        os.write(self._ours, keys.encode())
        while self.running.poll() is None:
            self._take(0.05)
        while self._take(0.01):
            pass
        os.close(self._ours)
        return self.running.returncode

    def close(self) -> int:
        """Close the terminal under the command; return how it ended."""
        with suppress(OSError):
            os.close(self._ours)
        return self.running.wait(timeout=PATIENCE_S)


PATIENCE_S = 20.0
"""How long is waited for a screen, on a machine that has much to do."""
ASKS_WHERE = b"\x1b[6n"
"""How a program asks a terminal where its cursor is (ECMA-48, 8.3.35)."""


def _read(file: int) -> bytes:
    try:
        return os.read(file, 1 << 16)
    except OSError:  # how Linux says that the other end is closed
        return b""
