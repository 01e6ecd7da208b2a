"""What is made once for all workers of a run, however many tests ask for it.

Guarantees: whoever comes while it is being made waits; what its maker returned is kept beside its
folder. Refuses: that anybody works in that folder, since several have it; each takes a copy.
"""

import fcntl
import os
import pickle
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import pytest

Made = TypeVar("Made")


def made_once(
    factory: pytest.TempPathFactory, name: str, make: Callable[[Path], Made]
) -> tuple[Path, Made]:
    """Return a folder of a name and what was returned when it was filled.

    Args:
        factory: The place of the worker; all workers of a run have theirs in one.
        name: The name of the folder, one a thing.
        make: Fills an empty folder; what it returns is pickled.
    """
    folder = _place(factory) / f"once-{name}"
    told = folder.with_suffix(".pickle")
    with folder.with_suffix(".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)  # until the file is closed
        if not told.exists():
            folder.mkdir()
            told.write_bytes(pickle.dumps(make(folder)))
    made: Made = pickle.loads(told.read_bytes())
    return folder, made


def _place(factory: pytest.TempPathFactory) -> Path:
    own = factory.getbasetemp()
    return own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
