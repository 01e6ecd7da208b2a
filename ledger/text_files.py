"""Reading a file that somebody hands in.

Guarantees: never more than a given number of bytes is read. Refuses: larger files, files that
cannot be read, and what is no text in UTF-8, each in a sentence.
"""

from pathlib import Path

from ledger.errors import InputError, StorageError

RIGHT_FILE = "Name the right file."


def bytes_of(path: Path, most_bytes: int, mend: str = RIGHT_FILE) -> bytes:
    """Return what is in a file.

    Args:
        path: The file.
        most_bytes: How large it may be.
        mend: What to do when it is larger.

    Raises:
        InputError: It is too large.
        StorageError: It cannot be read.
    """
    try:
        with path.open("rb") as file:
            # One more tells that there is more than that, without reading all of it.
            content = file.read(most_bytes + 1)
    except OSError as error:
        raise StorageError(
            f"The file {path} could not be read: {error.strerror}.", "Check its name and rights."
        ) from error
    if len(content) > most_bytes:
        raise InputError(f"The file {path} is larger than {most_bytes} bytes.", mend)
    return content


def text_of(path: Path, most_bytes: int, mend: str = RIGHT_FILE) -> str:
    """Return what a file says.

    Args:
        path: The file.
        most_bytes: How large it may be.
        mend: What to do when it is no text.

    Raises:
        InputError: It is too large, or no text.
        StorageError: It cannot be read.
    """
    try:
        return bytes_of(path, most_bytes).decode()
    except UnicodeDecodeError as error:
        raise InputError(f"The file {path} is no text in UTF-8.", mend) from error
