"""The areas by which mutants are counted: folders, told by how a path begins.

Guarantees: every file of the source is in one area, whatever folders are made inside of it.
"""

SOURCES = ("ledger", "reports", "cli")
"""Folders in which mutants are made."""
MIGRATIONS = "ledger/store/migrations/"
"""Where none are made: what was done to books once is never changed."""
AREAS = (
    ("ledger/domain/rules/", "rules"),
    ("ledger/science/", "science"),
    ("ledger/store/", "store"),
    ("ledger/service/", "service"),
    ("ledger/", "domain"),
    ("reports/pdf/", "pdf"),
    ("reports/", "words"),
    ("cli/", "cli"),
)
"""How the paths of an area begin; the first that fits counts."""
NAMES = ("domain", "rules", "science", "store", "service", "words", "pdf", "cli")
"""The areas in the order of the table, from the inmost to the door."""


def area_of(file: str) -> str:
    """Return the area of a file, by its path from the root of the project.

    >>> area_of("reports/words/cautions.py")
    'words'
    """
    return next((area for prefix, area in AREAS if file.startswith(prefix)), "elsewhere")
