"""A long answer at a terminal, a screen at a time.

Guarantees: an answer that fits the screen is printed as ever, and so is one in a pipe; PAGER says
by what the others are shown, an empty one by nothing. Refuses: to keep an answer from somebody
because a pager failed.
"""

import io
import os
import shlex
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager

QUITS_BY_ITSELF = "FRX"
"""How less is asked to behave where LESS says nothing: one screen is no page, styles are kept."""


class Collected(io.StringIO):
    """What is printed meanwhile: it looks like the terminal that it is for."""

    def isatty(self) -> bool:
        """Return True, as the terminal does."""
        return True


@contextmanager
def paged() -> Iterator[None]:
    """Collect what is printed to a terminal, and show it once it is whole."""
    real = sys.stdout
    if not real.isatty():
        yield
        return
    sys.stdout = collected = Collected()
    try:
        yield
    finally:
        sys.stdout = real
        show(collected.getvalue())


def pager() -> list[str]:
    """Return the words of the pager's command; none where there is none, or none is wanted.

    Nor where nobody could turn its pages.
    """
    if not sys.stdin.isatty():
        return []
    told = os.environ.get("PAGER", "less")
    words = shlex.split(told)
    is_there = bool(words) and shutil.which(words[0]) is not None
    return words if is_there and os.environ.get("TERM") != "dumb" else []


def show(text: str) -> None:
    """Print a text, by the pager where it is longer than the screen."""
    if text.count("\n") < shutil.get_terminal_size().lines or not _by_pager(text):
        sys.stdout.write(text)
        sys.stdout.flush()


def _by_pager(text: str) -> bool:
    """Return whether the pager showed it."""
    words = pager()
    if not words:
        return False
    env = {**os.environ, "LESS": os.environ.get("LESS", QUITS_BY_ITSELF)}
    # Ctrl-C is the pager's own while it shows.
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        subprocess.run(words, input=text.encode(errors="replace"), env=env, check=False)
    except OSError:
        return False
    finally:
        signal.signal(signal.SIGINT, before)
    return True
