"""Files that commands write.

Guarantees: a file that is there stays unless asked; text and paper are made whole before their file
is. Refuses: folders that do not exist.
"""

from pathlib import Path

from ledger.errors import StorageError

OTHER_NAME = "Give another name with --out, or --force to write over it."


def check_place(out: Path, *, force: bool, instead: str = OTHER_NAME) -> None:
    """Make sure a file may be written; `instead` is what to do when it is there already.

    Raises:
        StorageError: Its folder is missing, it is there already, or no file can have its name.
    """
    try:
        # A link that leads nowhere is there too.
        is_there, has_folder = out.exists() or out.is_symlink(), out.parent.is_dir()
    except OSError as error:
        raise StorageError(
            f"No file can be named {out}: {error.strerror}.", "Give a shorter name."
        ) from error
    if not has_folder:
        raise StorageError(
            f"There is no folder {out.parent}.", "Make it first, or give another place."
        )
    if is_there and not force:
        raise StorageError(
            f"There is a file {out} already; it was left as it is.",
            instead,
        )


def write(out: Path, paper: bytes) -> None:
    """Write a paper to its file.

    Raises:
        StorageError: The file cannot be written.
    """
    try:
        out.write_bytes(paper)
    except OSError as error:
        raise StorageError(
            f"The file {out} could not be written: {error.strerror}.",
            "Choose a place that you may write in.",
        ) from error
