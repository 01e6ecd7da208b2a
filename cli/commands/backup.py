"""Commands that keep the whole book safe: backup, restore, export, import, upgrade.

Guarantees: no file is ever written over. Refuses: rules of their own.
"""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, reads
from cli.kit.parsing import Verb


def backup(
    call: Call,
    folder: Annotated[
        Path | None, typer.Argument(metavar="DIR", help="Folder for the copy; default this one.")
    ] = None,
) -> None:
    """Write a verified copy of the book, named by day and seal."""
    from cli.screens.copies import write_backup

    write_backup(call, folder or Path())


def restore(
    call: Call,
    file: Annotated[Path, typer.Argument(help="The backup.")],
    to: Annotated[str, typer.Option(metavar="PATH|URL", help="Where the book goes.")],
) -> None:
    """Put a backup where no book is yet, after verifying it."""
    from cli.screens.copies import put_back

    put_back(call, file, to)


def export(
    call: Call, file: Annotated[Path, typer.Argument(help="File to write, as book.jsonl.")]
) -> None:
    """Write the book as lines of text that any place can import."""
    from cli.screens.copies import write_export

    write_export(call, file)


def take_in(
    call: Call,
    book: Annotated[
        Path, typer.Option(metavar="FILE", help="A whole book, as pottle export wrote it.")
    ],
) -> None:
    """Make a new book from the lines of an export."""
    from cli.screens.copies import take_in_book

    take_in_book(call, book)


def upgrade(
    call: Call,
    keep_in: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Folder for the copy that is kept; default this one."),
    ] = None,
) -> None:
    """Bring an older book to this version, after a backup."""
    from cli.screens.copies import bring_up

    bring_up(call, keep_in or Path())


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (backup, restore, export, upgrade):
        app.command(cls=Verb)(reads(function))
    app.command("import", cls=Verb)(reads(take_in))
