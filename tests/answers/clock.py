"""The clock of commands that run in a test: it goes only when it is told to."""

from collections.abc import Iterator
from contextlib import contextmanager
from types import SimpleNamespace

import pytest

from ledger.service.desk import book
from tests.keeper import SetClock


@contextmanager
def kept_time(clock: SetClock) -> Iterator[None]:
    """Let every book that is opened go by a clock."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(book, "datetime", SimpleNamespace(now=lambda _zone: clock()))
        yield
