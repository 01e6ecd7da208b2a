"""Progress on long work.

Guarantees: shown on standard error of a terminal only, and only when the work takes long. Refuses:
to mix with answers.
"""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Event, Timer

PATIENCE_S = 0.5
LONG_S = 1.0
"""From when on work says that it goes on."""
_counting: list[str] = []
"""What tells how far it is, and so needs no other word."""


WORKING = "Working; Ctrl-C breaks it off."
"""What is shown of work of which nobody knows how much is left."""


@contextmanager
def waiting() -> Iterator[None]:
    """Say on a terminal that work goes on, once it takes long and tells nothing of itself."""
    if not sys.stderr.isatty():
        yield
        return
    shown = Event()
    timer = Timer(LONG_S, _say_working, (shown,))
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
        timer.join()
        if shown.is_set():
            _clear()


def _say_working(shown: Event) -> None:
    if not _counting:
        shown.set()
        sys.stderr.write(f"\r{WORKING}")
        sys.stderr.flush()


def _clear() -> None:
    # Back to the head of the line, and the line cleared.
    sys.stderr.write("\r\x1b[K")
    sys.stderr.flush()


@contextmanager
def progress(what: str, *, quiet: bool = False) -> Iterator[Callable[[int, int], None]]:
    """Give a function to call with how much of how much is done."""
    if quiet or not sys.stderr.isatty():
        yield lambda done, total: None
        return
    began, last = time.monotonic(), 0.0

    def tick(done: int, total: int) -> None:
        nonlocal last
        now = time.monotonic()
        if now - began > PATIENCE_S and (now - last > 0.1 or done == total):
            last = now
            sys.stderr.write(f"\r{what}: {done} of {total}")
            sys.stderr.flush()

    _counting.append(what)
    try:
        yield tick
    finally:
        _counting.remove(what)
        if last:
            _clear()
