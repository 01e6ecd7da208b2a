"""Names: everybody and everything that an entry names is in the book."""

from typing import Any

import pytest

from ledger.domain.entries import Formula, House, Note, Person, Receipt, Start
from ledger.domain.entries.masters import FormulaLine
from ledger.domain.rules.always import names
from tests.domain.builders import draft, entry, make, ml, scene
from tests.domain.rules.cases import NO, Case, find, said

NOTE = make(Note)
LINES = tuple(FormulaLine(ml(1), material=code) for code in ("spirit", "oil", "water", "spirit"))
IN_THE_BOOK: dict[str, Any] = {"formulas": frozenset({("orange", 1), ("orange", 4)})}
CORRECTS: dict[str, Any] = {"corrects": 5, "reason": "a slip"}

WRITERS = [
    Case("a known writer", draft(NOTE)),
    Case("the first house needs no writer", draft(make(House), by=None), scene(has_house=False)),
    Case("the first person enters herself", draft(make(Person)), scene(people=frozenset())),
    Case(
        "nobody wrote it",
        draft(NOTE, by=None),
        scene(),
        said(
            NO,
            "writer",
            "This entry does not say who made it.",
            "Give your initials with --by or set POTTLE_BY.",
        ),
    ),
    Case(
        "nobody wrote it in a book without a house",
        draft(NOTE, by=None),
        scene(has_house=False),
        said(
            NO,
            "writer",
            "This entry does not say who made it.",
            "Give your initials with --by or set POTTLE_BY.",
        ),
    ),
    Case(
        "a later house needs a writer",
        draft(make(House), by=None),
        scene(has_house=True),
        said(
            NO,
            "writer",
            "This entry does not say who made it.",
            "Give your initials with --by or set POTTLE_BY.",
        ),
    ),
    Case(
        "an unknown writer",
        draft(NOTE, by="XY"),
        scene(),
        said(
            NO,
            "writer",
            "The initials XY are not in the book; it knows AB, CD.",
            'Add the person with: pottle person add XY "FULL NAME"',
        ),
    ),
    Case(
        "an unknown writer in an empty book, entering somebody else",
        draft(make(Person, initials="CD"), by="AB"),
        scene(people=frozenset()),
        said(
            NO,
            "writer",
            "The initials AB are not in the book; it knows nobody yet.",
            'Add the person with: pottle person add AB "FULL NAME"',
        ),
    ),
    Case("a known checker of a formula", draft(make(Formula, prepared_by="AB", checked_by="CD"))),
    Case(
        "an unknown person is told once though named twice",
        draft(make(Formula, prepared_by="EF", checked_by="EF")),
        scene(),
        said(
            NO,
            "person",
            "The initials EF are not in the book; it knows AB, CD.",
            'Add the person with: pottle person add EF "FULL NAME"',
        ),
    ),
]

MATERIALS = [
    Case("a known material", draft(make(Receipt))),
    Case("an entry that names no material", draft(make(Start)), scene(materials=frozenset())),
    Case(
        "an unknown material received",
        draft(make(Receipt, material="oyl")),
        scene(),
        said(
            NO,
            "material",
            "The material oyl is not in the book.",
            'Add it with: pottle material add oyl --name "NAME" --kind KIND',
        ),
    ),
    Case(
        "all unknown materials of a formula, each once",
        draft(make(Formula, lines=LINES)),
        scene(),
        said(
            NO,
            "material",
            "The material spirit is not in the book.",
            'Add it with: pottle material add spirit --name "NAME" --kind KIND',
        )
        + said(
            NO,
            "material",
            "The material water is not in the book.",
            'Add it with: pottle material add water --name "NAME" --kind KIND',
        ),
    ),
]

TAKEN = said(
    NO,
    "formula version",
    "Version 1 of the formula orange is in the book already.",
    "Write the change as version 5; old batches keep theirs.",
)
VERSIONS = [
    Case("a new version", draft(make(Formula, version=5)), scene(**IN_THE_BOOK)),
    Case("another formula's version", draft(make(Formula, code="lemon")), scene(**IN_THE_BOOK)),
    Case("a version written twice", draft(make(Formula)), scene(**IN_THE_BOOK), TAKEN),
    Case(
        "a correction of that version itself",
        draft(make(Formula, pour_parts=7), **CORRECTS),
        scene(corrected=entry(make(Formula), 5), **IN_THE_BOOK),
    ),
    Case(
        "a correction that takes another version's number",
        draft(make(Formula), **CORRECTS),
        scene(corrected=entry(make(Formula, version=4), 5), **IN_THE_BOOK),
        TAKEN,
    ),
]


@pytest.mark.parametrize("case", [*WRITERS, *MATERIALS, *VERSIONS], ids=str)
def test_names_are_in_the_book_or_told(case: Case) -> None:
    assert find(names.RULES, case) == list(case.found)
