"""What `pottle` says without a command: what it is, which book is here, and where to begin.

Guarantees: opens no book; the next step fits whether there is one.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.tables import print_lines


def welcome(call: Call) -> None:
    """Print where to begin."""
    where = call.where
    # A book on a server is not asked for; that takes longer than a greeting should.
    is_there = "://" in where or Path(where).is_file()
    print_lines(["Pottle is the batch book of a small maker of soda-fountain essences and syrups."])
    print_lines(_with_book(where) if is_there else _WITHOUT_BOOK)


def _with_book(where: str) -> list[str]:
    from ledger.errors import masked

    return [
        f"The book here is {masked(where)}.",
        "pottle guide has short pages to read, pottle --help lists every command.",
        "Next: pottle due",
    ]


_WITHOUT_BOOK = [
    "There is no book here yet.",
    "  pottle init          makes a new one here, and asks for what it needs",
    "  pottle demo FOLDER   plays an invented season, to look at",
    "  pottle --help        lists every command",
    "Next: pottle guide first-hour",
]
