"""Where a book lies that it should not: in a folder that is kept alike on several machines.

Guarantees: it is a note, on standard error; nothing is refused for it. Refuses: to know every such
service; it goes by the words that their folders have in their names.
"""

import re
import sys
from pathlib import Path

_ALIKE = re.compile(r"cloud|sync|drive|box\b", re.IGNORECASE)


def place_note(where: str) -> str | None:
    """Return what to know of the place of a book, or None where there is nothing to know.

    >>> place_note("/kitchen/pottle.db") is None, place_note("postgresql://cloud/book")
    (True, None)
    """
    if "://" in where:
        return None
    folders = Path(where).absolute().parent.parts[1:]
    found = next((folder for folder in folders if _ALIKE.search(folder)), None)
    if found is None:
        return None
    return (
        f"The book lies in {found}, which by its name is kept alike on several machines: written "
        "on two at once, or taken up half way, it is damaged. Keep it elsewhere, and put copies "
        "there: pottle backup DIR"
    )


def tell_place(where: str) -> None:
    """Say on standard error what to know of the place of a book, if there is anything."""
    from cli.kit.tables import fitted

    if note := place_note(where):
        for line in fitted([f"Note: {note}"], sys.stderr):
            print(line, file=sys.stderr)
