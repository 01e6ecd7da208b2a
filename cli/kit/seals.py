"""Reading a seal that a person gives: a file with its lines, or the lines themselves.

Guarantees: a file is read only when there is one of that name. Refuses: large files; a seal is
three lines.
"""

from pathlib import Path
from typing import Annotated

import typer

from ledger.domain.evidence.seals import Seal, read_seal
from ledger.errors import InputError
from ledger.text_files import text_of

MOST_BYTES = 1_000_000
"""The largest file that is looked into for a seal."""

SealText = Annotated[
    str | None,
    typer.Option(metavar="FILE|TEXT", help="A seal: a file with its lines, or the lines."),
]


def given_seal(text: str | None) -> Seal | None:
    """Return the seal that a person gave, or None.

    Raises:
        InputError: It cannot be read as one.
        StorageError: The file cannot be read.
    """
    if text is None:
        return None
    path = Path(text)
    if is_file(path):
        return read_seal(text_of(path, MOST_BYTES))
    # More likely the name of a file than a seal of which a part is missing.
    if "entries" not in text.lower() and "\n" not in text.strip():
        raise InputError(
            f"There is no file {text} with a seal, and the text is none itself.",
            'Give the file, or the three lines in quotes: "House ... Entries ... Root ..."',
        )
    return read_seal(text)


def is_file(path: Path) -> bool:
    """Return whether there is such a file; a text that can be no path is none."""
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False
