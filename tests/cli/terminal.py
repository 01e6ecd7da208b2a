"""A terminal in a test: a command run in one of a given width, and what it showed."""

import fcntl
import os
import pty
import struct
import subprocess
import sys
import termios
from pathlib import Path

ROOT = Path(__file__).parents[2]


def shown_on(columns: int, args: list[str], code: int = 0, /, **env: str) -> str:
    """Return all that a command, ending with a code, writes to a terminal so many columns wide."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    own = {"PATH": os.environ["PATH"], "TERM": "xterm-256color", "LANG": "C.UTF-8", **env}
    running = subprocess.Popen(
        [sys.executable, "-m", "cli.program", *args],
        cwd=ROOT,
        env=own,
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        close_fds=True,
    )
    os.close(theirs)
    told = b""
    while piece := _read(ours):
        told += piece
    os.close(ours)
    assert running.wait() == code, told
    return told.decode().replace("\r\n", "\n")


def _read(file: int) -> bytes:
    try:
        return os.read(file, 1 << 16)
    except OSError:  # how Linux says that the other end is closed
        return b""
