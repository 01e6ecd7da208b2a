"""Where tests put their files: in memory, if the machine has a place for that.

Guarantees: who names a folder with TMPDIR keeps it. A book waits for the disk at each entry, and a
database of a server is some eight hundred files; in memory both are there at once.
"""

import os
import shutil
from collections.abc import Mapping
from pathlib import Path

MEMORY = Path("/dev/shm")
ROOM_BYTES = 8 * 10**9
"""What the books and databases of all tests may take, and some."""


def in_memory(told: Mapping[str, str] = os.environ, memory: Path = MEMORY) -> str | None:
    """Return the folder in memory; None where there is none, or no room, or another is named."""
    if told.get("TMPDIR") or not memory.is_dir() or not os.access(memory, os.W_OK):
        return None
    return str(memory) if shutil.disk_usage(memory).free >= ROOM_BYTES else None
