"""Progress on long work.

Guarantees: shown on standard error of a terminal only, and only when the work takes long. Refuses:
to mix with answers.
"""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

PATIENCE_S = 0.5


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

    yield tick
    if last:
        # Back to the head of the line, and the line cleared.
        sys.stderr.write("\r\x1b[K")
        sys.stderr.flush()
